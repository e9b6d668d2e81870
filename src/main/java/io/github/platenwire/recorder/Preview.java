package io.github.platenwire.recorder;

import java.util.List;

/**
 * What the links say before a test starts. Immutable.
 *
 * @param channels each channel in rig order
 */
public record Preview(List<ChannelPreview> channels) {
  /** Makes the list immutable. */
  public Preview {
    channels = List.copyOf(channels);
  }

  /**
   * One channel before the start.
   *
   * @param readings frames that came, whatever their quality
   * @param good good ones among them
   * @param recent how many of the most recent good ones the mean and the spread rest on
   * @param mean of these, in the channel's unit; NaN without one
   * @param spread greatest less least of these, in the channel's unit; NaN without one
   * @param lastReceived the last frame as received, escaped; empty before the first
   * @param linkUp whether the link is there now
   */
  public record ChannelPreview(
      long readings,
      long good,
      int recent,
      double mean,
      double spread,
      String lastReceived,
      boolean linkUp) {}
}
