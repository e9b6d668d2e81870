package io.github.platenwire.cli;

import io.github.platenwire.commission.ChannelRange;
import io.github.platenwire.commission.ReadingText;
import io.github.platenwire.commission.Sample;
import io.github.platenwire.commission.SampleReport;
import io.github.platenwire.commission.Undecoded;
import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.reading.EscapedBytes;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.terminal.Paragraph;
import io.github.platenwire.terminal.Style;
import io.github.platenwire.terminal.TextTable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What a definition makes of a sample, for a person. Stateless. */
final class SampleView {
  private static final int MARGIN = 4;

  private SampleView() {}

  static List<String> lines(
      DeviceDefinition definition, Sample sample, SampleReport report, int shown, Face face) {
    List<String> out = new ArrayList<>();
    say(out, sample.source() + " by '" + definition.name() + "', " + definition.title(), face);
    out.add("");
    out.addAll(table(report).lines(face.columns(), face.look()));
    out.add("");
    say(out, counts(report), face);
    ends(out, report, face);
    undecoded(out, report, shown, face);
    return out;
  }

  private static void say(List<String> out, String words, Face face) {
    out.addAll(Paragraph.lines(face.look().glyphs().text(words), face.columns()));
  }

  static TextTable table(SampleReport report) {
    TextTable table =
        TextTable.empty()
            .words("channel")
            .numbers("readings")
            .numbers("least")
            .numbers("greatest")
            .words("unit")
            .words("quality");
    for (ChannelRange channel : report.channels()) {
      table.row(
          channel.name(),
          Long.toString(channel.readings()),
          number(channel.least()),
          number(channel.greatest()),
          channel.unit().symbol(),
          qualities(channel));
    }
    return table;
  }

  private static String number(double value) {
    return Double.isNaN(value) ? "--" : ReadingText.number(value);
  }

  private static String qualities(ChannelRange channel) {
    return Arrays.stream(Quality.values())
        .filter(channel.qualities()::containsKey)
        .map(quality -> channel.qualities().get(quality) + " " + quality.word())
        .collect(Collectors.joining(", "));
  }

  static String counts(SampleReport report) {
    return String.format(
        Locale.ROOT,
        "%s decoded from %d of %d bytes (%s).",
        frames(report.frames()),
        report.explainedBytes(),
        report.bytes(),
        percent(report.share()));
  }

  private static String frames(long count) {
    return count == 1 ? "1 frame" : count + " frames";
  }

  /** Never 100 % where something is missing. */
  static String percent(double share) {
    double shown = share < 1 ? Math.min(99.9, Math.floor(1000 * share) / 10) : 100;
    return String.format(Locale.ROOT, shown == 100 ? "%.0f %%" : "%.1f %%", shown);
  }

  private static void ends(List<String> out, SampleReport report, Face face) {
    if (report.tornHeadBytes() > 0) {
      say(
          out,
          "The log begins in mid-frame: its first "
              + report.tornHeadBytes()
              + " bytes are no whole one.",
          face);
    }
    if (report.unfinishedBytes() > 0) {
      say(
          out,
          "The log ends in mid-frame: its last "
              + report.unfinishedBytes()
              + " bytes are no whole one.",
          face);
    }
  }

  private static void undecoded(List<String> out, SampleReport report, int shown, Face face) {
    if (report.isComplete()) {
      out.add(face.look().palette().paint(Style.GOOD, "Everything was decoded."));
      return;
    }
    out.add("");
    String words =
        report.frames() == 0 && report.undecodedFrames() == 0
            ? "Nothing was decoded: not one frame ends in these bytes."
            : "Not decoded: "
                + report.undecodedFrames()
                + (report.undecodedFrames() == 1 ? " stretch" : " stretches");
    out.add(face.look().palette().paint(Style.BAD, words));
    report.undecoded().stream().limit(shown).forEach(one -> stretch(out, one, face));
    long more = report.undecodedFrames() - Math.min(shown, report.undecoded().size());
    if (more > 0) {
      out.add(
          " and "
              + more
              + " more"
              + (shown < report.undecoded().size() ? "; --all shows them" : ""));
    }
  }

  /** The bytes with a sign under the one where the fault shows. */
  private static void stretch(List<String> out, Undecoded one, Face face) {
    int room = Math.max(20, face.columns() - MARGIN - 1);
    byte[] before = Arrays.copyOf(one.bytes(), Math.min(one.fault().at(), one.bytes().length));
    String text = EscapedBytes.encode(one.bytes());
    int mark = EscapedBytes.encode(before).length();
    int from = Math.max(0, Math.min(mark - room / 2, text.length() - room));
    String margin = " ".repeat(MARGIN);
    out.add(" byte " + one.offset() + ":");
    out.add(margin + text.substring(from, Math.min(text.length(), from + room)));
    out.add(margin + " ".repeat(mark - from) + face.look().palette().paint(Style.BAD, "^"));
    String why = "byte " + one.faultOffset() + ": " + one.fault().why();
    for (String line : Paragraph.lines(face.look().glyphs().text(why), room)) {
      out.add(margin + line);
    }
  }
}
