package io.github.platenwire.recorder;

import io.github.platenwire.method.MethodResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Remembers which links are down, what was lost, and what the summary must say of it. Not
 * thread-safe; confined to the recorder thread.
 */
final class LinkStates {
  private static final String LOST = "link lost ";
  private static final String BACK = "link back ";
  private static final String DROPPED = "lost ";

  private final List<ChannelSetup> channels;
  private final List<Source> sources;
  private final long[] downSinceMicros;
  private final boolean[] down;
  private final List<String> remembered = new ArrayList<>();
  private long lostReadings;

  LinkStates(List<ChannelSetup> channels, List<Source> sources) {
    this.channels = channels;
    this.sources = sources;
    this.downSinceMicros = new long[sources.size()];
    this.down = new boolean[sources.size()];
  }

  /**
   * A link is gone.
   *
   * @param micros when, since the origin: the time of the event rows
   * @return the event texts, one a channel of the source
   */
  List<String> lost(int source, long micros, String why) {
    down[source] = true;
    downSinceMicros[source] = micros;
    remembered.add("The link of " + names(source) + " was lost: " + why + ".");
    return texts(source, LOST, " (" + why + ")");
  }

  /** A link is there again; as {@link #lost}. */
  List<String> back(int source, long micros) {
    down[source] = false;
    double seconds = (micros - downSinceMicros[source]) / 1e6;
    remembered.add(
        String.format(
            Locale.ROOT, "The link of %s came back after %.1f s.", names(source), seconds));
    return texts(source, BACK, "");
  }

  /** Bytes were dropped before they could be decoded; as {@link #lost}. */
  List<String> dropped(int source, long bytes, long frames) {
    long each = Math.max(1, frames);
    long readings = each * sources.get(source).channels().size();
    lostReadings += readings;
    remembered.add(
        String.format(
            Locale.ROOT,
            "The recorder could not keep up: about %d readings of %s (%d bytes) were lost.",
            readings,
            names(source),
            bytes));
    return texts(source, DROPPED, " bytes=" + bytes + " readings=" + each);
  }

  /** The time of day was set; the event's text says by how much. */
  void clockStepped(String text) {
    remembered.add("The time of day was set while the test ran: " + text + ".");
  }

  /** Takes in an event row as {@link #lost} and the others wrote it; passes over all others. */
  void replay(long micros, String text) {
    for (int source = 0; source < sources.size(); source++) {
      String first = name(sources.get(source).channels().get(0));
      Matcher lost = event(LOST, first, " \\((.*)\\)").matcher(text);
      Matcher dropped = event(DROPPED, first, " bytes=(\\d+) readings=(\\d+)").matcher(text);
      if (lost.matches()) {
        lost(source, micros, lost.group(1));
      } else if (text.equals(BACK + first)) {
        back(source, micros);
      } else if (dropped.matches()) {
        dropped(source, Long.parseLong(dropped.group(1)), Long.parseLong(dropped.group(2)));
      }
    }
    if (text.startsWith("clock step ")) {
      clockStepped(text);
    } else if (text.startsWith("recovered ")) {
      remember("The recording was interrupted and closed afterwards (" + text + ").");
    }
  }

  private static Pattern event(String before, String channel, String after) {
    return Pattern.compile(Pattern.quote(before + channel) + after, Pattern.DOTALL);
  }

  void remember(String sentence) {
    remembered.add(sentence);
  }

  /** A result with what happened to links and clock among its departures. */
  MethodResult addTo(MethodResult result) {
    List<String> departures = new ArrayList<>(result.departures());
    departures.addAll(remembered);
    return result.withDepartures(departures);
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
