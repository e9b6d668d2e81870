package io.github.platenwire.device;

/** A run of spaces and tabs. */
final class BlankStep implements Step {
  private final int atLeast;

  /**
   * Makes the step.
   *
   * @param atLeast 0, or 1 where its neighbours could not be told apart without it
   */
  BlankStep(int atLeast) {
    this.atLeast = atLeast;
  }

  @Override
  public int match(byte[] line, int at, int end, LineValues values) {
    int stop = Blanks.skip(line, at, end);
    return stop - at < atLeast ? -1 : stop;
  }

  @Override
  public ByteSet starts() {
    return ByteSet.BLANKS;
  }

  @Override
  public ByteSet rests() {
    return ByteSet.BLANKS;
  }

  @Override
  public ByteSet continues() {
    return ByteSet.BLANKS;
  }

  @Override
  public int shortest() {
    return atLeast;
  }

  @Override
  public int longest() {
    return UNBOUNDED;
  }

  @Override
  public String label() {
    return "the space";
  }
}
