package io.github.platenwire.audit;

import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawRow;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * Looks at each row as it is read: order of time, greatest readings, what happened. Constant work a
 * row. Not thread-safe.
 */
final class RowWatch implements Consumer<RawRow> {
  private final List<String> names;
  private final String[] seenNames;
  private final long[] lastMicros;
  private final double[] least;
  private final double[] greatest;
  private final List<Event> events = new ArrayList<>();
  private final List<Backward> backward = new ArrayList<>();
  private final List<TraceDetector.Watch> watches;

  /** Something that happened, from an event row. */
  record Event(String text, long line) {}

  /** A reading that is older than the one before it. */
  record Backward(String channel, long before, long after, long line) {}

  RowWatch(RawHeader header, List<TraceDetector.Watch> watches) {
    this.names = header.channels().stream().map(channel -> channel.facts().name()).toList();
    this.watches = watches;
    this.seenNames = names.toArray(String[]::new);
    this.lastMicros = new long[seenNames.length];
    this.least = new double[seenNames.length];
    this.greatest = new double[seenNames.length];
    for (int i = 0; i < seenNames.length; i++) {
      lastMicros[i] = Long.MIN_VALUE;
      least[i] = Double.POSITIVE_INFINITY;
      greatest[i] = Double.NEGATIVE_INFINITY;
    }
  }

  @Override
  public void accept(RawRow row) {
    if (row.isEvent()) {
      events.add(new Event(new String(row.received(), StandardCharsets.UTF_8), row.line()));
    } else {
      reading(row);
    }
    for (TraceDetector.Watch watch : watches) {
      watch.row(row);
    }
  }

  private void reading(RawRow row) {
    int channel = index(row.channel());
    if (channel < 0) {
      return;
    }
    if (row.elapsedMicros() < lastMicros[channel] && backward.isEmpty()) {
      backward.add(
          new Backward(row.channel(), lastMicros[channel], row.elapsedMicros(), row.line()));
    }
    lastMicros[channel] = row.elapsedMicros();
    if (row.quality() == Quality.OK) {
      least[channel] = Math.min(least[channel], row.value());
      greatest[channel] = Math.max(greatest[channel], row.value());
    }
  }

  /** Equal names are mostly the very same text, as the reader gives them. */
  private int index(String name) {
    for (int i = 0; i < seenNames.length; i++) {
      if (sameObject(seenNames[i], name)) {
        return i;
      }
    }
    int index = names.indexOf(name);
    if (index >= 0) {
      seenNames[index] = name;
    }
    return index;
  }

  @SuppressWarnings("ReferenceEquality") // only saves the comparison; the slow way follows
  private static boolean sameObject(String a, String b) {
    return a == b;
  }

  /** The first reading of a channel that is older than the one before it; at most one. */
  List<Backward> backward() {
    return backward;
  }

  /** Least {@code ok} value of a channel, in its unit; +∞ if there is none. */
  double least(int channel) {
    return least[channel];
  }

  /** Greatest {@code ok} value of a channel, in its unit; −∞ if there is none. */
  double greatest(int channel) {
    return greatest[channel];
  }

  /** The events whose text begins so. */
  List<Event> events(String beginning) {
    return events.stream().filter(event -> event.text().startsWith(beginning)).toList();
  }

  /** Lets the detectors report. */
  void end(Findings findings) {
    watches.forEach(watch -> watch.end(findings::add));
  }
}
