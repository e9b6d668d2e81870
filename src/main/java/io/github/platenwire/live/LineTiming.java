package io.github.platenwire.live;

/**
 * Puts the readings of one channel at the moments to which they belong. Frames that came in one
 * read share a stamp; all but the last are set back by the time that the bytes after them took on
 * the line, never forward and never before the reading in front of them. The channel's known delay
 * is then taken off. Readings come out when their burst is known to be whole: at the channel's next
 * stamp, or when the clock passes.
 *
 * <p>Setting back by the byte time is the least that must have passed: where the device pauses
 * between frames, the earlier frames of a burst are older still by an amount that no stamp tells.
 *
 * <p>Constant work a reading on average, no allocation. Not thread-safe.
 */
public final class LineTiming {
  private final double microsPerByte;
  private final long delayMicros;
  private final Sink sink;
  private final long[] seqs;
  private final int[] bytes;
  private final double[] values;
  private final boolean[] overs;
  private int count;
  private long heldStamp;
  private long lastMicros = Long.MIN_VALUE;
  private long overflows;

  /** Takes readings at the moments to which they belong, in order. */
  @FunctionalInterface
  public interface Sink {
    /**
     * One reading.
     *
     * @param seq its number in the raw file
     * @param micros the moment to which it belongs, microseconds since the test's origin
     * @param value as it was given; NaN where nothing could be decoded
     * @param over whether the device or the range said that it is beyond what it can show
     */
    void timed(long seq, long micros, double value, boolean over);
  }

  /**
   * Starts with nothing held.
   *
   * @param microsPerByte time of one byte on the line, microseconds; 0 where there is no line
   * @param delayMicros how long the device takes from measuring to sending, microseconds
   * @param capacity most frames in one burst, at least 1
   * @param sink told of every reading
   * @throws IllegalArgumentException if a number is out of range
   */
  public LineTiming(double microsPerByte, long delayMicros, int capacity, Sink sink) {
    if (!(microsPerByte >= 0) || delayMicros < 0 || capacity < 1) {
      throw new IllegalArgumentException(
          "byte time and delay must not be negative and capacity at least 1, microsPerByte="
              + microsPerByte
              + " delayMicros="
              + delayMicros
              + " capacity="
              + capacity);
    }
    this.microsPerByte = microsPerByte;
    this.delayMicros = delayMicros;
    this.sink = sink;
    seqs = new long[capacity];
    bytes = new int[capacity];
    values = new double[capacity];
    overs = new boolean[capacity];
  }

  /**
   * Takes the next frame of the channel.
   *
   * @param seq its number in the raw file
   * @param stampMicros when its last byte was read
   * @param frameBytes its length with its terminator
   * @param value its value; NaN where nothing could be decoded
   * @param over whether it is beyond the range
   */
  public void accept(long seq, long stampMicros, int frameBytes, double value, boolean over) {
    if (count > 0 && stampMicros != heldStamp) {
      flush();
    }
    if (count == values.length) {
      overflows++;
      flush();
    }
    heldStamp = stampMicros;
    seqs[count] = seq;
    bytes[count] = frameBytes;
    values[count] = value;
    overs[count] = over;
    count++;
  }

  /** Time has come this far, as another channel's stamp tells: an older burst is whole. */
  public void clock(long stampMicros) {
    if (count > 0 && stampMicros > heldStamp) {
      flush();
    }
  }

  /** Lets out what is held. */
  public void flush() {
    long after = 0;
    for (int i = 1; i < count; i++) {
      after += bytes[i];
    }
    for (int i = 0; i < count; i++) {
      long micros = heldStamp - Math.round(after * microsPerByte) - delayMicros;
      lastMicros = Math.max(lastMicros, micros);
      sink.timed(seqs[i], lastMicros, values[i], overs[i]);
      if (i + 1 < count) {
        after -= bytes[i + 1];
      }
    }
    count = 0;
  }

  /** How often a burst had more frames than fit; its parts are then spread each by themselves. */
  public long overflows() {
    return overflows;
  }
}
