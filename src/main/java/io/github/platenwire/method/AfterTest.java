package io.github.platenwire.method;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a person is asked once the specimen is broken, since no channel can tell. Immutable. */
public enum AfterTest {
  /** The type of fracture, by {@link FractureType}. */
  FRACTURE_TYPE,
  /** Whether the failure was satisfactory. */
  SATISFACTORY,
  /** Whether the break went through the aggregate, by {@link AggregateBreak}. */
  AGGREGATE,
  /** Where along the span it broke, by {@link BreakPosition}. */
  BREAK_POSITION;

  /** The word in a method file, such as {@code fracture-type}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  static Optional<AfterTest> ofWord(String word) {
    return Arrays.stream(values()).filter(one -> one.word().equals(word)).findFirst();
  }
}
