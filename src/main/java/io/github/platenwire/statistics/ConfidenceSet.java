package io.github.platenwire.statistics;

/**
 * The values that the data do not contradict at the level asked for. For a quotient this need not
 * be an interval: when the denominator cannot be told from zero it has no end, and that is said
 * instead of a number. Immutable.
 */
public sealed interface ConfidenceSet {
  /** Whether the data leave this value standing. */
  boolean contains(double value);

  /** An ordinary interval with two ends. */
  record Bounded(Interval interval) implements ConfidenceSet {
    @Override
    public boolean contains(double value) {
      return interval.contains(value);
    }
  }

  /**
   * Everything up to one value and everything from another on; what lies between is contradicted.
   * One-sided when one of the two is infinite.
   *
   * @param upTo end of the lower part; negative infinity if there is none
   * @param from start of the upper part; positive infinity if there is none
   */
  record Unbounded(double upTo, double from) implements ConfidenceSet {
    @Override
    public boolean contains(double value) {
      return value <= upTo || value >= from;
    }
  }

  /** Any value at all: the data say nothing about the quotient. */
  record Whole() implements ConfidenceSet {
    @Override
    public boolean contains(double value) {
      return true;
    }
  }

  /**
   * No set is given.
   *
   * @param reason in words for a person
   */
  record NotGiven(String reason) implements ConfidenceSet {
    @Override
    public boolean contains(double value) {
      return false;
    }
  }
}
