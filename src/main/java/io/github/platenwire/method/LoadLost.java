package io.github.platenwire.method;

/**
 * Tells the load being lost from an operator's unloading: it is lost when it stays below a fraction
 * of the greatest while the crack is wider than it was there; unloading closes the crack. A smaller
 * fall while the crack runs, such as a bar that slips, is told once for each greatest load.
 * Constant work and no allocation a row. Not thread-safe.
 */
final class LoadLost {
  /** Within this share of the greatest load the width there is still followed. */
  private static final double NEAR_GREATEST = 0.98;

  private final Rule rule;
  private double greatest = Double.NEGATIVE_INFINITY;
  private double widthThere = Double.NEGATIVE_INFINITY;
  private boolean told;
  private long lowSinceMicros = Long.MAX_VALUE;
  private long endMicros = Long.MAX_VALUE;

  /**
   * When a load is lost.
   *
   * @param fraction of the greatest load
   * @param widerMillimetres by how much the crack must have opened since
   * @param fallShare a fall by this share is worth telling
   * @param micros how long it must stay low, microseconds
   * @param leastNewtons greatest load below which nothing counts
   * @param tailMicros what is recorded afterwards, microseconds
   */
  record Rule(
      double fraction,
      double widerMillimetres,
      double fallShare,
      long micros,
      double leastNewtons,
      long tailMicros) {}

  /** What a row brought about. */
  enum News {
    NONE,
    FELL,
    LOST
  }

  LoadLost(Rule rule) {
    this.rule = rule;
  }

  News accept(long micros, double load, double width) {
    if (isLost()) {
      return News.NONE;
    }
    if (load > greatest) {
      greatest = load;
      told = false;
    }
    if (load >= NEAR_GREATEST * greatest && width > widthThere) {
      widthThere = width;
    }
    boolean runs = greatest >= rule.leastNewtons && width > widthThere + rule.widerMillimetres;
    if (!runs || load >= rule.fraction * greatest) {
      lowSinceMicros = Long.MAX_VALUE;
    } else if (lowSinceMicros == Long.MAX_VALUE) {
      lowSinceMicros = micros;
    } else if (micros - lowSinceMicros >= rule.micros) {
      endMicros = micros + rule.tailMicros;
      return News.LOST;
    }
    if (runs && !told && load < (1 - rule.fallShare) * greatest) {
      told = true;
      return News.FELL;
    }
    return News.NONE;
  }

  boolean isLost() {
    return endMicros != Long.MAX_VALUE;
  }

  boolean isTailOver(long micros) {
    return micros >= endMicros;
  }

  double greatestNewtons() {
    return greatest;
  }
}
