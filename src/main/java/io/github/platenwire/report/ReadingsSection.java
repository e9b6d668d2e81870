package io.github.platenwire.report;

import io.github.platenwire.record.ChannelTally;
import java.util.List;

/** How the readings of a test came, which are marked, and what happened. Used once. */
final class ReadingsSection {
  private final RawScan scan;
  private final List<Long> suspects;

  /**
   * The section of a test.
   *
   * @param suspects rows that the method left out as impossible
   */
  ReadingsSection(RawScan scan, List<Long> suspects) {
    this.scan = scan;
    this.suspects = suspects;
  }

  void add(Page page) {
    channels(page);
    marked(page);
    events(page);
  }

  private void channels(Page page) {
    PageTable table =
        PageTable.named("channels", "")
            .names("Channel")
            .numbers("Readings")
            .numbers("Rate, Hz")
            .numbers("Jitter, ms")
            .numbers("Longest gap, ms")
            .numbers("Marked");
    for (ChannelTally tally : scan.tallies()) {
      table.row(
          Cell.of(tally.channel()),
          Cell.of(Long.toString(tally.received())),
          Cell.of(Words.decimals(tally.rateHertz(), 2), tally.rateHertz()),
          Cell.of(Words.decimals(tally.jitterMillis(), 2), tally.jitterMillis()),
          Cell.of(Words.decimals(tally.longestGapMillis(), 1), tally.longestGapMillis()),
          Cell.of(Long.toString(tally.marked())));
    }
    page.section("Readings").table(table);
  }

  private void marked(Page page) {
    PageTable marked =
        PageTable.named("marked-readings", "Marked readings: kept, and used for no result")
            .numbers("Row")
            .numbers("Time, s")
            .names("Channel")
            .names("Mark")
            .words("As received");
    for (RawScan.Marked one : scan.marked()) {
      marked.row(
          Cell.of(Long.toString(one.seq())),
          Cell.of(Words.decimals(one.seconds(), 3), one.seconds()),
          Cell.of(one.channel()),
          Cell.of(one.quality().word()),
          Cell.of(Inline.code(one.received())));
    }
    page.table(marked);
    if (scan.markedCount() > scan.marked().size()) {
      page.remark(
          "These are the first "
              + scan.marked().size()
              + " of "
              + scan.markedCount()
              + " marked readings; the raw file has them all.");
    }
    if (!suspects.isEmpty()) {
      page.paragraph(
          "Left out as impossible by their neighbours: row " + Words.rows(suspects) + ".");
    }
  }

  private void events(Page page) {
    PageTable table =
        PageTable.named("events", "What happened").numbers("Row").numbers("Time, s").words("Event");
    for (RawScan.Event event : scan.events()) {
      table.row(
          Cell.of(Long.toString(event.seq())),
          Cell.of(Words.decimals(event.seconds(), 3), event.seconds()),
          Cell.of(event.words()));
    }
    page.table(table);
  }
}
