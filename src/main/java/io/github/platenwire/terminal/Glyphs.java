package io.github.platenwire.terminal;

import java.nio.charset.Charset;
import java.text.Normalizer;
import java.util.Map;

/** Which characters an output can show, and what stands in for the others. */
public enum Glyphs {
  /** Whatever the program and its users write. */
  UNICODE("█", "─", "·", "├", "┤", "●", "✓", "✗", "→", "…"),
  /** Only printable ASCII. */
  ASCII("#", "-", ".", "[", "]", "O", "+", "x", "->", "...");

  private static final Map<Integer, String> IN_ASCII =
      Map.ofEntries(
          Map.entry((int) '±', "+/-"),
          Map.entry((int) '×', "x"),
          Map.entry((int) '·', "."),
          Map.entry((int) '²', "2"),
          Map.entry((int) '³', "3"),
          Map.entry((int) '°', "deg"),
          Map.entry((int) 'µ', "u"),
          Map.entry((int) 'μ', "u"),
          Map.entry((int) 'ß', "ss"),
          Map.entry((int) '–', "-"),
          Map.entry((int) '—', "-"),
          Map.entry((int) '−', "-"),
          Map.entry((int) '…', "..."),
          Map.entry((int) '≤', "<="),
          Map.entry((int) '≥', ">="),
          Map.entry((int) '→', "->"),
          Map.entry((int) '‘', "'"),
          Map.entry((int) '’', "'"),
          Map.entry((int) '“', "\""),
          Map.entry((int) '”', "\""));

  private final String block;
  private final String rule;
  private final String dot;
  private final String bandStart;
  private final String bandEnd;
  private final String marker;
  private final String passed;
  private final String failed;
  private final String arrow;
  private final String cut;

  Glyphs(
      String block,
      String rule,
      String dot,
      String bandStart,
      String bandEnd,
      String marker,
      String passed,
      String failed,
      String arrow,
      String cut) {
    this.block = block;
    this.rule = rule;
    this.dot = dot;
    this.bandStart = bandStart;
    this.bandEnd = bandEnd;
    this.marker = marker;
    this.passed = passed;
    this.failed = failed;
    this.arrow = arrow;
    this.cut = cut;
  }

  /** Unicode where a charset can write every character that this package draws with. */
  public static Glyphs of(Charset charset) {
    boolean able = charset.canEncode() && charset.newEncoder().canEncode("█─·├┤●✓✗→…±×²³µ–");
    return able ? UNICODE : ASCII;
  }

  /**
   * A text that is safe to write: control characters, which could take hold of the terminal, become
   * question marks, and characters that cannot be shown get a stand-in.
   */
  public String text(String raw) {
    StringBuilder out = new StringBuilder(raw.length());
    String whole = this == UNICODE ? raw : Normalizer.normalize(raw, Normalizer.Form.NFC);
    whole.codePoints().forEach(point -> out.append(shown(point)));
    return out.toString();
  }

  private String shown(int point) {
    if (point >= ' ' && point <= '~') {
      return Character.toString(point);
    }
    if (point == '\t' || point == '\u00A0') {
      return " ";
    }
    if (!printable(point)) {
      return "?";
    }
    return this == UNICODE ? Character.toString(point) : inAscii(point);
  }

  private static String inAscii(int point) {
    String standIn = IN_ASCII.get(point);
    if (standIn != null) {
      return standIn;
    }
    int bare = Normalizer.normalize(Character.toString(point), Normalizer.Form.NFD).codePointAt(0);
    return bare <= '~' ? Character.toString(bare) : "?";
  }

  private static boolean printable(int point) {
    return switch (Character.getType(point)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.PRIVATE_USE,
          Character.UNASSIGNED,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          false;
      default -> true;
    };
  }

  String block() {
    return block;
  }

  String rule() {
    return rule;
  }

  String dot() {
    return dot;
  }

  String bandStart() {
    return bandStart;
  }

  String bandEnd() {
    return bandEnd;
  }

  String marker() {
    return marker;
  }

  String passed() {
    return passed;
  }

  String failed() {
    return failed;
  }

  String arrow() {
    return arrow;
  }

  String cut() {
    return cut;
  }
}
