package io.github.platenwire.lab;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A table of readings against time, such as depths that were measured in pictures: one column of
 * times since the start ({@code time_s}, {@code time_min}, {@code time_h}, {@code time_d}) and one
 * of values ({@code depth_mm}, {@code depth_in}, {@code mass_g} …). Tolerant of how spreadsheets
 * save tables, as the table of specimens is. Stateless.
 */
public final class EntryTable {
  private static final String TIME = "time";

  private EntryTable() {}

  /**
   * One row.
   *
   * @param row its number, as a spreadsheet shows it
   * @param seconds since the start, not negative
   * @param value as written, with a decimal point
   * @param unit the unit of the value's column
   */
  public record Entry(int row, double seconds, String value, Unit unit) {}

  private record Cell(int index, Unit unit) {}

  /**
   * Reads a table.
   *
   * @param file a CSV file
   * @param quantity what the values must measure
   * @return its rows in order
   * @throws LabException at the first thing that is wrong, with row and column
   * @throws IOException if the file cannot be read
   */
  public static List<Entry> read(Path file, Quantity quantity) throws LabException, IOException {
    CsvTable table = CsvTable.parse(Files.readAllBytes(file), String.valueOf(file.getFileName()));
    Cell time = find(table, TIME, List.of(Quantity.TIME));
    Cell value = find(table, quantity == Quantity.MASS ? "mass" : "depth", List.of(quantity));
    TableNumbers numbers = TableNumbers.of(table, columns(table, time, value));
    List<Entry> entries = new ArrayList<>();
    for (CsvTable.Row row : table.rows()) {
      double seconds = time.unit().toBase(number(table, numbers, row, time));
      if (!(seconds >= 0)) {
        throw table.error(row, name(table, time), "a time since the start is not negative");
      }
      double read = number(table, numbers, row, value);
      entries.add(new Entry(row.number(), seconds, Names.plain(read), value.unit()));
    }
    if (entries.isEmpty()) {
      throw new LabException(table.source() + ": the table has no rows beside its first");
    }
    return entries;
  }

  private static List<Column> columns(CsvTable table, Cell... cells) {
    return Stream.of(cells)
        .map(
            cell ->
                new Column(cell.index(), name(table, cell), "entry", 1, Optional.of(cell.unit())))
        .toList();
  }

  private static String name(CsvTable table, Cell cell) {
    return table.header().cells().get(cell.index());
  }

  private static Cell find(CsvTable table, String word, List<Quantity> quantities)
      throws LabException {
    List<Unit> units =
        Stream.of(Unit.values()).filter(unit -> quantities.contains(unit.quantity())).toList();
    List<Cell> found = new ArrayList<>();
    for (int i = 0; i < table.header().cells().size(); i++) {
      String name = Names.lower(table.header().cells().get(i)).replaceAll("[^\\p{L}\\p{N}]+", "_");
      for (Unit unit : units) {
        if (name.replaceAll("_$", "").equals(word + "_" + unit.symbol())) {
          found.add(new Cell(i, unit));
        }
      }
    }
    if (found.size() != 1) {
      throw table.error(
          table.header(),
          (found.isEmpty() ? "there is no column" : "there is more than one column")
              + " '"
              + word
              + "_…'; one is needed, with its unit in its name: "
              + String.join(", ", units.stream().map(u -> word + "_" + u.symbol()).toList()));
    }
    return found.get(0);
  }

  private static double number(CsvTable table, TableNumbers numbers, CsvTable.Row row, Cell cell)
      throws LabException {
    String text = cell.index() < row.cells().size() ? row.cells().get(cell.index()) : "";
    try {
      return numbers.parse(text);
    } catch (TableNumbers.NotANumber e) {
      throw table.error(row, name(table, cell), String.valueOf(e.getMessage()));
    }
  }
}
