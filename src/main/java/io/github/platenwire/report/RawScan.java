package io.github.platenwire.report;

import io.github.platenwire.reading.EscapedBytes;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.ChannelTally;
import io.github.platenwire.record.RawFileEnd;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawRow;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a report tells of a raw file beside its figures: how the readings came, which are marked,
 * what happened. Immutable.
 *
 * @param header the file's head
 * @param tallies of each channel, in the head's order
 * @param marked the first marked readings
 * @param markedCount how many there are
 * @param events what happened, in order
 * @param end how the file ends
 */
record RawScan(
    RawHeader header,
    List<ChannelTally> tallies,
    List<Marked> marked,
    long markedCount,
    List<Event> events,
    RawFileEnd end) {
  private static final int MOST_MARKED = 40;
  private static final int MOST_EVENTS = 60;

  /** A reading that is used for no result. */
  record Marked(long seq, double seconds, String channel, Quality quality, String received) {}

  /** Something that happened. */
  record Event(long seq, double seconds, String words) {}

  static RawScan of(Path raw) throws IOException, RawFileException {
    try (RawFileReader reader = RawFileReader.open(raw)) {
      RawHeader header = reader.header();
      Map<String, ChannelTally> tallies = new LinkedHashMap<>();
      header
          .channels()
          .forEach(c -> tallies.put(c.facts().name(), new ChannelTally(c.facts().name())));
      List<Marked> marked = new ArrayList<>();
      List<Event> events = new ArrayList<>();
      RawFileEnd end =
          reader.readRows(
              row -> {
                if (row.isEvent()) {
                  if (events.size() < MOST_EVENTS) {
                    events.add(event(row));
                  }
                  return;
                }
                ChannelTally tally = tallies.get(row.channel());
                if (tally != null) {
                  tally.count(row.elapsedMicros(), row.quality());
                }
                if (row.quality() != Quality.OK && marked.size() < MOST_MARKED) {
                  marked.add(marked(row));
                }
              });
      List<ChannelTally> all = List.copyOf(tallies.values());
      long count = all.stream().mapToLong(ChannelTally::marked).sum();
      return new RawScan(header, all, marked, count, events, end);
    }
  }

  private static Event event(RawRow row) {
    return new Event(
        row.seq(), row.elapsedMicros() / 1e6, new String(row.received(), StandardCharsets.UTF_8));
  }

  private static Marked marked(RawRow row) {
    return new Marked(
        row.seq(),
        row.elapsedMicros() / 1e6,
        row.channel(),
        row.quality(),
        EscapedBytes.encode(row.received()));
  }
}
