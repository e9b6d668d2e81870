package io.github.platenwire.lab;

import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.Dimensions;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.toml.Suggestions;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;

/** One row of the specimen table, read cell by cell. Not thread-safe; used once. */
final class SpecimenRow {
  private static final Set<String> SHAPES =
      Set.of("cylinder", "core", "cube", "prism", "beam", "disc");
  private static final Set<String> LONG_SHAPES = Set.of("prism", "beam");
  private static final Set<String> ENDS = Set.of("ground", "capped", "unbonded");
  private static final int LONGEST_NAME = 100;
  private static final double GREATEST_AGE_DAYS = 36_525;

  private final CsvTable table;
  private final List<Column> columns;
  private final TableNumbers numbers;
  private final CsvTable.Row row;

  SpecimenRow(CsvTable table, List<Column> columns, TableNumbers numbers, CsvTable.Row row) {
    this.table = table;
    this.columns = columns;
    this.numbers = numbers;
    this.row = row;
  }

  Specimen read(ZoneId zone) throws LabException {
    checkWidth();
    String name = name(Column.SPECIMEN);
    String series = name(Column.SERIES);
    String shape = shape();
    Measure length = LONG_SHAPES.contains(shape) ? Measure.BEAM_LENGTH : Measure.LENGTH;
    return new Specimen(
        name,
        series,
        shape,
        diameters(),
        measured(length, 1),
        dimensions(),
        measured(Measure.MASS, 1),
        cast(zone),
        age(),
        ends(),
        text(Column.CURING),
        text(Column.MOISTURE),
        asWritten());
  }

  /** An error at the column of a key. */
  LabException error(String key, String problem) {
    return table.error(row, find(key).map(Column::label).orElse(key), problem);
  }

  int number() {
    return row.number();
  }

  private void checkWidth() throws LabException {
    int named = columns.size();
    while (named > 0 && columns.get(named - 1).name().isEmpty()) {
      named--;
    }
    if (row.cells().size() < named) {
      throw table.error(
          row,
          "there are "
              + row.cells().size()
              + " cells, but the first row names "
              + named
              + " columns; if the last cells are empty, put a column last that is always filled,"
              + " as some spreadsheets leave out empty cells at a row's end");
    }
    for (int i = 0; i < row.cells().size(); i++) {
      boolean nameless = i >= columns.size() || columns.get(i).name().isEmpty();
      if (nameless && !row.cells().get(i).isEmpty()) {
        throw table.error(
            row,
            CsvTable.letters(i) + " (without a name)",
            "'"
                + row.cells().get(i)
                + "' stands in a column that the first row does not name; was a separator typed"
                + " within a cell?");
      }
    }
  }

  private Optional<Column> find(String key) {
    return columns.stream().filter(column -> column.key().equals(key)).findFirst();
  }

  private Optional<String> text(String key) {
    return find(key).map(this::cell).filter(cell -> !cell.isEmpty());
  }

  private String cell(Column column) {
    return row.cells().get(column.index());
  }

  private String name(String key) throws LabException {
    Optional<String> found = text(key);
    if (found.isEmpty()) {
      throw error(
          key,
          "the cell is empty; every specimen needs a "
              + (key.equals(Column.SPECIMEN) ? "name" : key));
    }
    String name = found.get();
    if (name.length() > LONGEST_NAME || name.chars().anyMatch(Character::isISOControl)) {
      throw error(key, "a name must be one line of at most " + LONGEST_NAME + " characters");
    }
    if (table.text().lettersGuessed() && name.chars().anyMatch(c -> c > 0x7E)) {
      throw error(
          key,
          "the file is not UTF-8, so the letters of '"
              + name
              + "' are not certain; save the table as CSV (UTF-8)");
    }
    return name;
  }

  private String shape() throws LabException {
    String shape = Names.lower(name(Column.SHAPE));
    if (!SHAPES.contains(shape)) {
      throw error(
          Column.SHAPE,
          "'"
              + shape
              + "' is no shape"
              + Suggestions.nearest(shape, SHAPES)
                  .map(nearest -> ", did you mean '" + nearest + "'?")
                  .orElse("; possible: " + String.join(", ", new TreeSet<>(SHAPES))));
    }
    return shape;
  }

