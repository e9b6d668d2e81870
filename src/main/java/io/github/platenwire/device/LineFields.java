package io.github.platenwire.device;

import io.github.platenwire.device.DeviceDefinition.ValueField;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.toml.Suggestions;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/** Reads the tables {@code [fields.NAME]} of a line definition. Used once a definition. */
final class LineFields {
  private static final int WIDEST = 1024;

  private final Map<String, FieldDraft> drafts = new LinkedHashMap<>();
  private final List<ValueField> values = new ArrayList<>();
  private final Map<Integer, String> unitFieldOfValue = new LinkedHashMap<>();

  /**
   * Reads every field.
   *
   * @param line the table that holds the layout
   * @param sections the tables by field name, in the order of the layout
   */
  LineFields(TomlSection line, Map<String, TomlSection> sections) throws TomlException {
    Map<String, String> kinds = new LinkedHashMap<>();
    for (Map.Entry<String, TomlSection> entry : sections.entrySet()) {
      kinds.put(
          entry.getKey(), entry.getValue().choice("kind", "number", "unit", "status", "text"));
    }
    // Numbers first: units and states refer to them.
    for (Map.Entry<String, TomlSection> entry : sections.entrySet()) {
      if ("number".equals(kinds.get(entry.getKey()))) {
        addNumber(entry.getKey(), entry.getValue());
      }
    }
    if (values.isEmpty()) {
      throw line.error("layout", "no field of the layout is a number, so nothing would be read");
    }
    for (Map.Entry<String, TomlSection> entry : sections.entrySet()) {
      String name = entry.getKey();
      TomlSection section = entry.getValue();
      switch (String.valueOf(kinds.get(name))) {
        case "unit" -> addUnit(name, section);
        case "status" -> addStatus(name, section);
        case "text" -> addText(name, section);
        default -> {} // a number, read before
      }
    }
  }

  /** The values of a line, in the order of the layout. */
  List<ValueField> values() {
    return List.copyOf(values);
  }

  /** Every field by name. */
  Map<String, FieldDraft> drafts() {
    return drafts;
  }

  private void addNumber(String name, TomlSection section) throws TomlException {
    NumberField number = NumberField.parse(section);
    Step step = new NumberStep(name, values.size(), number.format(), number.over());
    drafts.put(name, new FieldDraft(name, Optional.of(step), width(section)));
    values.add(new ValueField(name, number.unit()));
  }

  private void addUnit(String name, TomlSection section) throws TomlException {
    section.allow("kind", "spellings", "of", "width");
    int width = width(section);
    int value = singleTarget(name, section);
    String earlier = unitFieldOfValue.putIfAbsent(value, name);
    if (earlier != null) {
      throw section.error(
          "{" + earlier + "} already says the unit of {" + values.get(value).name() + "}");
    }
    TomlSection spellings = section.section("spellings");
    List<Unit> units = new ArrayList<>();
    for (String spelling : spellings.keys()) {
      units.add(unit(spellings, spelling, values.get(value).unit()));
    }
    Words words = words(section, "spellings", width);
    drafts.put(
        name,
        new FieldDraft(name, Optional.of(WordStep.ofUnits(name, words, units, value)), width));
  }

  private static Unit unit(TomlSection spellings, String spelling, Unit stated)
      throws TomlException {
    try {
      return Unit.parse(spellings.string(spelling), stated.quantity());
    } catch (IllegalArgumentException e) {
      throw spellings.error(spelling, String.valueOf(e.getMessage()));
    }
  }

  private void addStatus(String name, TomlSection section) throws TomlException {
    section.allow("kind", "codes", "of", "width");
    int width = width(section);
    TomlSection codes = section.section("codes");
    List<Quality> qualities = new ArrayList<>();
    for (String code : codes.keys()) {
      String word = codes.choice(code, "ok", "unstable", "over");
      qualities.add(Quality.ofWord(word).orElseThrow());
    }
    Words words = words(section, "codes", width);
    int[] targets =
        section.has("of")
            ? new int[] {singleTarget(name, section)}
            : IntStream.range(0, values.size()).toArray();
    Step step = WordStep.ofQualities(name, words, qualities, targets);
    drafts.put(name, new FieldDraft(name, Optional.of(step), width));
  }

  private void addText(String name, TomlSection section) throws TomlException {
    section.allow("kind", "width");
    drafts.put(name, new FieldDraft(name, Optional.empty(), width(section)));
  }

  /** The number that a field speaks of: the one it names, or the only one there is. */
  private int singleTarget(String name, TomlSection section) throws TomlException {
    List<String> numbers = values.stream().map(ValueField::name).toList();
    Optional<String> of = section.optionalString("of");
    if (of.isEmpty() && numbers.size() > 1) {
      throw section.error(
          "'of' is missing in [fields."
              + name
              + "]; there are several numbers, so say which one is meant, such as of = \""
              + numbers.get(0)
              + "\"");
    }
    int target = of.isEmpty() ? 0 : numbers.indexOf(of.get());
    if (target < 0) {
      String hint =
          Suggestions.nearest(of.get(), numbers)
              .map(s -> ", did you mean '" + s + "'?")
              .orElse("; numbers here: " + String.join(", ", numbers));
      throw section.error("of", "there is no number field '" + of.get() + "'" + hint);
    }
    return target;
  }

  private static int width(TomlSection section) throws TomlException {
    return NumberField.wholeWithin(section, "width", 1, WIDEST);
  }

  private static Words words(TomlSection section, String key, int width) throws TomlException {
    TomlSection table = section.section(key);
    List<byte[]> words = new ArrayList<>();
    for (String word : table.keys()) {
      words.add(word(table, word, width));
    }
    if (words.isEmpty()) {
      throw section.error(key, "'" + key + "' is empty; list what the device sends");
    }
    try {
      return new Words(words);
    } catch (IllegalArgumentException e) {
      throw section.error(key, String.valueOf(e.getMessage()));
    }
  }

  private static byte[] word(TomlSection table, String word, int width) throws TomlException {
    byte[] bytes;
    try {
      bytes = ByteText.parse(word);
    } catch (IllegalArgumentException e) {
      throw table.error(word, String.valueOf(e.getMessage()));
    }
    if (bytes.length == 0 && width == 0) {
      throw table.error(word, "an empty word can only stand in a field with a width");
    }
    if (width > 0 && bytes.length > width) {
      throw table.error(word, "'" + word + "' is longer than the field's width of " + width);
    }
    if (bytes.length > 0 && (Blanks.isBlank(bytes[0]) || Blanks.isBlank(bytes[bytes.length - 1]))) {
      throw table.error(
          word, "'" + word + "' begins or ends with a blank; leave it out, padding is passed over");
    }
    return bytes;
  }
}
