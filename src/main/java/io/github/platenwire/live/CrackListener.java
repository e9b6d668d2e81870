package io.github.platenwire.live;

import java.util.List;

/** Told of what happens to a crack, in order, once each. Everything is optional. */
public interface CrackListener {
  /** Every zero is taken: the load's and the gauges', unknown ones among them. */
  default void zeroTaken(ZeroLevel load, List<ZeroLevel> gauges) {}

  /** A lone reading of the load was set aside; its number in the raw file. */
  default void loadSuspect(long seq) {}

  /** A gauge is left out from now on. */
  default void gaugeLost(GaugeLoss loss) {}

  /** First crack by the small width has become known. */
  default void firstCrackByWidth(FirstCrack.Figure figure) {}

  /** First crack by departure from the initial line has become known. */
  default void firstCrackByDeparture(FirstCrack.Figure figure) {}

  /** A threshold was crossed lastingly. */
  default void crossed(Thresholds.Crossing crossing) {}

  /** A cycle of unloading and reloading has ended; how many so far. */
  default void cycleEnded(long cycles) {}

  /** A hold has ended; how many so far. */
  default void holdEnded(long holds) {}

  /** The stop width was reached lastingly. */
  default void stopWidthReached() {}
}
