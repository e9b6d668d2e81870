package io.github.platenwire.lab;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.method.Specimen;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class SpecimenTablePropertyTest {
  private static final ZoneId UTC = ZoneId.of("UTC");
  private static final List<String> NAMES =
      List.of(
          "specimen",
          "series",
          "shape",
          "diameter_1_mm",
          "diameter_2_mm",
          "length_mm",
          "mass_kg",
          "curing",
          "notes",
          "cast",
          "age_days");

  /** How a spreadsheet may save one and the same table. */
  record Dialect(
      char separator,
      char decimal,
      String lineEnd,
      boolean mark,
      boolean told,
      boolean allQuoted,
      String times,
      int emptyColumns,
      int emptyRows) {}

  record Row(
      String name,
      String series,
      int diameter1Hundredths,
      int diameter2Hundredths,
      int lengthTenths,
      int massHundredths,
      String curing,
      String notes,
      LocalDateTime cast,
      int ageDays) {}

  @Provide
  Arbitrary<Dialect> dialects() {
    return Combinators.combine(
            Arbitraries.of(',', ';', '\t'),
            Arbitraries.of('.', ','),
            Arbitraries.of("\n", "\r\n"),
            Arbitraries.of(true, false),
            Arbitraries.of(true, false),
            Arbitraries.of(true, false),
            Arbitraries.of("yyyy-MM-dd HH:mm", "yyyy-MM-dd'T'HH:mm:ss", "dd.MM.yyyy HH:mm"),
            Arbitraries.integers().between(0, 3))
        .as(
            (separator, decimal, end, mark, told, quoted, times, empty) ->
                new Dialect(separator, decimal, end, mark, told, quoted, times, empty, 3 - empty));
  }

  @Provide
  Arbitrary<List<Row>> rows() {
    Arbitrary<String> words =
        Arbitraries.strings().withChars("abz \u00E9\u00DF,;\t\"'\n#=").ofMaxLength(12);
    Arbitrary<Row> row =
        Combinators.combine(
                Arbitraries.strings().withChars("ARN-07.\u00FC").ofMinLength(1).ofMaxLength(8),
                Arbitraries.of("NA-T", "RA-S"),
                Arbitraries.integers().between(2500, 60000),
                Arbitraries.integers().between(100, 10000),
                Arbitraries.integers().between(5, 99999),
                words,
                words,
                Arbitraries.integers().between(0, 60_000_000))
            .as(
                (name, series, diameter, length, mass, curing, notes, minutes) ->
                    new Row(
                        name,
                        series,
                        diameter,
                        62500 - diameter,
                        length,
                        mass,
                        curing,
                        notes,
                        LocalDateTime.of(1990, 1, 1, 0, 0).plusMinutes(minutes),
                        1 + minutes % 3650));
    return row.list().ofMaxSize(8).uniqueElements(one -> one.name().toLowerCase(Locale.ROOT));
  }

  @Property(tries = 500)
  void read_anyDialect_givesTheSpecimensThatWereWritten(
      @ForAll("rows") List<Row> rows, @ForAll("dialects") Dialect dialect) throws LabException {
    byte[] bytes = write(rows, dialect).getBytes(StandardCharsets.UTF_8);
    assertThat(SpecimenTable.read(bytes, "specimens.csv", UTC))
        .usingRecursiveComparison()
        .isEqualTo(rows.stream().map(row -> expected(row, dialect)).toList());
  }

  private static Specimen expected(Row row, Dialect dialect) {
    List<String> cells = cells(row, dialect).stream().map(String::strip).toList();
    Map<String, String> asWritten = new java.util.LinkedHashMap<>();
    for (int i = 0; i < NAMES.size(); i++) {
      asWritten.put(NAMES.get(i), cells.get(i));
    }
    String curing = row.curing.strip();
    return new Specimen(
        row.name,
        row.series,
        "cylinder",
        List.of(row.diameter1Hundredths / 100.0, row.diameter2Hundredths / 100.0),
        OptionalDouble.of(row.lengthTenths / 10.0),
        OptionalDouble.of(row.massHundredths / 100.0),
        Optional.of(row.cast),
        OptionalDouble.of(row.ageDays),
        Optional.empty(),
        curing.isEmpty() ? Optional.empty() : Optional.of(curing),
        Optional.empty(),
        asWritten);
  }

  private static String write(List<Row> rows, Dialect dialect) {
    List<List<String>> lines = new ArrayList<>();
    lines.add(NAMES);
    rows.forEach(row -> lines.add(cells(row, dialect)));
    for (int i = 0; i < dialect.emptyRows; i++) {
      lines.add(List.of("", ""));
    }
    String body =
        lines.stream()
            .map(line -> join(line, dialect) + dialect.lineEnd)
            .collect(Collectors.joining());
    return (dialect.mark ? "\uFEFF" : "")
        + (dialect.told ? "sep=" + dialect.separator + dialect.lineEnd : "")
        + body;
  }

  private static String join(List<String> cells, Dialect dialect) {
    String separator = String.valueOf(dialect.separator);
    return cells.stream().map(cell -> quote(cell, dialect)).collect(Collectors.joining(separator))
        + separator.repeat(dialect.emptyColumns);
  }

  private static String quote(String cell, Dialect dialect) {
    boolean needed = cell.chars().anyMatch(c -> ",;\t\"\n".indexOf(c) >= 0);
    return dialect.allQuoted || needed ? "\"" + cell.replace("\"", "\"\"") + "\"" : cell;
  }

  private static List<String> cells(Row row, Dialect dialect) {
    return List.of(
        row.name,
        row.series,
        "cylinder",
        decimal(row.diameter1Hundredths, 2, dialect),
        decimal(row.diameter2Hundredths, 2, dialect),
        decimal(row.lengthTenths, 1, dialect),
        decimal(row.massHundredths, 2, dialect),
        row.curing,
        row.notes,
        row.cast.format(DateTimeFormatter.ofPattern(dialect.times, Locale.ROOT)),
        String.valueOf(row.ageDays));
  }

  private static String decimal(int scaled, int digits, Dialect dialect) {
    return BigDecimal.valueOf(scaled, digits).toPlainString().replace('.', dialect.decimal);
  }

  /** Whatever bytes a file holds, it is read or refused with a message, and nothing else. */
  @Property(tries = 1000)
  void read_anyBytes_readsOrRefuses(@ForAll byte[] bytes) {
    assertReadOrRefused(bytes);
  }

  @Property(tries = 1000)
  void read_tableCutAnywhere_readsOrRefuses(
      @ForAll("rows") List<Row> rows, @ForAll("dialects") Dialect dialect, @ForAll int at) {
    byte[] bytes = write(rows, dialect).getBytes(StandardCharsets.UTF_8);
    assertReadOrRefused(java.util.Arrays.copyOf(bytes, Math.floorMod(at, bytes.length + 1)));
  }

  private static void assertReadOrRefused(byte[] bytes) {
    try {
      assertThat(SpecimenTable.read(bytes, "specimens.csv", UTC)).isNotNull();
    } catch (LabException refused) {
      assertThat(refused).hasMessageStartingWith("specimens.csv");
    }
  }
}
