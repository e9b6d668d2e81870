package io.github.platenwire.report;

import java.util.List;

/**
 * A piece of a sentence, ready to stand on a page: safe whatever its words are. Immutable.
 *
 * <p>Beside its markup it keeps its plain words, for tables that other programs read.
 */
public final class Inline {
  /** Nothing. */
  public static final Inline EMPTY = new Inline("", "");

  private final String markup;
  private final String plain;

  private Inline(String markup, String plain) {
    this.markup = markup;
    this.plain = plain;
  }

  /** Plain words. */
  public static Inline text(String words) {
    return new Inline(Markup.escape(words), words);
  }

  /** Words that stand out. */
  public static Inline strong(String words) {
    return new Inline("<strong>" + Markup.escape(words) + "</strong>", words);
  }

  /** Words that stand back. */
  public static Inline faint(String words) {
    return new Inline("<span class=\"faint\">" + Markup.escape(words) + "</span>", words);
  }

  /** A command, a digest or a file's name, letter by letter. */
  public static Inline code(String words) {
    return new Inline("<code>" + Markup.escape(words) + "</code>", words);
  }

  /** A short word in a frame whose colour goes with its tone. */
  public static Inline badge(Tone tone, String words) {
    return new Inline(
        "<span class=\"badge " + tone.style() + "\">" + Markup.escape(words) + "</span>", words);
  }

  /**
   * A link to a file or a place on the page.
   *
   * @param target relative to the page; a path's separators are {@code /}
   */
  public static Inline link(String target, Inline words) {
    return new Inline(
        "<a href=\"" + Markup.escape(target) + "\">" + words.markup + "</a>", words.plain);
  }

  /** A picture in the text, such as a small mark; see {@link Page#chart} for charts. */
  static Inline ofMarkup(String wellFormed, String plain) {
    return new Inline(wellFormed, plain);
  }

  /** Several lines, one below the other. */
  public static Inline lines(List<Inline> lines) {
    Inline all = EMPTY;
    for (Inline line : lines) {
      all = all == EMPTY ? line : new Inline(all.markup + "<br/>", all.plain + "; ").and(line);
    }
    return all;
  }

  /** This piece and another after it. */
  public Inline and(Inline next) {
    return new Inline(markup + next.markup, plain + next.plain);
  }

  /** This piece and plain words after it. */
  public Inline and(String words) {
    return and(text(words));
  }

  /** Well-formed XHTML. */
  String markup() {
    return markup;
  }

  /** The words alone. */
  public String plain() {
    return plain;
  }
}
