package io.github.platenwire.device;

import io.github.platenwire.reading.Quality;

/** A number, or a text that stands in its place when the device is overloaded. */
final class NumberStep implements Step {
  private final String name;
  private final int value;
  private final NumberFormat format;
  private final Words over;

  /**
   * Makes the step.
   *
   * @param name the field's name
   * @param value its index among the line's values
   * @param format how it is written
   * @param over what is sent in its place at overload
   */
  NumberStep(String name, int value, NumberFormat format, Words over) {
    this.name = name;
    this.value = value;
    this.format = format;
    this.over = over;
  }

  @Override
  public int match(byte[] line, int at, int end, LineValues values) {
    int from = Blanks.skip(line, at, end);
    DecimalScanner scanner = values.scanner();
    int to = scanner.scan(format, line, from, end);
    if (to < 0) {
      int word = over.longestAt(line, from, end);
      return word < 0 ? -1 : overloaded(values, from + over.lengthOf(word));
    }
    if (over.holds(line, from, to)) {
      return overloaded(values, to);
    }
    double number = scanner.value(line);
    if (Double.isInfinite(number)) {
      return -1;
    }
    values.setValue(value, number);
    return to;
  }

  private int overloaded(LineValues values, int to) {
    values.setValue(value, Double.NaN);
    values.worsen(value, Quality.OVER);
    return to;
  }

  @Override
  public ByteSet starts() {
    return format.starts().with(over.starts()).with(ByteSet.BLANKS);
  }

  @Override
  public ByteSet rests() {
    return format.rests().with(over.rests());
  }

  @Override
  public ByteSet continues() {
    return format.continues().with(over.continues());
  }

  @Override
  public int shortest() {
    int sign = format.sign() == NumberFormat.Sign.REQUIRED ? 1 : 0;
    int number = sign + Math.max(1, format.digits());
    return over.longest() == 0 ? number : Math.min(number, over.shortest());
  }

  @Override
  public int longest() {
    return UNBOUNDED; // leading blanks are no part of any count
  }

  @Override
  public String label() {
    return "{" + name + "}";
  }
}
