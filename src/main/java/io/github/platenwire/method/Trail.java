package io.github.platenwire.method;

import io.github.platenwire.live.BandJudge;
import io.github.platenwire.live.ChordCycle;
import io.github.platenwire.live.CrackResult;
import io.github.platenwire.live.FollowedRow;
import java.util.List;

/**
 * Shown what a method works with on its way to its figures, for whoever wants to tell afterwards
 * where one comes from. Everything is optional, and nothing that a method computes depends on it.
 * Called on the thread that feeds the run.
 */
public interface Trail {
  /** A step over which the rate of loading was taken; loads in newtons, zero taken off. */
  default void rate(BandJudge.Step step) {}

  /** A row of load and gauges, as it was followed. */
  default void row(FollowedRow row) {}

  /** What the crack came to, once, at the end. */
  default void crack(CrackResult result) {}

  /** The loading cycles, once, at the end. */
  default void cycles(List<ChordCycle> cycles) {}

  /** The readings of a front or of masses that count, by time; once, at the end. */
  default void readings(List<FrontPart.Reading> counted) {}
}
