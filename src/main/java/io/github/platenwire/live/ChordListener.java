package io.github.platenwire.live;

/** Told what a loading cycle comes to, at the row that brings it about. */
public interface ChordListener {
  /** The strain passed the first mark. */
  void firstMark(int cycle, ChordCycle.Mark mark);

  /** The load passed the second mark; the chord is known. */
  void secondMark(int cycle, ChordCycle.Mark first, ChordCycle.Mark second);

  /** The load passed the second mark while the strain had not reached the first. */
  void noStrain(int cycle, double strain);

  /** The load goes too far. */
  void beyond(int cycle, double newtons);

  /** A cycle is over, with its chord. */
  void ended(ChordCycle cycle);

  /** The load came down again before the second mark. */
  void turnedBack(double greatestNewtons);
}
