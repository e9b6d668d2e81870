package io.github.platenwire.emulate;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * How an emulated indicator writes a reading as one line: an optional status word, a sign, a fixed
 * number of digits, the unit, a terminator. Immutable; safe for any thread.
 *
 * @param status words in front of the value, if any
 * @param integerDigits digits before the decimal mark, 1 to 12
 * @param decimals digits after it, 0 to 6; no mark when 0
 * @param decimalComma whether the mark is a comma
 * @param separator stands between status, value and unit
 * @param unit a unit of force
 * @param terminator one to four control characters, such as {@code \r\n}
 */
public record LineLayout(
    Optional<Status> status,
    int integerDigits,
    int decimals,
    boolean decimalComma,
    char separator,
    Unit unit,
    String terminator)
    implements ReadingLayout {
  /** {@code +0012345 lbf}, CR, LF. */
  public static final LineLayout POUNDS =
      new LineLayout(Optional.empty(), 7, 0, false, ' ', Unit.POUND_FORCE, "\r\n");

  /** {@code +0123.45 kN}, CR, LF. */
  public static final LineLayout KILONEWTONS =
      new LineLayout(Optional.empty(), 4, 2, false, ' ', Unit.KILONEWTON, "\r\n");

  /** {@code ST,+00123.45,kN}, and {@code OL,-------,kN} beyond its capacity, CR, LF. */
  public static final LineLayout STATUS_KILONEWTONS =
      new LineLayout(
          Optional.of(new Status("ST", "OL", "-------")),
          5,
          2,
          false,
          ',',
          Unit.KILONEWTON,
          "\r\n");

  /**
   * Words that tell how the device fares.
   *
   * @param ok within its capacity
   * @param over at or beyond its capacity
   * @param digitsOver stands in place of the number then
   */
  public record Status(String ok, String over, String digitsOver) {}

  /**
   * Checks the parts.
   *
   * @throws IllegalArgumentException if one is out of range, or a comma would mean two things
   */
  public LineLayout {
    Ranges.within("integerDigits", integerDigits, 1, 12);
    Ranges.within("decimals", decimals, 0, 6);
    Ranges.within("terminator length", terminator.length(), 1, 4);
    if (unit.quantity() != Quantity.FORCE) {
      throw new IllegalArgumentException("an indicator shows a load, unit=" + unit.symbol());
    }
    if (!terminator.chars().allMatch(c -> c < ' ')) {
      throw new IllegalArgumentException("a terminator is made of control characters");
    }
    if (decimalComma && separator == ',') {
      throw new IllegalArgumentException("a comma cannot be both decimal mark and separator");
    }
  }

  /** The greatest number of last-digit steps that the digits can show. */
  @Override
  public long greatestCounts() {
    long greatest = countsPerUnit();
    for (int i = 0; i < integerDigits; i++) {
      greatest *= 10;
    }
    return greatest - 1;
  }

  /**
   * One reading as a line, terminator included.
   *
   * @param counts the value in steps of the last digit
   * @param over whether the device is at or beyond its capacity; unseen without status words
   * @throws IllegalArgumentException if the digits cannot show it
   */
  byte[] line(long counts, boolean over) {
    if (Math.abs(counts) > greatestCounts()) {
      throw new IllegalArgumentException(
          "too great for the digits, counts=" + counts + " greatest=" + greatestCounts());
    }
    StringBuilder line = new StringBuilder(32);
    status.ifPresent(words -> line.append(over ? words.over : words.ok).append(separator));
    line.append(status.isPresent() && over ? status.get().digitsOver : digits(counts));
    line.append(separator).append(unit.symbol()).append(terminator);
    return line.toString().getBytes(StandardCharsets.US_ASCII);
  }

  private String digits(long counts) {
    String significant = Long.toString(Math.abs(counts));
    StringBuilder digits = new StringBuilder(16);
    digits.append(counts < 0 ? '-' : '+');
    digits.append("0".repeat(integerDigits + decimals - significant.length())).append(significant);
    if (decimals > 0) {
      digits.insert(digits.length() - decimals, decimalComma ? ',' : '.');
    }
    return digits.toString();
  }

  @Override
  public byte[] bytes(Shown shown) {
    return line(shown.counts(), shown.over());
  }
}
