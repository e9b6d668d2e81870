package io.github.platenwire.live;

import java.util.Arrays;

/**
 * One load reading with the value of each gauge at its moment. Used over and over by {@link
 * Alignment}: whoever is shown one must not keep it. Not thread-safe.
 */
public final class AlignedRow {
  long seq;
  long micros;
  double load;
  final double[] values;
  final double[] noiseShares;
  final long[] lowSeqs;
  final long[] highSeqs;

  AlignedRow(int gauges) {
    values = new double[gauges];
    noiseShares = new double[gauges];
    lowSeqs = new long[gauges];
    highSeqs = new long[gauges];
  }

  void start(long newSeq, long newMicros, double newLoad) {
    seq = newSeq;
    micros = newMicros;
    load = newLoad;
    Arrays.fill(values, Double.NaN);
    Arrays.fill(noiseShares, 1);
    Arrays.fill(lowSeqs, 0);
    Arrays.fill(highSeqs, 0);
  }

  /** Number of the load reading in the raw file. */
  public long seq() {
    return seq;
  }

  /** The moment of the load reading, microseconds since the test's origin. */
  public long micros() {
    return micros;
  }

  /** The load as read, newtons, zero not taken off. */
  public double loadNewtons() {
    return load;
  }

  /** How many gauges there are. */
  public int gauges() {
    return values.length;
  }

  /** A gauge's value at that moment, millimetres, zero not taken off; NaN where it is missing. */
  public double millimetres(int gauge) {
    return values[gauge];
  }

  /** Number of the gauge's reading at or before that moment; 0 where the value is missing. */
  public long lowSeq(int gauge) {
    return lowSeqs[gauge];
  }

  /** Number of the gauge's reading at or after that moment; 0 where the value is missing. */
  public long highSeq(int gauge) {
    return highSeqs[gauge];
  }
}