  private Optional<String> ends() throws LabException {
    Optional<String> ends = text(Column.ENDS).map(Names::lower);
    if (ends.isPresent() && !ENDS.contains(ends.get())) {
      Optional<String> meant = Suggestions.nearest(ends.get(), ENDS);
      if (meant.isPresent()) {
        throw error(
            Column.ENDS, "'" + ends.get() + "' is not known, did you mean '" + meant.get() + "'?");
      }
    }
    return ends;
  }

  private List<Double> diameters() throws LabException {
    List<Double> diameters = new ArrayList<>();
    for (int number = 1; number <= 9; number++) {
      OptionalDouble diameter = measured(Measure.DIAMETER, number);
      if (diameter.isPresent()) {
        diameters.add(diameter.getAsDouble());
      }
    }
    return diameters;
  }

  private Dimensions dimensions() throws LabException {
    Map<Dimension, Double> values = new EnumMap<>(Dimension.class);
    for (Measure measure : Measure.values()) {
      if (measure.dimension().isPresent()) {
        Dimension dimension = measure.dimension().get();
        measured(measure, 1).ifPresent(value -> values.put(dimension, value));
      }
    }
    return Dimensions.of(values);
  }

  /** The measure in its base unit; given in two units, the first of the measure's units counts. */
  private OptionalDouble measured(Measure measure, int number) throws LabException {
    Map<Column, Double> given = new LinkedHashMap<>();
    for (Unit unit : measure.units()) {
      for (Column column : columns) {
        if (column.key().equals(measure.word())
            && column.number() == number
            && column.unit().equals(Optional.of(unit))
            && !cell(column).isEmpty()) {
          given.put(column, likely(measure, column, unit));
        }
      }
    }
    return agreed(measure, given);
  }

  private double likely(Measure measure, Column column, Unit unit) throws LabException {
    double number = number(column);
    double base = unit.toBase(number);
    if (!measure.isLikely(base)) {
      throw table.error(
          row,
          column.label(),
          cell(column)
              + " "
              + unit.symbol()
              + " is no likely "
              + measure.word().replace('_', ' ')
              + ", which is "
              + measure.limits(unit)
              + "; check the decimal point and the unit"
              + measure
                  .likelyUnit(number, unit)
                  .map(other -> "; " + cell(column) + " " + other.symbol() + " would be likely")
                  .orElse(""));
    }
    return base;
  }

  private OptionalDouble agreed(Measure measure, Map<Column, Double> given) throws LabException {
    OptionalDouble first = OptionalDouble.empty();
    String firstName = "";
    for (Map.Entry<Column, Double> one : given.entrySet()) {
      if (first.isEmpty()) {
        first = OptionalDouble.of(one.getValue());
        firstName = one.getKey().label();
      } else if (Math.abs(one.getValue() - first.getAsDouble())
          > Measure.AGREEMENT * first.getAsDouble()) {
        throw table.error(
            row,
            one.getKey().label(),
            "this is "
                + measure.rounded(one.getValue())
                + ", but column "
                + firstName
                + " says "
                + measure.rounded(first.getAsDouble())
                + "; keep the one that was measured");
      }
    }
    return first;
  }

  private double number(Column column) throws LabException {
    try {
      return numbers.parse(cell(column));
    } catch (TableNumbers.NotANumber e) {
      throw table.error(row, column.label(), String.valueOf(e.getMessage()));
    }
  }

  private Optional<LocalDateTime> cast(ZoneId zone) throws LabException {
    Optional<String> written = text(Column.CAST);
    if (written.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(CastTime.parse(written.get(), zone));
    } catch (CastTime.NotATime e) {
      throw error(Column.CAST, String.valueOf(e.getMessage()));
    }
  }

  private OptionalDouble age() throws LabException {
    Optional<Column> column = find(Column.AGE);
    if (column.isEmpty() || cell(column.get()).isEmpty()) {
      return OptionalDouble.empty();
    }
    double days = number(column.get());
    if (days <= 0 || days > GREATEST_AGE_DAYS) {
      throw error(
          Column.AGE, "'" + cell(column.get()) + "' is no likely age in days, such as 7 or 28");
    }
    return OptionalDouble.of(days);
  }

  private Map<String, String> asWritten() {
    Map<String, String> written = new LinkedHashMap<>();
    for (Column column : columns) {
      if (!column.name().isEmpty()) {
        written.put(column.name(), cell(column));
      }
    }
    return written;
  }
}
