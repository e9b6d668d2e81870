package io.github.platenwire.bench;

import java.util.Optional;

/**
 * One figure that was measured. Immutable.
 *
 * @param key its name for programs, with the unit at its end
 * @param words what it is, for people
 * @param value in the unit
 * @param unit as it stands behind the value
 * @param ratio how it stands beside something measured in the same run, if anything
 */
public record BenchFigure(
    String key, String words, double value, String unit, Optional<Ratio> ratio) {

  /**
   * A figure divided by another of the same run.
   *
   * @param against what it is divided by, for people
   * @param times the quotient
   * @param target what the project wants of it
   * @param atMost whether the target is an upper limit
   */
  public record Ratio(String against, double times, double target, boolean atMost) {
    /** Whether the target is reached. */
    public boolean isReached() {
      return atMost ? times <= target : times >= target;
    }
  }

  /** A figure by itself. */
  static BenchFigure of(String key, String words, double value, String unit) {
    return new BenchFigure(key, words, value, unit, Optional.empty());
  }

  /** The same figure beside another, of which it should be at least so many times. */
  BenchFigure atLeast(double target, double other, String against) {
    return new BenchFigure(
        key, words, value, unit, Optional.of(new Ratio(against, value / other, target, false)));
  }

  /** The same figure beside another, of which it should be at most so many times. */
  BenchFigure atMost(double target, double other, String against) {
    return new BenchFigure(
        key, words, value, unit, Optional.of(new Ratio(against, value / other, target, true)));
  }
}
