package io.github.platenwire.commission;

import java.util.List;

/**
 * What a definition makes of a sample. Immutable.
 *
 * @param bytes all bytes of the sample
 * @param explainedBytes those of decoded frames, their terminators with them
 * @param frames how many frames were decoded
 * @param undecodedFrames how many stretches were not
 * @param channels what each channel said, in the definition's order
 * @param undecoded the first of the stretches that were not decoded, at most {@link #MOST_KEPT}
 * @param tornHeadBytes bytes of a frame at the very beginning whose own beginning is missing
 * @param unfinishedBytes bytes at the very end that a frame begins with
 * @param readings the first readings in words, at most {@link #MOST_READINGS}
 */
public record SampleReport(
    long bytes,
    long explainedBytes,
    long frames,
    long undecodedFrames,
    List<ChannelRange> channels,
    List<Undecoded> undecoded,
    int tornHeadBytes,
    int unfinishedBytes,
    List<String> readings) {
  /** So many stretches are kept; the others are only counted. */
  public static final int MOST_KEPT = 1000;

  /** So many readings are kept as examples. */
  public static final int MOST_READINGS = 6;

  /** Keeps the lists from being changed. */
  public SampleReport {
    channels = List.copyOf(channels);
    undecoded = List.copyOf(undecoded);
    readings = List.copyOf(readings);
  }

  /**
   * The share of bytes in decoded frames, 0 to 1. What a log cuts off at either end counts neither
   * for nor against.
   */
  public double share() {
    long judged = bytes - tornHeadBytes - unfinishedBytes;
    return judged <= 0 ? 0 : (double) explainedBytes / judged;
  }

  /** Whether something was decoded and nothing was left over, torn ends aside. */
  public boolean isComplete() {
    return frames > 0 && undecodedFrames == 0;
  }
}
