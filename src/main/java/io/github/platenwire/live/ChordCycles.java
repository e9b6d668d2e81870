package io.github.platenwire.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Finds loading cycles and the chord of each, from averaged rows of load and strain. A cycle's
 * strains count from where its load was lowest; its chord begins where the strain passes the first
 * mark upward and ends where the load passes the second. It is over, and the next is looked for,
 * when the load has come down far enough. Constant work a row; allocates only at marks. Not
 * thread-safe.
 */
final class ChordCycles {
  /** A rise by so many bands of the lowest load is one that can be turned back from. */
  private static final double RISE_IN_BANDS = 10;

  private final ChordSettings settings;
  private final long rateMicros;
  private final ChordListener listener;
  private final LowestLoad lowest;
  private final List<ChordCycle> ended = new ArrayList<>();
  private final CrackRow previous = new CrackRow();
  private double previousAcross;
  private boolean hasPrevious;
  private Optional<ChordCycle.Mark> first = Optional.empty();
  private Optional<ChordCycle.Mark> second = Optional.empty();
  private final Top top = new Top();
  private BandJudge judge;
  private double greatest = Double.NEGATIVE_INFINITY;
  private boolean passed;
  private boolean beyondTold;
  private int turnedBack;

  /** The row of greatest load between the marks, kept without allocating. */
  private final class Top {
    private final CrackRow row = new CrackRow();
    private double across;
    private double loadRate;
    private double strainRate;
    private boolean known;

    void keep(CrackRow from, double newAcross, double newLoadRate, double newStrainRate) {
      row.copyFrom(from);
      across = newAcross;
      loadRate = newLoadRate;
      strainRate = newStrainRate;
      known = true;
    }

    Optional<ChordCycle.Mark> mark() {
      return known && row.load >= settings.leastNewtons()
          ? Optional.of(
              new ChordCycle.Mark(
                  row.micros,
                  row.load,
                  row.opening - lowest.strain(),
                  across - lowest.across(),
                  loadRate,
                  strainRate,
                  row.firstSeq,
                  row.seq))
          : Optional.empty();
    }
  }

  ChordCycles(ChordSettings settings, long rateMicros, ChordListener listener) {
    this.settings = settings;
    this.rateMicros = rateMicros;
    this.listener = listener;
    lowest = new LowestLoad(settings.bandNewtons());
    judge = newJudge();
  }

  private BandJudge newJudge() {
    return new BandJudge(rateMicros, settings.rates());
  }

  /**
   * Takes the next averaged row; {@code opening} holds its strain.
   *
   * @param across strain across, NaN where there is none
   * @param newtonsPerSecond rate of loading
   * @param strainPerSecond rate of strain
   */
  void accept(CrackRow row, double across, double newtonsPerSecond, double strainPerSecond) {
    if (first.isEmpty() && !passed) {
      lowest.accept(row, across);
    }
    followRate(row, newtonsPerSecond);
    if (row.load > greatest) {
      greatest = row.load;
      if (first.isPresent() && second.isEmpty()) {
        top.keep(row, across, newtonsPerSecond, strainPerSecond);
      }
    }
    if (hasPrevious) {
      lookForMarks(row, across, newtonsPerSecond, strainPerSecond);
    }
    if (greatest > settings.beyondNewtons() && !beyondTold) {
      beyondTold = true;
      listener.beyond(current(), greatest);
    }
    if (hasComeDown(row.load)) {
      endCycle();
    }
    previous.copyFrom(row);
    previousAcross = across;
    hasPrevious = true;
  }

  private void followRate(CrackRow row, double newtonsPerSecond) {
    if (first.isPresent() && second.isEmpty()) {
      judge.accept(row.micros, row.load, newtonsPerSecond);
    }
  }

  private void lookForMarks(CrackRow row, double across, double loadRate, double strainRate) {
    if (passed) {
      return;
    }
    double strain = row.opening - lowest.strain();
    double before = previous.opening - lowest.strain();
    double level = settings.firstStrain();
    if (first.isEmpty() && strain >= level && before < level) {
      double share = (level - before) / (strain - before);
      ChordCycle.Mark mark = mark(row, across, share, loadRate, strainRate);
      first = Optional.of(mark);
      judge = newJudge();
      listener.firstMark(current(), mark);
    } else if (first.isPresent() && strain < level - settings.hysteresisStrain()) {
      first = Optional.empty();
    }
    double end = settings.secondNewtons();
    if (row.load >= end && previous.load < end) {
      passed = true;
      double share = (end - previous.load) / (row.load - previous.load);
      ChordCycle.Mark mark = mark(row, across, share, loadRate, strainRate);
      if (first.isPresent()) {
        second = Optional.of(mark);
        listener.secondMark(current(), first.get(), mark);
      } else {
        listener.noStrain(current(), strain);
      }
    }
  }

  /** The point at a share of the way from the row before to this one. */
  private ChordCycle.Mark mark(
      CrackRow row, double across, double share, double loadRate, double strainRate) {
    double strain = previous.opening + (row.opening - previous.opening) * share;
    double wide = previousAcross + (across - previousAcross) * share;
    return new ChordCycle.Mark(
        previous.micros + Math.round((row.micros - previous.micros) * share),
        previous.load + (row.load - previous.load) * share,
        strain - lowest.strain(),
        wide - lowest.across(),
        loadRate,
        strainRate,
        previous.firstSeq,
        row.seq);
  }

  private boolean hasComeDown(double load) {
    double rise = greatest - lowest.load();
    return lowest.isKnown()
        && rise > RISE_IN_BANDS * settings.bandNewtons()
        && load - lowest.load() < settings.unloadShare() * rise;
  }

  private void endCycle() {
    closeCycle();
    first = Optional.empty();
    second = Optional.empty();
    top.known = false;
    passed = false;
    beyondTold = false;
    greatest = Double.NEGATIVE_INFINITY;
    lowest.restart();
  }

  /** Ends the cycle under way with what it has; no more rows come. */
  void finish() {
    closeCycle();
  }

  private void closeCycle() {
    boolean complete = second.isPresent();
    Optional<ChordCycle.Mark> end = complete ? second : top.mark();
    if (first.isPresent() && end.isPresent()) {
      ChordCycle cycle = cycle(first.get(), end.get(), complete);
      ended.add(cycle);
      listener.ended(cycle);
    } else if (first.isPresent()) {
      turnedBack++;
      listener.turnedBack(greatest);
    }
  }

  private ChordCycle cycle(ChordCycle.Mark from, ChordCycle.Mark to, boolean complete) {
    return new ChordCycle(
        current(),
        new ChordCycle.Lowest(
            lowest.load(), lowest.strain(), lowest.across(), lowest.firstSeq(), lowest.lastSeq()),
        from,
        to,
        greatest,
        complete,
        judge.judge(0, 1));
  }

  List<ChordCycle> ended() {
    return List.copyOf(ended);
  }

  int endedCount() {
    return ended.size();
  }

  /** Number of the cycle under way, or of the next. */
  int current() {
    return ended.size() + 1;
  }

  /** How often the load came down between the two marks. */
  int turnedBack() {
    return turnedBack;
  }

  boolean hasFirst() {
    return first.isPresent();
  }

  boolean hasPassed() {
    return passed;
  }

  double zeroStrain() {
    return lowest.isKnown() ? lowest.strain() : Double.NaN;
  }

  double zeroAcross() {
    return lowest.isKnown() ? lowest.across() : Double.NaN;
  }

  double greatest() {
    return greatest;
  }
}
