package io.github.platenwire.record;

import io.github.platenwire.reading.EscapedBytes;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.RawFileException.Damage;

/**
 * Reads the rows that {@link RowParser} leaves alone: those with quotes or escapes, and those that
 * are wrong, of which it says what is wrong. Stateless but for whom it tells.
 */
final class CarefulRowParser {
  private static final int COLUMNS = 6;

  private final Complaint complaint;

  /** Makes the exception for a line that is not as the format says. */
  @FunctionalInterface
  interface Complaint {
    /** An exception that tells where, what should be there and what is. */
    RawFileException of(Damage damage, String expected, String seen);
  }

  CarefulRowParser(Complaint complaint) {
    this.complaint = complaint;
  }

  /**
   * Reads a row.
   *
   * @param text the line
   * @param expectedSeq the number that it should have
   * @param line its line in the file
   * @throws RawFileException if it is none, or has another number
   */
  RawRow parse(String text, long expectedSeq, long line) throws RawFileException {
    String[] columns = RowSplitter.split(text);
    if (columns.length != COLUMNS) {
      throw wrong(Damage.LINE, "a row has 6 columns", "there are " + columns.length + ": " + text);
    }
    long seq = whole(columns[0], "seq");
    if (seq != expectedSeq) {
      throw wrong(Damage.SEQ, "seq should be " + expectedSeq, "it is " + seq);
    }
    return new RawRow(
        seq,
        whole(columns[1], "elapsed_us"),
        columns[2],
        received(columns[3]),
        value(columns[4]),
        Quality.ofWord(columns[5])
            .orElseThrow(
                () ->
                    wrong(
                        Damage.LINE,
                        "quality should be a known word",
                        "it is '" + columns[5] + "'")),
        line);
  }

  private long whole(String text, String column) throws RawFileException {
    try {
      return Long.parseLong(text);
    } catch (NumberFormatException e) {
      throw wrong(Damage.LINE, column + " should be a whole number", "it is '" + text + "'");
    }
  }

  private double value(String text) throws RawFileException {
    try {
      return text.isEmpty() ? Double.NaN : Double.parseDouble(text);
    } catch (NumberFormatException e) {
      throw wrong(Damage.LINE, "value should be a number", "it is '" + text + "'");
    }
  }

  private byte[] received(String text) throws RawFileException {
    try {
      return EscapedBytes.decode(text);
    } catch (IllegalArgumentException e) {
      throw wrong(
          Damage.LINE,
          "received should be bytes as the format writes them",
          String.valueOf(e.getMessage()));
    }
  }

  private RawFileException wrong(Damage damage, String expected, String seen) {
    return complaint.of(damage, expected, seen);
  }
}
