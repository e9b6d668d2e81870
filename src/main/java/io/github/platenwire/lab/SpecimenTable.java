package io.github.platenwire.lab;

import io.github.platenwire.method.Specimen;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Reads the table of specimens: tolerant of how spreadsheets save a table, strict about what it
 * means. What is read and refused is told in the page about the lab folder. Stateless.
 */
final class SpecimenTable {
  private record Place(String name, int rowNumber) {}

  private SpecimenTable() {}

  /**
   * Every specimen in the table's order.
   *
   * @param bytes the file as it is
   * @param source its name for messages
   * @param zone the lab's time zone, in which cast times are written
   * @throws LabException at the first row that cannot be used
   */
  static List<Specimen> read(byte[] bytes, String source, ZoneId zone) throws LabException {
    CsvTable table = CsvTable.parse(bytes, source);
    List<Column> columns = Heading.read(table);
    TableNumbers numbers = TableNumbers.of(table, columns);
    List<Specimen> specimens = new ArrayList<>();
    Map<String, Place> seen = new HashMap<>();
    for (CsvTable.Row row : table.rows()) {
      SpecimenRow cells = new SpecimenRow(table, columns, numbers, row);
      Specimen specimen = cells.read(zone);
      refuseTwin(cells, specimen.name(), seen);
      specimens.add(specimen);
    }
    return List.copyOf(specimens);
  }

  private static void refuseTwin(SpecimenRow cells, String name, Map<String, Place> seen)
      throws LabException {
    Place earlier = seen.putIfAbsent(Names.lower(name), new Place(name, cells.number()));
    if (earlier == null) {
      return;
    }
    String same =
        earlier.name().equals(name)
            ? "there is a specimen '" + name + "' already in row " + earlier.rowNumber()
            : "'"
                + name
                + "' differs from '"
                + earlier.name()
                + "' in row "
                + earlier.rowNumber()
                + " in upper and lower case only";
    throw cells.error(Column.SPECIMEN, same + "; each specimen needs its own name");
  }
}
