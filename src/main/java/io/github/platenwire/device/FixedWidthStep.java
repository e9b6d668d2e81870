package io.github.platenwire.device;

/** A field that takes up a fixed number of bytes, its blanks on either side not counted as text. */
final class FixedWidthStep implements Step {
  private final Step inner;
  private final int width;

  FixedWidthStep(Step inner, int width) {
    this.inner = inner;
    this.width = width;
  }

  @Override
  public int match(byte[] line, int at, int end, LineValues values) {
    if (end - at < width) {
      return -1;
    }
    int stop = at + width;
    int from = Blanks.skip(line, at, stop);
    int to = stop;
    while (to > from && Blanks.isBlank(line[to - 1])) {
      to--;
    }
    return inner.match(line, from, to, values) == to ? stop : -1;
  }

  @Override
  public ByteSet starts() {
    return inner.starts().with(ByteSet.BLANKS);
  }

  @Override
  public ByteSet rests() {
    return inner.starts().with(inner.rests()).with(ByteSet.BLANKS);
  }

  @Override
  public ByteSet continues() {
    return ByteSet.NONE;
  }

  @Override
  public int shortest() {
    return width;
  }

  @Override
  public int longest() {
    return width;
  }

  @Override
  public String label() {
    return inner.label();
  }
}
