package io.github.platenwire.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.platenwire.commission.ChannelRange;
import io.github.platenwire.commission.ReadingText;
import io.github.platenwire.commission.Rhythm;
import io.github.platenwire.commission.StreamTally;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.terminal.Paragraph;
import io.github.platenwire.terminal.Style;
import io.github.platenwire.terminal.TextTable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What listening came to.
 *
 * @param bytes how many came
 * @param seconds from the first to the last of them
 * @param losses how often the link was lost
 * @param chunks how evenly they came
 * @param tally what was decoded, if there was a definition
 */
record ListenSummary(
    long bytes, double seconds, long losses, Rhythm chunks, Optional<StreamTally> tally) {
  private static final double MILLIS = 1e3;

  List<String> lines(Face face) {
    List<String> out = new ArrayList<>();
    out.add("");
    if (tally.isPresent()) {
      out.addAll(table(tally.get()).lines(face.columns(), face.look()));
      out.add("");
      for (ChannelRange channel : tally.get().channels()) {
        notOk(channel)
            .ifPresent(words -> out.add(face.look().palette().paint(Style.WARNING, words)));
      }
    }
    String words =
        bytes
            + " bytes in "
            + String.format(Locale.ROOT, "%.1f s", seconds)
            + tally.map(ListenSummary::frames).orElse("")
            + (losses > 0 ? ", link lost " + losses + (losses == 1 ? " time" : " times") : "")
            + ".";
    out.addAll(Paragraph.lines(face.look().glyphs().text(words), face.columns()));
    return out;
  }

  private static String frames(StreamTally tally) {
    long all = tally.frames() + tally.garbled();
    return all == 0
        ? ", not one frame"
        : String.format(
            Locale.ROOT,
            ", %d frames, %d of them garbled (%s)",
            all,
            tally.garbled(),
            percent(tally.badShare()));
  }

  /** Never 0 % where something is bad. */
  private static String percent(double share) {
    return share == 0 ? "0 %" : String.format(Locale.ROOT, "%.1f %%", Math.max(0.1, 100 * share));
  }

  private static TextTable table(StreamTally tally) {
    TextTable table =
        TextTable.empty()
            .words("channel")
            .numbers("readings")
            .numbers("a second")
            .numbers("jitter ms")
            .numbers("interval ms")
            .words("from … to");
    List<ChannelRange> channels = tally.channels();
    for (int i = 0; i < channels.size(); i++) {
      ChannelRange channel = channels.get(i);
      Rhythm rhythm = tally.rhythm(i);
      table.row(
          channel.name(),
          Long.toString(channel.readings()),
          number("%.2f", rhythm.hertz()),
          number("%.2f", MILLIS * rhythm.jitterSeconds()),
          extremes(rhythm),
          range(channel));
    }
    return table;
  }

  private static String extremes(Rhythm rhythm) {
    return Double.isNaN(rhythm.shortestSeconds())
        ? "--"
        : String.format(
            Locale.ROOT,
            "%.1f – %.1f",
            MILLIS * rhythm.shortestSeconds(),
            MILLIS * rhythm.longestSeconds());
  }

  private static String number(String format, double value) {
    return Double.isNaN(value) ? "--" : String.format(Locale.ROOT, format, value);
  }

  private static String range(ChannelRange channel) {
    return Double.isNaN(channel.least())
        ? "--"
        : ReadingText.number(channel.least())
            + " … "
            + ReadingText.number(channel.greatest())
            + " "
            + channel.unit().symbol();
  }

  private static Optional<String> notOk(ChannelRange channel) {
    String words =
        channel.qualities().entrySet().stream()
            .filter(e -> e.getKey() != Quality.OK)
            .sorted(Map.Entry.comparingByKey())
            .map(e -> e.getValue() + " " + e.getKey().word())
            .collect(Collectors.joining(", "));
    return words.isEmpty()
        ? Optional.empty()
        : Optional.of("Not ok of " + channel.name() + ": " + words + ".");
  }

  /** The same for a program. */
  String json() {
    ObjectNode node = new ObjectMapper().createObjectNode();
    node.put("bytes", bytes).put("seconds", seconds).put("losses", losses);
    node.put("chunks", chunks.moments());
    tally.ifPresent(known -> put(node, known));
    return node.toPrettyString();
  }

  private static void put(ObjectNode node, StreamTally tally) {
    node.put("frames", tally.frames()).put("garbled", tally.garbled());
    if (!Double.isNaN(tally.badShare())) {
      node.put("garbled_share", tally.badShare());
    }
    List<ChannelRange> channels = tally.channels();
    for (int i = 0; i < channels.size(); i++) {
      ObjectNode one = node.withArray("channels").addObject();
      ChannelRange channel = channels.get(i);
      Rhythm rhythm = tally.rhythm(i);
      one.put("name", channel.name()).put("unit", channel.unit().symbol());
      one.put("readings", channel.readings());
      put(one, "least", channel.least());
      put(one, "greatest", channel.greatest());
      put(one, "readings_a_second", rhythm.hertz());
      put(one, "jitter_s", rhythm.jitterSeconds());
      put(one, "shortest_interval_s", rhythm.shortestSeconds());
      put(one, "longest_interval_s", rhythm.longestSeconds());
      ObjectNode qualities = one.putObject("qualities");
      channel.qualities().forEach((quality, count) -> qualities.put(quality.word(), count));
    }
  }

  private static void put(ObjectNode node, String key, double value) {
    if (!Double.isNaN(value)) {
      node.put(key, value);
    }
  }
}
