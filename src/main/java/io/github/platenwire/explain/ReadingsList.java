package io.github.platenwire.explain;

import io.github.platenwire.method.FrontPart;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.RawRow;
import java.util.List;

/** Lists what was read in a log against time, the bytes of each; of very many the ends. */
final class ReadingsList {
  private static final int MOST = 12;
  private static final int ENDS = 4;

  private final Evidence evidence;

  ReadingsList(Evidence evidence) {
    this.evidence = evidence;
  }

  void tell(List<FrontPart.Reading> readings, Telling telling) {
    int last = readings.size() - 1;
    new ReadingStory(evidence, readings.get(last).seq()).tell(telling);
    telling.step(
        "Readings: that is the last of the "
            + readings.size()
            + " that count, rows "
            + readings.get(0).seq()
            + " to "
            + readings.get(last).seq()
            + ". Time counts from the first; a line's own time ('at', 'after') goes before the"
            + " time at which it was typed:");
    for (int i = 0; i <= last; i++) {
      if (readings.size() <= MOST || i < ENDS || i > last - ENDS) {
        telling.more("  " + words(readings.get(i)));
      } else if (i == ENDS) {
        telling.more("  ... " + (readings.size() - 2 * ENDS) + " more ...");
      }
    }
    evidence.result().departures().stream()
        .filter(words -> words.startsWith("Entry "))
        .forEach(telling::more);
  }

  private String words(FrontPart.Reading reading) {
    return evidence.inShort(reading.seq())
        + "; at "
        + FigureWords.number(reading.seconds())
        + " s since the first"
        + corrected(reading);
  }

  /** An entry that puts another right stands for the moment of that one. */
  private String corrected(FrontPart.Reading reading) {
    RawRow row = evidence.row(reading.seq());
    boolean corrects = evidence.channel(row).isTyped() && text(row).contains(" for ");
    return corrects ? " (it puts an earlier entry right)" : "";
  }

  private static String text(RawRow row) {
    return new String(row.received(), java.nio.charset.StandardCharsets.UTF_8);
  }

  /** A reading's value in both systems. */
  static Term value(FrontPart.Reading reading, Quantity quantity) {
    return quantity == Quantity.LENGTH
        ? Term.millimetres(reading.base())
        : Term.same(Unit.GRAM.fromBase(reading.base()), Unit.GRAM);
  }
}
