package io.github.platenwire.lab;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.toml.Suggestions;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the columns of the specimen table mean, by their names in the first row. {@code Diameter 1
 * (mm)} is as good as {@code diameter_1_mm}. Stateless.
 */
final class Heading {
  /** Diameters are numbered 1 to this. */
  private static final int MOST_DIAMETERS = 9;

  private static final Set<String> TEXTS =
      Set.of(
          Column.SPECIMEN,
          Column.SERIES,
          Column.SHAPE,
          Column.CAST,
          Column.AGE,
          Column.ENDS,
          Column.CURING,
          Column.MOISTURE,
          Column.NOTES);

  private static final List<String> NEEDED = List.of(Column.SPECIMEN, Column.SERIES, Column.SHAPE);

  /** Columns that begin so mean something here, or nothing at all. */
  private static final Pattern MEASURED =
      Pattern.compile(
          "(diameter|diam|dia|length|height|mass|weight|age|cast|width|depth|span|cover)(_.*|[0-9].*)?");

  private static final Pattern NUMBERED = Pattern.compile("diameter_([1-9])_(.+)");

  private static final Set<String> KNOWN = known();

  private Heading() {}

  private static Set<String> known() {
    Set<String> known = new TreeSet<>(TEXTS);
    for (Unit unit : Measure.DIAMETER.units()) {
      for (int number = 1; number <= MOST_DIAMETERS; number++) {
        known.add(Column.DIAMETER + "_" + number + "_" + unit.symbol());
      }
    }
    for (Measure measure : Measure.values()) {
      if (measure != Measure.DIAMETER) {
        measure.units().forEach(unit -> known.add(measure.word() + "_" + suffix(unit)));
      }
    }
    return Set.copyOf(known);
  }

  private static String suffix(Unit unit) {
    return Names.lower(unit.symbol());
  }

  /** The columns in order. */
  static List<Column> read(CsvTable table) throws LabException {
    List<Column> columns = new ArrayList<>();
    Map<String, String> seen = new HashMap<>();
    List<String> names = table.header().cells();
    for (int i = 0; i < names.size(); i++) {
      String name = names.get(i);
      String word = word(name);
      String earlier = name.isEmpty() ? null : seen.put(word, name);
      if (earlier != null) {
        throw table.error(
            table.header(), "there are two columns '" + earlier + "' and '" + name + "'; keep one");
      }
      columns.add(column(table, i, name, word));
    }
    for (String needed : NEEDED) {
      if (!seen.containsKey(needed)) {
        throw table.error(
            table.header(),
            "there is no column '"
                + needed
                + "'; it is needed, and the first row names the columns");
      }
    }
    return List.copyOf(columns);
  }

  /** Lower case, with one underscore for whatever is no letter or digit. */
  private static String word(String name) {
    String word = Names.lower(name).replaceAll("[^\\p{L}\\p{N}]+", "_").replaceAll("^_|_$", "");
    return word.isEmpty() ? name : word;
  }

  private static Column column(CsvTable table, int index, String name, String word)
      throws LabException {
    if (TEXTS.contains(word)) {
      return new Column(index, name, word, 1, Optional.empty());
    }
    if (KNOWN.contains(word)) {
      return measured(index, name, word);
    }
    if (name.isEmpty() || word.startsWith("x_")) {
      return new Column(index, name, "", 1, Optional.empty());
    }
    Optional<String> meant = Suggestions.nearest(word, KNOWN);
    if (meant.isPresent() || MEASURED.matcher(word).matches()) {
      throw table.error(
          table.header(),
          "column '"
              + name
              + "' is not known"
              + meant.map(m -> "; did you mean '" + m + "'?").orElse("; " + right(word))
              + " A column of your own with such a name must begin with x_");
    }
    return new Column(index, name, "", 1, Optional.empty());
  }

  private static Column measured(int index, String name, String word) {
    Matcher numbered = NUMBERED.matcher(word);
    if (numbered.matches()) {
      return new Column(
          index,
          name,
          Column.DIAMETER,
          Integer.parseInt(numbered.group(1)),
          unit(Measure.DIAMETER, numbered.group(2)));
    }
    String key = word.substring(0, word.lastIndexOf('_'));
    Measure measure = Measure.ofWord(key).orElseThrow();
    return new Column(index, name, key, 1, unit(measure, word.substring(key.length() + 1)));
  }

  private static Optional<Unit> unit(Measure measure, String symbol) {
    return measure.units().stream().filter(unit -> suffix(unit).equals(symbol)).findFirst();
  }

  private static String right(String word) {
    if (word.startsWith("dia")) {
      return "diameters are diameter_1_mm, diameter_2_mm or diameter_1_in, diameter_2_in.";
    }
    if (word.startsWith("length") || word.startsWith("height")) {
      return "the length is length_mm or length_in.";
    }
    if (word.startsWith("mass") || word.startsWith("weight")) {
      return "the mass is mass_g, mass_kg or mass_lb.";
    }
    for (Measure measure : List.of(Measure.WIDTH, Measure.DEPTH, Measure.SPAN, Measure.COVER)) {
      if (word.startsWith(measure.word())) {
        String key = measure.word();
        return "the " + key + " is " + key + "_mm or " + key + "_in.";
      }
    }
    return word.startsWith("age") ? "the planned age is age_days." : "the time of casting is cast.";
  }
}
