package io.github.platenwire.device;

import io.github.platenwire.device.DeviceDefinition.ValueField;
import io.github.platenwire.device.PackedNumber.Kind;
import io.github.platenwire.device.PackedNumber.Scale;
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
import java.util.OptionalLong;
import java.util.stream.IntStream;

/**
 * Reads the tables {@code [fields.NAME]} of a definition whose frames hold packed numbers. Used
 * once a definition.
 */
final class PackedFields {
  private static final String LETTERS = "ABCDEFGH";
  private static final double MOST_SCALE = 1e12;

  private final String placeKey;
  private final Place place;
  private final List<ValueField> values = new ArrayList<>();
  private final List<PackedField> fields = new ArrayList<>();

  /** Where a field's first byte stands. */
  @FunctionalInterface
  interface Place {
    /**
     * The index of the first byte.
     *
     * @param section the field's table
     * @param bytes how many bytes the field takes up
     * @throws TomlException if they do not lie in the frame
     */
    int firstByte(TomlSection section, int bytes) throws TomlException;
  }

  /**
   * Reads every field.
   *
   * @param root the definition
   * @param placeKey the key that says where a field stands
   * @param place reads that key
   */
  PackedFields(TomlSection root, String placeKey, Place place) throws TomlException {
    this.placeKey = placeKey;
    this.place = place;
    TomlSection all = root.section("fields");
    Map<String, TomlSection> sections = all.namedSections();
    List<Map.Entry<String, TomlSection>> states = new ArrayList<>();
    for (Map.Entry<String, TomlSection> entry : sections.entrySet()) {
      if (!DefinitionParser.isSafeName(entry.getKey())) {
        throw all.error(
            entry.getKey(),
            "'" + entry.getKey() + "' is no field name: use lower-case letters, digits, hyphens");
      }
      if (entry.getValue().choice("kind", "integer", "float", "status").equals("status")) {
        states.add(entry);
      } else {
        addValue(entry.getKey(), entry.getValue());
      }
    }
    if (values.isEmpty()) {
      throw all.error("no field is an integer or a float, so nothing would be read");
    }
    for (Map.Entry<String, TomlSection> entry : states) {
      addStatus(entry.getKey(), entry.getValue());
    }
  }

  List<ValueField> values() {
    return List.copyOf(values);
  }

  List<PackedField> fields() {
    return List.copyOf(fields);
  }

  private void addValue(String name, TomlSection section) throws TomlException {
    section.allow("kind", placeKey, "order", "signed", "unit", "scale", "offset", "over");
    boolean isFloat = section.string("kind").equals("float");
    int[] order = order(section, isFloat);
    if (isFloat && section.has("signed")) {
      throw section.error("signed", "a float always has a sign; leave 'signed' out");
    }
    Kind kind =
        isFloat
            ? Kind.FLOAT
            : section.flagOr("signed", /* absent= */ true) ? Kind.SIGNED : Kind.UNSIGNED;
    Unit unit = NumberField.unit(section);
    double scale = section.optionalNumber("scale").orElse(1);
    if (scale == 0 || Math.abs(scale) > MOST_SCALE) {
      throw section.error("scale", "scale must be a number other than 0, within 1e12");
    }
    double offset = section.optionalNumber("offset").orElse(0);
    double[] over = section.numbers("over").stream().mapToDouble(Double::doubleValue).toArray();
    PackedNumber number =
        new PackedNumber(
            place.firstByte(section, order.length), order, kind, Scale.of(scale), offset);
    fields.add(new PackedField.Value(name, number, over, values.size()));
    values.add(new ValueField(name, unit));
  }

  /** The rank of each byte as sent, out of letters of which A is the most significant byte. */
  private static int[] order(TomlSection section, boolean isFloat) throws TomlException {
    String letters = section.string("order");
    int count = letters.length();
    boolean possible = isFloat ? count == 4 || count == 8 : count >= 1 && count <= 4;
    boolean[] seen = new boolean[LETTERS.length()];
    int[] ranks = new int[count];
    for (int i = 0; i < count && possible; i++) {
      int rank = LETTERS.indexOf(letters.charAt(i));
      possible = rank >= 0 && rank < count && !seen[rank];
      if (possible) {
        seen[rank] = true;
        ranks[i] = rank;
      }
    }
    if (!possible) {
      throw section.error(
          "order",
          "'"
              + letters
              + "' is no order: write one letter for each byte as it is sent, A for the most"
              + " significant, such as "
              + (isFloat ? "ABCD, CDAB, BADC, DCBA or eight letters" : "A, AB, BA, ABCD or CDAB"));
    }
    return ranks;
  }

  private void addStatus(String name, TomlSection section) throws TomlException {
    section.allow("kind", placeKey, "order", "mask", "codes", "of");
    int[] order = order(section, /* isFloat= */ false);
    long all = (1L << (Byte.SIZE * order.length)) - 1;
    OptionalLong stated = section.optionalWhole("mask");
    long mask = stated.orElse(all);
    if (mask <= 0 || mask > all) {
      throw section.error("mask", "the mask must be 1 to " + all + ", but it is " + mask);
    }
    PackedNumber number =
        new PackedNumber(
            place.firstByte(section, order.length), order, Kind.UNSIGNED, Scale.ONE, 0);
    fields.add(new PackedField.Status(name, number, mask, codes(section, mask), targets(section)));
  }

  private static Map<Long, Quality> codes(TomlSection section, long mask) throws TomlException {
    TomlSection table = section.section("codes");
    Map<Long, Quality> codes = new LinkedHashMap<>();
    for (String key : table.keys()) {
      Quality quality = Quality.ofWord(table.choice(key, "ok", "unstable", "over")).orElseThrow();
      long code = code(table, key);
      if ((code & ~mask) != 0) {
        throw table.error(key, key + " has bits that the mask leaves out, so it is never met");
      }
      if (codes.put(code, quality) != null) {
        throw table.error(key, "the code " + key + " is listed twice");
      }
    }
    if (codes.isEmpty()) {
      throw section.error("codes", "'codes' is empty; list what the device sends");
    }
    return codes;
  }

  private static long code(TomlSection table, String key) throws TomlException {
    try {
      long code = Long.decode(key);
      if (code >= 0) {
        return code;
      }
    } catch (NumberFormatException e) {
      // told below, in words
    }
    throw table.error(key, "'" + key + "' is no code: write a whole number, such as 4 or 0x04");
  }

  private int[] targets(TomlSection section) throws TomlException {
    Optional<String> of = section.optionalString("of");
    if (of.isEmpty()) {
      return IntStream.range(0, values.size()).toArray();
    }
    List<String> names = values.stream().map(ValueField::name).toList();
    int target = names.indexOf(of.get());
    if (target < 0) {
      String hint =
          Suggestions.nearest(of.get(), names)
              .map(s -> ", did you mean '" + s + "'?")
              .orElse("; values here: " + String.join(", ", names));
      throw section.error("of", "there is no value '" + of.get() + "'" + hint);
    }
    return new int[] {target};
  }
}
