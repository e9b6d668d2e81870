package io.github.platenwire.terminal;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A sentence or two, broken between words where the terminal ends. Stateless. */
public final class Paragraph {
  private static final Pattern MARGIN = Pattern.compile("\\s*(?:[0-9]+\\.)?\\s+");
  private static final int LEAST_BESIDE_MARGIN = 20;

  private Paragraph() {}

  /**
   * The lines.
   *
   * @param text what is said; empty gives one empty line
   * @param columns width of the terminal
   */
  public static List<String> lines(String text, int columns) {
    return text.isEmpty() ? List.of("") : TextWidth.wrap(text, Math.max(20, columns - 1));
  }

  /**
   * The lines of a text that keeps its indent, and its number if it begins with one, on a margin of
   * its own.
   *
   * @param text what is said, indented or begun by a number such as {@code 12.}
   * @param columns width of the terminal
   */
  public static List<String> hanging(String text, int columns) {
    Matcher parts = MARGIN.matcher(text);
    String margin = parts.lookingAt() ? parts.group() : "";
    int width = columns - margin.length();
    if (TextWidth.columns(text) < columns) {
      return List.of(text);
    }
    if (width < LEAST_BESIDE_MARGIN) {
      return lines(text, columns);
    }
    List<String> lines = new ArrayList<>();
    for (String line : lines(text.substring(margin.length()), width)) {
      lines.add((lines.isEmpty() ? margin : " ".repeat(margin.length())) + line);
    }
    return lines;
  }
}
