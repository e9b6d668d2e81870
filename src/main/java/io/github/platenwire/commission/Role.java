package io.github.platenwire.commission;

import java.util.List;
import java.util.Map;

/** What a column is in the definition. Immutable. */
sealed interface Role {
  /** Characters that must be there. */
  record Literal(String text) implements Role {}

  /**
   * A value.
   *
   * @param name its field
   * @param unit our unit's symbol
   * @param shape how it is written
   * @param over what stands in its place at overload
   */
  record Value(String name, String unit, NumberShape shape, List<String> over) implements Role {
    /** Keeps the list from being changed. */
    public Value {
      over = List.copyOf(over);
    }
  }

  /**
   * The unit of a value.
   *
   * @param name its field
   * @param of the value's column
   * @param spellings what is sent = our unit
   */
  record UnitWord(String name, Column of, Map<String, String> spellings) implements Role {}

  /**
   * The state of the reading.
   *
   * @param name its field
   * @param codes what is sent = what it means
   * @param width its place in bytes, or 0 if it varies
   * @param blanksBefore so many blanks just before it; -1 for any run or none
   */
  record State(String name, Map<String, String> codes, int width, int blanksBefore)
      implements Role {}

  /**
   * Passed over.
   *
   * @param name its field
   * @param why what it seems to be
   * @param width its place in bytes, or 0 if it varies
   */
  record Passed(String name, String why, int width) implements Role {}
}
