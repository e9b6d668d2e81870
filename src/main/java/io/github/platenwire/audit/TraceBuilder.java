package io.github.platenwire.audit;

import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.RawRow;
import java.util.Arrays;

/**
 * Gathers the trace of one channel while a raw file is read once. Only readings of quality {@code
 * ok} count. Constant work a row. Not thread-safe.
 */
final class TraceBuilder {
  private final String channel;
  private final DigitFinder digits = new DigitFinder();
  private long[] micros = new long[1024];
  private double[] values = new double[1024];
  private long[] counts = new long[1024];
  private int length;
  private boolean allDigits = true;
  private int fewestDecimals = Integer.MAX_VALUE;
  private int mostDecimals;

  /** Begins a trace of a channel. */
  TraceBuilder(String channel) {
    this.channel = channel;
  }

  /** Takes a row of the raw file, of whatever channel. */
  void accept(RawRow row) {
    if (row.quality() == Quality.OK
        && !Double.isNaN(row.value())
        && row.channel().equals(channel)) {
      add(row.elapsedMicros(), row.received(), row.value());
    }
  }

  /**
   * Takes a reading.
   *
   * @param elapsedMicros its arrival, microseconds since the origin
   * @param received the frame as it came
   * @param value in the channel's unit
   */
  void add(long elapsedMicros, byte[] received, double value) {
    if (length == values.length) {
      micros = Arrays.copyOf(micros, 2 * length);
      values = Arrays.copyOf(values, 2 * length);
      counts = Arrays.copyOf(counts, 2 * length);
    }
    micros[length] = elapsedMicros;
    values[length] = value;
    if (allDigits && digits.find(received, value)) {
      counts[length] = digits.count();
      fewestDecimals = Math.min(fewestDecimals, digits.decimals());
      mostDecimals = Math.max(mostDecimals, digits.decimals());
    } else {
      allDigits = false;
    }
    length++;
  }

  /** The trace so far. */
  LoadTrace trace() {
    boolean known = allDigits && length > 0;
    return new LoadTrace(
        Arrays.copyOf(micros, length),
        Arrays.copyOf(values, length),
        known ? Arrays.copyOf(counts, length) : new long[0],
        known ? fewestDecimals : 0,
        known ? mostDecimals : 0);
  }
}
