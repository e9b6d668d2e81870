package io.github.platenwire.toml;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * One table of a TOML document, read strictly: the reader first declares the keys that may stand
 * there ({@link #allow}), then asks for each value by type. A missing, misspelt or mistyped key
 * gives a {@link TomlException} at its line and column.
 *
 * <p>Not thread-safe while being read; immutable underneath.
 */
public final class TomlSection {
  private final String source;
  private final String path;
  private final TomlTable table;
  private final int line;
  private final int column;

  private TomlSection(String source, String path, TomlTable table, int line, int column) {
    this.source = source;
    this.path = path;
    this.table = table;
    this.line = line;
    this.column = column;
  }

  /**
   * Reads a whole document.
   *
   * @param text the document
   * @param source its name for error messages
   * @throws TomlException at the first syntax error
   */
  public static TomlSection parse(String text, String source) throws TomlException {
    TomlParseResult result = parsed(text, source);
    if (result.hasErrors()) {
      TomlParseError first = result.errors().get(0);
      throw new TomlException(
          source,
          first.position().line(),
          first.position().column(),
          String.valueOf(first.getMessage()));
    }
    return new TomlSection(source, "", result, 1, 1);
  }

  private static TomlParseResult parsed(String text, String source) throws TomlException {
    try {
      return Toml.parse(text);
    } catch (RuntimeException | AssertionError e) {
      // The library stumbles over some escapes that are cut off, such as a lone backslash.
      throw new TomlException(
          source, lineOfStumble(text), 1, "this cannot be read; is a backslash or a quote amiss?");
    }
  }

  /** The first line with which the parser can no longer cope, 1 if it cannot be told. */
  private static int lineOfStumble(String text) {
    List<String> lines = text.lines().toList();
    for (int count = 1; count <= lines.size(); count++) {
      try {
        Toml.parse(String.join("\n", lines.subList(0, count)) + "\n");
      } catch (RuntimeException | AssertionError e) {
        return count;
      }
    }
    return 1;
  }

  /** The document's name for error messages. */
  public String source() {
    return source;
  }

  /** The keys that stand in this table, in no fixed order. */
  public Set<String> keys() {
    return new TreeSet<>(table.keySet());
  }

  /** Whether a key stands in this table. */
  public boolean has(String key) {
    return find(key) != null;
  }

  /**
   * Declares every key that may stand in this table.
   *
   * @throws TomlException at the first key in the file that is not among them, with the nearest
   *     allowed one as a suggestion
   */
  public void allow(String... allowed) throws TomlException {
    Set<String> known = Set.of(allowed);
    for (String key : keysInFileOrder()) {
      if (!known.contains(key)) {
        throw error(
            key,
            "unknown key '"
                + key
                + "'"
                + Suggestions.nearest(key, known)
                    .map(s -> ", did you mean '" + s + "'?")
                    .orElse("; known here: " + String.join(", ", new TreeSet<>(known))));
      }
    }
  }

  /** An error at a key of this table, or at the table itself when the key is absent. */
  public TomlException error(String key, String problem) {
    TomlPosition position = has(key) ? table.inputPositionOf(List.of(key)) : null;
    return position == null
        ? new TomlException(source, line, column, problem)
        : new TomlException(source, position.line(), position.column(), problem);
  }

  /** An error about this table as a whole. */
  public TomlException error(String problem) {
    return new TomlException(source, line, column, problem);
  }

  /** A text that must be there. */
  public String string(String key) throws TomlException {
    return required(key, optionalString(key).orElse(null), "a text, such as " + key + " = \"…\"");
  }

  /** A text that may be there. */
  public Optional<String> optionalString(String key) throws TomlException {
    Object value = find(key);
    if (value == null) {
      return Optional.empty();
    }
    if (value instanceof String text) {
      return Optional.of(text);
    }
    throw wrongType(key, value, "a text in double quotes");
  }

  /** A text out of a closed set; anything else is refused with the nearest one as a suggestion. */
  public String choice(String key, String... choices) throws TomlException {
    return checkChoice(key, string(key), choices);
  }

  /** A text out of a closed set, or the given one when the key is absent. */
  public String choiceOr(String key, String absent, String... choices) throws TomlException {
    return checkChoice(key, optionalString(key).orElse(absent), choices);
  }

  private String checkChoice(String key, String value, String... choices) throws TomlException {
    Set<String> known = Set.of(choices);
    if (known.contains(value)) {
      return value;
    }
    throw error(
        key,
        "'"
            + value
            + "' is not possible for "
            + key
            + Suggestions.nearest(value, known)
                .map(s -> ", did you mean '" + s + "'? Possible: ")
                .orElse("; possible: ")
            + String.join(", ", choices));
  }

  /** A number, whole or not, that must be there. */
  public double number(String key) throws TomlException {
    OptionalDouble value = optionalNumber(key);
    if (value.isEmpty()) {
      throw missing(key, "a number, such as " + key + " = 1.5");
    }
    return value.getAsDouble();
  }

  /** A finite number, whole or not, that may be there. */
  public OptionalDouble optionalNumber(String key) throws TomlException {
    Object value = find(key);
    if (value == null) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(toNumber(key, value));
  }

  private double toNumber(String key, Object value) throws TomlException {
    if (value instanceof Long whole) {
      return whole.doubleValue();
    }
    if (value instanceof Double real && Double.isFinite(real)) {
      return real;
    }
    throw wrongType(key, value, "a number");
  }

  /** A whole number that must be there. */
  public long whole(String key) throws TomlException {
    OptionalLong value = optionalWhole(key);
    if (value.isEmpty()) {
      throw missing(key, "a whole number, such as " + key + " = 1");
    }
    return value.getAsLong();
  }

  /** A whole number that may be there. */
  public OptionalLong optionalWhole(String key) throws TomlException {
    Object value = find(key);
    if (value == null) {
      return OptionalLong.empty();
    }
    if (value instanceof Long whole) {
      return OptionalLong.of(whole);
    }
    throw wrongType(key, value, "a whole number");
  }

  /** True, false, or the given answer when the key is absent. */
  public boolean flagOr(String key, boolean absent) throws TomlException {
    Object value = find(key);
    if (value == null) {
      return absent;
    }
    if (value instanceof Boolean flag) {
      return flag;
    }
    throw wrongType(key, value, "true or false");
  }

  /** A date such as {@code 2026-11-25} that may be there. */
  public Optional<LocalDate> optionalDate(String key) throws TomlException {
    Object value = find(key);
    if (value == null) {
      return Optional.empty();
    }
    if (value instanceof LocalDate date) {
      return Optional.of(date);
    }
    throw wrongType(key, value, "a date without quotes, such as 2026-11-25");
  }

  /** A moment with its offset, such as {@code 2026-11-25T07:15:02Z}, that must be there. */
  public Instant instant(String key) throws TomlException {
    Object value = find(key);
    if (value instanceof OffsetDateTime moment) {
      return moment.toInstant();
    }
    if (value == null) {
      throw missing(key, "a moment without quotes, such as 2026-11-25T07:15:02Z");
    }
    throw wrongType(key, value, "a moment without quotes, such as 2026-11-25T07:15:02Z");
  }

  /**
   * A date and time of day without offset, such as {@code 2026-11-18T14:30:00}, that may be there.
   */
  public Optional<LocalDateTime> optionalDateTime(String key) throws TomlException {
    Object value = find(key);
    if (value == null) {
      return Optional.empty();
    }
    if (value instanceof LocalDateTime dateTime) {
      return Optional.of(dateTime);
    }
    throw wrongType(key, value, "a date and time without quotes, such as 2026-11-18T14:30:00");
  }

  /** A list of numbers; empty when the key is absent. */
  public List<Double> numbers(String key) throws TomlException {
    List<Double> numbers = new ArrayList<>();
    for (Object item : list(key)) {
      numbers.add(toNumber(key, item));
    }
    return List.copyOf(numbers);
  }

  /** A list of texts; empty when the key is absent. */
  public List<String> strings(String key) throws TomlException {
    List<String> strings = new ArrayList<>();
    for (Object item : list(key)) {
      if (!(item instanceof String text)) {
        throw wrongType(key, item, "texts in double quotes");
      }
      strings.add(text);
    }
    return List.copyOf(strings);
  }

  /** A list of number lists, such as a table of points; empty when the key is absent. */
  public List<List<Double>> numberRows(String key) throws TomlException {
    List<List<Double>> rows = new ArrayList<>();
    for (Object item : list(key)) {
      if (!(item instanceof TomlArray row)) {
        throw wrongType(key, item, "rows of numbers, such as [[1.0, 0.87], [1.25, 0.93]]");
      }
      List<Double> numbers = new ArrayList<>();
      for (int i = 0; i < row.size(); i++) {
        numbers.add(toNumber(key, row.get(i)));
      }
      rows.add(List.copyOf(numbers));
    }
    return List.copyOf(rows);
  }

  private List<Object> list(String key) throws TomlException {
    Object value = find(key);
    if (value == null) {
      return List.of();
    }
    if (value instanceof TomlArray array) {
      return array.toList();
    }
    throw wrongType(key, value, "a list in square brackets");
  }

  /** A table that must be there. */
  public TomlSection section(String key) throws TomlException {
    return required(key, optionalSection(key).orElse(null), "a table [" + childPath(key) + "]");
  }

  /** A table that may be there. */
  public Optional<TomlSection> optionalSection(String key) throws TomlException {
    Object value = find(key);
    if (value == null) {
      return Optional.empty();
    }
    if (value instanceof TomlTable child) {
      return Optional.of(child(key, child, table.inputPositionOf(List.of(key))));
    }
    throw wrongType(key, value, "a table [" + childPath(key) + "]");
  }

  /**
   * The tables of an array of tables ({@code [[key]]}) in file order; empty when the key is absent.
   */
  public List<TomlSection> sections(String key) throws TomlException {
    Object value = find(key);
    if (value == null) {
      return List.of();
    }
    if (!(value instanceof TomlArray array)) {
      throw wrongType(key, value, "tables [[" + childPath(key) + "]]");
    }
    List<TomlSection> sections = new ArrayList<>();
    for (int i = 0; i < array.size(); i++) {
      if (!(array.get(i) instanceof TomlTable child)) {
        throw wrongType(key, array.get(i), "tables [[" + childPath(key) + "]]");
      }
      sections.add(child(key, child, array.inputPositionOf(i)));
    }
    return List.copyOf(sections);
  }

  /**
   * The sub-tables of this table by name, in file order; {@code [fields.load]} gives {@code load}.
   */
  public Map<String, TomlSection> namedSections() throws TomlException {
    Map<String, TomlSection> sections = new LinkedHashMap<>();
    for (String name : keysInFileOrder()) {
      sections.put(name, section(name));
    }
    return sections;
  }

  private List<String> keysInFileOrder() {
    Comparator<String> byLine = Comparator.comparingInt(key -> error(key, "").line());
    return keys().stream().sorted(byLine.thenComparingInt(key -> error(key, "").column())).toList();
  }

  /** Every key of this table with its text, in key order. */
  public Map<String, String> stringMap() throws TomlException {
    Map<String, String> map = new LinkedHashMap<>();
    for (String key : keys()) {
      map.put(key, string(key));
    }
    return map;
  }

  /** Every key of this table with its number, in key order. */
  public Map<String, Double> numberMap() throws TomlException {
    Map<String, Double> map = new LinkedHashMap<>();
    for (String key : keys()) {
      map.put(key, number(key));
    }
    return map;
  }

  private TomlSection child(String key, TomlTable child, @Nullable TomlPosition position) {
    return new TomlSection(
        source,
        childPath(key),
        child,
        position == null ? line : position.line(),
        position == null ? column : position.column());
  }

  private String childPath(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  private @Nullable Object find(String key) {
    return table.get(List.of(key));
  }

  private <T> T required(String key, @Nullable T value, String example) throws TomlException {
    if (value == null) {
      throw missing(key, example);
    }
    return value;
  }

  private TomlException missing(String key, String example) {
    String where = path.isEmpty() ? "" : " in [" + path + "]";
    return error("'" + key + "' is missing" + where + "; it must be " + example);
  }

  private TomlException wrongType(String key, @Nullable Object value, String expected) {
    return error(key, "'" + key + "' must be " + expected + ", but it is " + describe(value));
  }

  private static String describe(@Nullable Object value) {
    if (value instanceof String text) {
      return "the text \"" + text + "\"";
    }
    if (value instanceof TomlTable) {
      return "a table";
    }
    if (value instanceof TomlArray) {
      return "a list";
    }
    return String.valueOf(value);
  }
}
