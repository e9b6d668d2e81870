package io.github.platenwire.device;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;

/**
 * A number field as its table tells it. Immutable.
 *
 * @param unit the unit that is stated
 * @param format how the number is written
 * @param over what is sent in its place at overload
 */
record NumberField(Unit unit, NumberFormat format, Words over) {
  /** More digits than any indicator shows. */
  private static final int MOST_DIGITS = 40;

  /** The quantities that load frames, gauges and balances send. */
  private static final List<Quantity> QUANTITIES =
      List.of(Quantity.FORCE, Quantity.LENGTH, Quantity.STRAIN, Quantity.MASS);

  static NumberField parse(TomlSection section) throws TomlException {
    section.allow(
        "kind",
        "unit",
        "decimal",
        "implied-decimals",
        "digits",
        "sign",
        "exponent",
        "over",
        "width");
    Unit unit = unit(section);
    int implied = wholeWithin(section, "implied-decimals", 1, MOST_DIGITS);
    String decimal = section.choiceOr("decimal", ".", ".", ",");
    if (implied > 0 && section.has("decimal")) {
      throw section.error(
          "implied-decimals", "either a mark is sent (decimal) or it is implied, not both");
    }
    String sign = section.choiceOr("sign", "optional", "required", "optional", "none", "after");
    NumberFormat format =
        new NumberFormat(
            implied > 0 ? 0 : (byte) decimal.charAt(0),
            wholeWithin(section, "digits", 1, MOST_DIGITS),
            NumberFormat.Sign.valueOf(sign.toUpperCase(Locale.ROOT)),
            section.flagOr("exponent", /* absent= */ false),
            implied);
    return new NumberField(unit, format, over(section, format));
  }

  static Unit unit(TomlSection section) throws TomlException {
    String symbol = section.string("unit");
    List<String> refusals = new ArrayList<>();
    for (Quantity quantity : QUANTITIES) {
      try {
        Unit unit = Unit.parse(symbol, quantity);
        if (unit == Unit.POUND) {
          throw section.error(
              "unit",
              "'lb' is a mass; a load in pounds is written 'lbf', and a balance here shows g or kg");
        }
        return unit;
      } catch (IllegalArgumentException e) {
        refusals.add(String.valueOf(e.getMessage()));
      }
    }
    throw section.error("unit", String.join("; ", refusals));
  }

  private static Words over(TomlSection section, NumberFormat format) throws TomlException {
    List<byte[]> words = new ArrayList<>();
    try {
      for (String text : section.strings("over")) {
        words.add(overWord(text, format));
      }
      return new Words(words);
    } catch (IllegalArgumentException e) {
      throw section.error("over", String.valueOf(e.getMessage()));
    }
  }

  private static byte[] overWord(String text, NumberFormat format) {
    byte[] word = ByteText.parse(text);
    if (word.length == 0 || Blanks.isBlank(word[0]) || Blanks.isBlank(word[word.length - 1])) {
      throw new IllegalArgumentException(
          "'" + text + "' is empty or begins or ends with a blank; leave blanks around it out");
    }
    int number = new DecimalScanner().scan(format, word, 0, word.length);
    if (number > 0 && number < word.length) {
      throw new IllegalArgumentException(
          "'" + text + "' begins like a number, so it cannot be told from one");
    }
    return word;
  }

  /** A whole number within limits, or 0 when the key is absent. */
  static int wholeWithin(TomlSection section, String key, int least, int most)
      throws TomlException {
    OptionalLong value = section.optionalWhole(key);
    if (value.isEmpty()) {
      return 0;
    }
    if (value.getAsLong() < least || value.getAsLong() > most) {
      throw section.error(
          key, key + " must be " + least + " to " + most + ", but it is " + value.getAsLong());
    }
    return (int) value.getAsLong();
  }
}
