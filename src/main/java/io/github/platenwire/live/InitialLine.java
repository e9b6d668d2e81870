package io.github.platenwire.live;

import java.util.Arrays;
import java.util.List;

/**
 * The line of opening against load before cracking, for each gauge by least squares over the rows
 * of a load window. Closed, for good, by the first row beyond the window; without ten rows in it
 * there is no line. The line of several gauges is the mean of theirs. Interpolated rows are not
 * independent: of a slow gauge's rows only as many count as it sent readings. Nor are they as noisy
 * as its readings: between two of them the variance is a^2 + (1-a)^2 of one's, so the scatter about
 * the line is set up by the mean of that. (For a gauge more than twice as fast as the load this
 * states up to 1.4 times too much.) Not thread-safe.
 */
final class InitialLine {
  private static final int LEAST_ROWS = 10;
  private static final int STEPS = 256;
  private static final double SHARE_OF_GREATEST = 0.8;

  private final List<GaugeLimits> limits;
  private final CrackSettings.FitWindow window;
  private final LineFit[] fits;
  private final LineFit[][] waiting;
  private final double step;
  private final long[] distinct;
  private final long[] rows;
  private final double[] noiseShares;
  private final long[] lastHighSeqs;
  private final double[] noises;
  private long firstSeq;
  private long lastSeq;
  private long lastWaitingSeq;
  private boolean closed;
  private boolean frozen;
  private long absorbedSteps;

  InitialLine(List<GaugeLimits> limits, CrackSettings.FitWindow window) {
    this.limits = limits;
    this.window = window;
    fits = new LineFit[limits.size()];
    for (int i = 0; i < fits.length; i++) {
      fits[i] = new LineFit();
    }
    waiting = new LineFit[fits.length][STEPS];
    for (LineFit[] each : waiting) {
      Arrays.setAll(each, index -> new LineFit());
    }
    step = (window.toNewtons() - window.fromNewtons()) / 16;
    distinct = new long[fits.length];
    rows = new long[fits.length];
    noiseShares = new double[fits.length];
    lastHighSeqs = new long[fits.length];
    noises = new double[fits.length];
  }

  /** Takes a row; true when the line has just become usable. */
  boolean accept(AlignedRow row, double load, CrackWidth width, int mask) {
    if (frozen || load < window.fromNewtons()) {
      return false;
    }
    boolean closes = !closed && load > window.toNewtons();
    if (closes) {
      closed = true;
      absorbedSteps = (long) Math.floor(window.toNewtons() / step);
      setNoises();
    }
    if (closed) {
      absorbUpTo(load);
    }
    take(row, load, width, mask);
    return closes;
  }

  private void take(AlignedRow row, double load, CrackWidth width, int mask) {
    long place = (long) Math.floor(load / step);
    boolean waits = closed && place >= absorbedSteps;
    for (int i = 0; i < fits.length; i++) {
      if ((mask & (1 << i)) != 0) {
        LineFit fit = waits ? waiting[i][(int) (place % STEPS)] : fits[i];
        fit.add(load, width.opening(i));
        distinct[i] += row.highSeqs[i] == lastHighSeqs[i] ? 0 : 1;
        lastHighSeqs[i] = row.highSeqs[i];
        rows[i]++;
        noiseShares[i] += row.noiseShares[i];
      }
    }
    firstSeq = firstSeq == 0 ? row.seq : firstSeq;
    lastSeq = waits ? lastSeq : row.seq;
    lastWaitingSeq = row.seq;
  }

  /** Takes in the steps that lie below four fifths of a load, or that need their place. */
  private void absorbUpTo(double load) {
    long place = (long) Math.floor(load / step);
    long upTo = Math.max((long) Math.floor(load * SHARE_OF_GREATEST / step), place - STEPS + 1);
    if (upTo <= absorbedSteps) {
      return;
    }
    long last = Math.min(upTo, absorbedSteps + STEPS);
    for (long each = absorbedSteps; each < last; each++) {
      for (int i = 0; i < fits.length; i++) {
        fits[i].absorb(waiting[i][(int) (each % STEPS)]);
      }
    }
    absorbedSteps = upTo;
    lastSeq = lastWaitingSeq;
    setNoises();
  }

  private void setNoises() {
    for (int i = 0; i < fits.length; i++) {
      double residual = fits[i].residual() * Math.sqrt(rows[i] / noiseShares[i]);
      noises[i] = Math.max(residual, limits.get(i).resolution() / Math.sqrt(12));
    }
  }

  /** Ends the following of the load, for good. */
  void freeze() {
    frozen = true;
  }

  /** Whether every gauge of a mask has its line. */
  boolean isFitted(int mask) {
    if (!closed || mask == 0) {
      return false;
    }
    for (int i = 0; i < fits.length; i++) {
      if ((mask & (1 << i)) != 0 && !(fits[i].count() >= LEAST_ROWS && noises[i] >= 0)) {
        return false;
      }
    }
    return true;
  }

  double slope(int gauge) {
    return closed && fits[gauge].count() >= LEAST_ROWS ? fits[gauge].slope() : 0;
  }

  double at(double load, int mask) {
    double sum = 0;
    for (int i = 0; i < fits.length; i++) {
      sum += (mask & (1 << i)) == 0 ? 0 : fits[i].at(load);
    }
    return sum / Integer.bitCount(mask);
  }

  double meanSlope(int mask) {
    double sum = 0;
    for (int i = 0; i < fits.length; i++) {
      sum += (mask & (1 << i)) == 0 ? 0 : fits[i].slope();
    }
    return sum / Integer.bitCount(mask);
  }

  private double shareOf(int gauge) {
    return Math.max(1, distinct[gauge]) / (double) Math.max(1, rows[gauge]);
  }

  /** Share of independent rows over the gauges of a mask, the slowest counting. */
  double share(int mask) {
    double least = 1;
    for (int i = 0; i < fits.length; i++) {
      least = (mask & (1 << i)) == 0 ? least : Math.min(least, shareOf(i));
    }
    return least;
  }

  /** Variance of the mean line at a load. */
  double variance(double load, int mask) {
    double sum = 0;
    for (int i = 0; i < fits.length; i++) {
      sum += (mask & (1 << i)) == 0 ? 0 : fits[i].variance(load, noises[i], shareOf(i));
    }
    return sum / (Integer.bitCount(mask) * (double) Integer.bitCount(mask));
  }

  /** Variance of the mean slope. */
  double slopeVariance(int mask) {
    double sum = 0;
    for (int i = 0; i < fits.length; i++) {
      sum += (mask & (1 << i)) == 0 ? 0 : fits[i].slopeVariance(noises[i], shareOf(i));
    }
    return sum / (Integer.bitCount(mask) * (double) Integer.bitCount(mask));
  }

  /**
   * Variance of the mean opening over some rows by noise and resolution. A resolution that is
   * coarse against the noise is not averaged away: see {@link SteppedMean}.
   */
  double noiseVariance(int count, int mask) {
    double sum = 0;
    for (int i = 0; i < fits.length; i++) {
      if ((mask & (1 << i)) != 0) {
        sum += SteppedMean.variance(noises[i], limits.get(i).resolution(), count * shareOf(i));
      }
    }
    return sum / (Integer.bitCount(mask) * (double) Integer.bitCount(mask));
  }

  long firstSeq() {
    return firstSeq;
  }

  long lastSeq() {
    return lastSeq;
  }
}
