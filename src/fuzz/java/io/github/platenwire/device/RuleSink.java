package io.github.platenwire.device;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;

/** Holds what a decoder finds against the rule: nothing grows, and no empty value is called good. */
final class RuleSink implements FrameSink {
  /** No frame of any definition is longer. */
  private static final int LONGEST = 1024;

  private long bytes;

  @Override
  public void value(
      byte[] frame,
      int from,
      int length,
      long arrivalNanos,
      int field,
      double value,
      Unit unit,
      Quality quality) {
    bytes += field == 0 ? check(frame, from, length) : 0;
    boolean good = quality == Quality.OK || quality == Quality.UNSTABLE;
    if (good && Double.isNaN(value)) {
      throw new AssertionError("a good reading without a value: " + quality);
    }
    if (quality == Quality.LATE) {
      throw new AssertionError("a decoder cannot know of silence");
    }
  }

  @Override
  public void garbled(byte[] frame, int from, int length, long arrivalNanos) {
    bytes += check(frame, from, length);
  }

  private static int check(byte[] frame, int from, int length) {
    if (length < 1 || length > LONGEST || from < 0 || from + length > frame.length) {
      throw new AssertionError("from " + from + " length " + length + " of " + frame.length);
    }
    return length;
  }

  /** Fails if more was reported than was fed. */
  void assertAtMost(long fed) {
    if (bytes > fed) {
      throw new AssertionError(bytes + " bytes were reported, but only " + fed + " fed");
    }
  }
}
