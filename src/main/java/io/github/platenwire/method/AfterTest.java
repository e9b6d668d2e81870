package io.github.platenwire.method;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** What a person is asked once the specimen is broken, since no channel can tell. Immutable. */
public enum AfterTest {
  /** The type of fracture, by {@link FractureType}. */
  FRACTURE_TYPE,
  /** Whether the failure was satisfactory. */
  SATISFACTORY,
  /** Whether the break went through the aggregate, by {@link AggregateBreak}. */
  AGGREGATE,
  /** Whether the ribs of the bar are seen in the concrete. */
  BAR_IMPRINT,
  /** What voids and honeycombing the break shows. */
  VOIDS,
  /** Photographs, to be kept beside the record. */
  PHOTOGRAPHS,
  /** Where along the span it broke, by {@link BreakPosition}. */
  BREAK_POSITION;

  /** The word in a method file, such as {@code fracture-type}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  static Optional<AfterTest> ofWord(String word) {
    return Arrays.stream(values()).filter(one -> one.word().equals(word)).findFirst();
  }

  /**
   * What a method file asks.
   *
   * @throws TomlException if one of the words is none
   */
  static Set<AfterTest> parse(TomlSection file) throws TomlException {
    Set<AfterTest> ask = EnumSet.noneOf(AfterTest.class);
    for (String word : file.strings("ask")) {
      Optional<AfterTest> one = ofWord(word);
      if (one.isEmpty()) {
        throw file.error(
            "ask",
            "'"
                + word
                + "' is nothing to ask; possible: "
                + String.join(", ", Arrays.stream(values()).map(AfterTest::word).toList()));
      }
      ask.add(one.get());
    }
    return Set.copyOf(ask);
  }
}
