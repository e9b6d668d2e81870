package io.github.platenwire.method;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * When and on what a test is done. Immutable.
 *
 * @param start when the test starts
 * @param zone the lab's time zone, in which cast times are written
 * @param channels the rig's channels in order; readings name them by index
 * @param overrideReason the operator's reason for going on against a {@link
 *     Method.Weight#NEEDS_REASON} objection
 */
public record TestSetting(
    Instant start, ZoneId zone, List<ChannelFacts> channels, Optional<String> overrideReason) {
  /** Makes the list immutable. */
  public TestSetting {
    channels = List.copyOf(channels);
  }
}
