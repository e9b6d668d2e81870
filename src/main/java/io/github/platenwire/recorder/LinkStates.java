package io.github.platenwire.recorder;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Remembers which links are down, what was lost, and what the summary must say of it. Not
 * thread-safe; confined to the recorder thread.
 */
final class LinkStates {
  private final List<ChannelSetup> channels;
  private final List<Source> sources;
  private final long[] downSinceNanos;
  private final boolean[] down;
  private final List<String> remembered = new ArrayList<>();
  private long lostReadings;

  LinkStates(List<ChannelSetup> channels, List<Source> sources) {
    this.channels = channels;
    this.sources = sources;
    this.downSinceNanos = new long[sources.size()];
    this.down = new boolean[sources.size()];
  }

  /** The event texts, one a channel of the source. */
  List<String> lost(LinkEvent.Lost lost) {
    down[lost.source()] = true;
    downSinceNanos[lost.source()] = lost.atNanos();
    remembered.add("The link of " + names(lost.source()) + " was lost: " + lost.why() + ".");
    return texts(lost.source(), "link lost ", "");
  }

  /** The event texts, one a channel of the source. */
  List<String> back(LinkEvent.Back back) {
    down[back.source()] = false;
    double seconds = (back.atNanos() - downSinceNanos[back.source()]) / 1e9;
    remembered.add(
        String.format(
            Locale.ROOT, "The link of %s came back after %.1f s.", names(back.source()), seconds));
    return texts(back.source(), "link back ", "");
  }

  /** The event texts, one a channel of the source. */
  List<String> dropped(LinkEvent.Dropped dropped) {
    int count = sources.get(dropped.source()).channels().size();
    long readings = Math.max(1, dropped.frames()) * count;
    lostReadings += readings;
    remembered.add(
        String.format(
            Locale.ROOT,
            "The recorder could not keep up: about %d readings of %s (%d bytes) were lost.",
            readings,
            names(dropped.source()),
            dropped.bytes()));
    return texts(
        dropped.source(),
        "lost ",
        " bytes=" + dropped.bytes() + " readings=" + Math.max(1, dropped.frames()));
  }

  void remember(String sentence) {
    remembered.add(sentence);
  }

  /** Sentences for the summary, in the order they happened. */
  List<String> remembered() {
    return remembered;
  }

  /** Readings known to have been lost. */
  long lostReadings() {
    return lostReadings;
  }

  /** Channels whose link is gone now. */
  List<String> down() {
    List<String> names = new ArrayList<>();
    for (int source = 0; source < down.length; source++) {
      if (down[source]) {
        sources.get(source).channels().forEach(channel -> names.add(name(channel)));
      }
    }
    return names;
  }

  private List<String> texts(int source, String before, String after) {
    return sources.get(source).channels().stream()
        .map(channel -> before + name(channel) + after)
        .toList();
  }

  private String names(int source) {
    return String.join(", ", sources.get(source).channels().stream().map(this::name).toList());
  }

  private String name(int channel) {
    return channels.get(channel).header().facts().name();
  }
}
