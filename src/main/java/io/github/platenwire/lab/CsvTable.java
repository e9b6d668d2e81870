package io.github.platenwire.lab;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * A table's rows without the blank ones; row numbers and column letters are those that a
 * spreadsheet shows. Immutable.
 *
 * @param source the file's name for messages
 * @param text what it was read from
 * @param header the first row that is not blank
 * @param rows the others
 */
record CsvTable(String source, TableText text, Row header, List<Row> rows) {
  /**
   * One row.
   *
   * @param number from 1, as a spreadsheet shows it
   * @param cells stripped of spaces at both ends
   */
  record Row(int number, List<String> cells) {}

  static CsvTable parse(byte[] bytes, String source) throws LabException {
    TableText text = TableText.of(bytes, source);
    List<Row> rows = rows(text, source);
    if (rows.isEmpty()) {
      throw new LabException(source + ": the table is empty; its first row must name the columns");
    }
    return new CsvTable(source, text, rows.get(0), List.copyOf(rows.subList(1, rows.size())));
  }

  private static List<Row> rows(TableText text, String source) throws LabException {
    CSVFormat format =
        CSVFormat.DEFAULT
            .builder()
            .setDelimiter(text.separator())
            .setIgnoreEmptyLines(false)
            .setIgnoreSurroundingSpaces(true)
            .get();
    List<Row> rows = new ArrayList<>();
    int number = 0;
    try (CSVParser parser = CSVParser.parse(text.text(), format)) {
      for (CSVRecord parsed : parser) {
        number++;
        List<String> cells = parsed.stream().map(CsvTable::strip).toList();
        if (!cells.stream().allMatch(String::isEmpty)) {
          rows.add(new Row(number, cells));
        }
      }
    } catch (UncheckedIOException | IOException e) {
      throw new LabException(
          source
              + ", row "
              + (number + 1)
              + ": a quotation mark opens a cell and is not closed where the cell ends; take it"
              + " out, or write it twice and close the cell with one more",
          e);
    }
    return rows;
  }

  private static String strip(String cell) {
    int from = 0;
    int to = cell.length();
    while (from < to && isSpace(cell.charAt(from))) {
      from++;
    }
    while (from < to && isSpace(cell.charAt(to - 1))) {
      to--;
    }
    return cell.substring(from, to);
  }

  /** What people paste also brings no-break spaces: U+00A0, U+2007, U+202F. */
  private static boolean isSpace(char c) {
    return Character.isWhitespace(c) || Character.isSpaceChar(c);
  }

  /** An error at a row as a whole. */
  LabException error(Row row, String problem) {
    return new LabException(source + ", row " + row.number() + ": " + problem);
  }

  /** An error at a cell. */
  LabException error(Row row, String column, String problem) {
    return new LabException(
        source + ", row " + row.number() + ", column " + column + ": " + problem);
  }

  /** A column's letters as a spreadsheet shows them: A, B … Z, AA … */
  static String letters(int index) {
    String last = String.valueOf((char) ('A' + index % 26));
    return index < 26 ? last : letters(index / 26 - 1) + last;
  }
}
