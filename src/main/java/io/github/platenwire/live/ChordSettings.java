package io.github.platenwire.live;

import java.util.List;

/**
 * How loading cycles are found, and the chord of each. Immutable. Strains are lengths over lengths,
 * above 0 under load.
 *
 * @param firstStrain strain at which the chord begins, above the cycle's own zero
 * @param secondNewtons load at which it ends
 * @param beyondNewtons load above which a cycle goes too far
 * @param leastNewtons load that counts as the end where {@code secondNewtons} is not quite reached
 * @param bandNewtons rows within this of the lowest load make the cycle's zero
 * @param unloadShare a cycle is over when the load has come down to this share of its way up
 * @param hysteresisStrain a first mark holds until the strain falls this far below it again
 * @param smoothMicros rows are averaged over this time
 * @param planned how many cycles there shall be
 * @param rates bands of the rate of loading, newtons a second
 * @param axial which gauges read along the axis, in the gauges' order; the others read across
 */
public record ChordSettings(
    double firstStrain,
    double secondNewtons,
    double beyondNewtons,
    double leastNewtons,
    double bandNewtons,
    double unloadShare,
    double hysteresisStrain,
    long smoothMicros,
    int planned,
    List<BandJudge.Band> rates,
    List<Boolean> axial) {
  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException if a number is out of range or no gauge reads along the axis
   */
  public ChordSettings {
    rates = List.copyOf(rates);
    axial = List.copyOf(axial);
    if (!(firstStrain > 0)
        || !(secondNewtons > 0)
        || !(bandNewtons > 0)
        || !(unloadShare > 0 && unloadShare < 1)
        || planned < 2
        || !axial.contains(true)) {
      throw new IllegalArgumentException(
          "a chord needs a first strain, a second load, a band, an unloading share below 1, two"
              + " cycles and an axial gauge, firstStrain="
              + firstStrain
              + " secondNewtons="
              + secondNewtons
              + " bandNewtons="
              + bandNewtons
              + " unloadShare="
              + unloadShare
              + " planned="
              + planned
              + " axial="
              + axial);
    }
  }

  /** Whether any gauge reads across the axis. */
  public boolean hasAcross() {
    return axial.contains(false);
  }
}
