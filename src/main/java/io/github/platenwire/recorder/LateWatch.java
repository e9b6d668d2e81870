package io.github.platenwire.recorder;

import java.util.Arrays;
import java.util.List;

/**
 * Notices channels that are silent longer than they may be. Says so once for each silence. Not
 * thread-safe.
 */
final class LateWatch {
  /** A person may take as long as it takes. */
  private static final long NEVER = Long.MAX_VALUE;

  private final long[] allowedNanos;
  private final long[] lastNanos;
  private final boolean[] said;

  LateWatch(List<ChannelSetup> channels, long nowNanos) {
    allowedNanos =
        channels.stream()
            .mapToLong(
                channel ->
                    channel.header().isTyped()
                        ? NEVER
                        : (long) (channel.header().lateAfterMillis() * 1e6))
            .toArray();
    lastNanos = new long[allowedNanos.length];
    said = new boolean[allowedNanos.length];
    Arrays.fill(lastNanos, nowNanos);
  }

  /** Something came on a channel. */
  void heard(int channel, long atNanos) {
    lastNanos[channel] = Math.max(lastNanos[channel], atNanos);
    said[channel] = false;
  }

  /** Whether a channel has just become late. True once for each silence. */
  boolean becameLate(int channel, long nowNanos) {
    if (said[channel] || nowNanos - lastNanos[channel] <= allowedNanos[channel]) {
      return false;
    }
    said[channel] = true;
    return true;
  }

  /** How long the channel that spoke last has been silent. */
  long silenceNanos(long nowNanos) {
    long silence = Long.MAX_VALUE;
    for (int channel = 0; channel < lastNanos.length; channel++) {
      silence = Math.min(silence, silenceNanos(channel, nowNanos));
    }
    return silence;
  }

  /** How long a channel has been silent; a person who types never is. */
  long silenceNanos(int channel, long nowNanos) {
    return allowedNanos[channel] == NEVER ? 0 : nowNanos - lastNanos[channel];
  }
}
