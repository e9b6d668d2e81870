package io.github.platenwire.live;

/**
 * Readings in a row with their mean, spread and scatter, kept in constant memory (Welford's
 * updating formulas; Knuth, TAOCP vol. 2, 4.2.2). Not thread-safe.
 */
final class Stretch {
  long firstSeq;
  long lastSeq;
  long firstMicros;
  long lastMicros;
  int count;
  double mean;
  double least;
  double greatest;
  private double squares;
  private final SmallestStep step = new SmallestStep();

  void restart(long seq, long elapsedMicros, double value) {
    firstSeq = seq;
    firstMicros = elapsedMicros;
    count = 0;
    mean = 0;
    squares = 0;
    least = value;
    greatest = value;
    step.restart();
    add(seq, elapsedMicros, value);
  }

  void add(long seq, long elapsedMicros, double value) {
    lastSeq = seq;
    lastMicros = elapsedMicros;
    count++;
    double off = value - mean;
    mean += off / count;
    squares += off * (value - mean);
    least = Math.min(least, value);
    greatest = Math.max(greatest, value);
    step.accept(value);
  }

  void copyFrom(Stretch other) {
    firstSeq = other.firstSeq;
    lastSeq = other.lastSeq;
    firstMicros = other.firstMicros;
    lastMicros = other.lastMicros;
    count = other.count;
    mean = other.mean;
    squares = other.squares;
    least = other.least;
    greatest = other.greatest;
    step.copyFrom(other.step);
  }

  long spanMicros() {
    return count == 0 ? 0 : lastMicros - firstMicros;
  }

  double standardDeviation() {
    return count < 2 ? Double.NaN : Math.sqrt(squares / (count - 1));
  }

  double smallestStep() {
    return step.value();
  }
}
