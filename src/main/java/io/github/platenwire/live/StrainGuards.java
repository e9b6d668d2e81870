package io.github.platenwire.live;

import java.util.List;

/**
 * What looks at single readings on their way to loading cycles. Whoever starts a {@link StrainFeed}
 * makes them, for their limits are the method's; each serves one feed.
 *
 * @param zero finds the load's zero
 * @param load sets lone loads aside, newtons
 * @param gauges the same for each gauge, strains
 * @param rates how rates are taken
 */
public record StrainGuards(
    ZeroFinder zero,
    LoneReadingFilter load,
    List<LoneReadingFilter> gauges,
    RateWindow.Settings rates) {
  /** Makes the list immutable. */
  public StrainGuards {
    gauges = List.copyOf(gauges);
  }
}
