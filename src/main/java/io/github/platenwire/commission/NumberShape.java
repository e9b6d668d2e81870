package io.github.platenwire.commission;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * How a column's numbers are written. Immutable.
 *
 * @param sign as a definition says it
 * @param digits exact count, or 0 if it varies or no zeros pad it
 * @param exponent whether one of them has an exponent
 * @param marked whether one of them has the decimal mark
 */
record NumberShape(String sign, int digits, boolean exponent, boolean marked) {
  private static final int FEWEST_PADDED = 3;

  /** The shape of some texts, at least one. */
  static NumberShape of(List<String> texts, char mark, boolean signAfter) {
    // where all are negative, a positive one may well come without a sign
    boolean always =
        texts.stream().allMatch(t -> t.startsWith("+") || t.startsWith("-"))
            && texts.stream().anyMatch(t -> t.startsWith("+"));
    boolean exponent = texts.stream().anyMatch(t -> t.indexOf('e') > 0 || t.indexOf('E') > 0);
    Set<Long> counts = texts.stream().map(NumberShape::digits).collect(Collectors.toSet());
    boolean padded = texts.stream().anyMatch(t -> t.matches("[+-]?[ \t]*0\\d.*"));
    int count = counts.size() == 1 ? counts.iterator().next().intValue() : 0;
    return new NumberShape(
        signAfter ? "after" : always ? "required" : "optional",
        padded && !exponent && count >= FEWEST_PADDED ? count : 0,
        exponent,
        texts.stream().anyMatch(t -> t.indexOf(mark) >= 0));
  }

  private static long digits(String text) {
    return text.chars().filter(c -> c >= '0' && c <= '9').count();
  }

  /** The number that a text stands for, whatever way it is signed. */
  static double value(String text, char mark) {
    String plain = text.replaceAll("[ \t+-]", "").replace(mark, '.');
    boolean exponent = text.matches(".*[eE].*");
    double size = exponent ? 0 : Double.parseDouble(plain.startsWith(".") ? "0" + plain : plain);
    return text.contains("-") ? -size : size;
  }
}
