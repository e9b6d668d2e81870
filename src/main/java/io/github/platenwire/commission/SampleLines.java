package io.github.platenwire.commission;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A sample cut into lines. Each byte is one character of ISO 8859-1. Immutable.
 *
 * @param terminator as a definition writes it
 * @param lines the whole lines without terminator, empty ones left out; the first may be torn
 */
record SampleLines(String terminator, List<String> lines) {
  /** More lines than this teach nothing new, and make guessing slow. */
  private static final int MOST_LINES = 5000;

  private static final int LONGEST_LINE = 512;
  private static final int FEWEST_LINES = 3;

  /** Control characters that end a message in ASCII itself (ECMA-6): ETX, EOT, ETB, RS. */
  private static final String OTHER_ENDS = "\u0003\u0004\u0017\u001E";

  /** Cuts where lines end; empty if the bytes are no lines of text. */
  static Optional<SampleLines> cut(byte[] bytes) {
    String all = new String(bytes, StandardCharsets.ISO_8859_1);
    Optional<String> end = end(all);
    if (end.isEmpty()) {
      return Optional.empty();
    }
    List<String> lines = new ArrayList<>();
    int from = 0;
    int to = all.indexOf(end.get());
    while (to >= 0 && lines.size() < MOST_LINES) {
      String line = all.substring(from, to);
      line =
          end.get().equals("\n") && line.endsWith("\r") ? line.substring(0, to - from - 1) : line;
      if (!line.isEmpty()) {
        lines.add(line);
      }
      from = to + end.get().length();
      to = all.indexOf(end.get(), from);
    }
    return lines.size() < FEWEST_LINES || !isText(lines)
        ? Optional.empty()
        : Optional.of(new SampleLines(name(end.get()), lines));
  }

  private static Optional<String> end(String all) {
    long feeds = all.chars().filter(c -> c == '\n').count();
    long returns = all.chars().filter(c -> c == '\r').count();
    int pairs = all.split("\r\n", -1).length - 1;
    long least = Math.max(FEWEST_LINES, all.length() / LONGEST_LINE);
    if (pairs >= least && pairs >= feeds - 1 && pairs >= returns - 1) {
      return Optional.of("\r\n");
    }
    if (feeds >= least && feeds >= returns) {
      return Optional.of("\n");
    }
    if (returns >= least) {
      return Optional.of("\r");
    }
    return OTHER_ENDS
        .chars()
        .filter(c -> all.chars().filter(b -> b == c).count() >= least)
        .mapToObj(c -> Character.toString((char) c))
        .findFirst();
  }

  /** Whether nearly all lines are printable, control characters at either end aside. */
  private static boolean isText(List<String> lines) {
    long printable = lines.stream().filter(SampleLines::isText).count();
    return printable * 10 >= lines.size() * 9L;
  }

  private static boolean isText(String line) {
    long odd = line.chars().filter(c -> (c < 0x20 && c != '\t') || c == 0x7F).count();
    boolean digit = line.chars().anyMatch(c -> c >= '0' && c <= '9');
    return odd <= 3 && odd * 3 <= line.length() && (digit || line.length() < 40);
  }

  private static String name(String end) {
    return Map.of("\r\n", "CRLF", "\n", "LF", "\r", "CR").getOrDefault(end, Escapes.bytes(end));
  }
}
