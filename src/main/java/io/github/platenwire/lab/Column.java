package io.github.platenwire.lab;

import io.github.platenwire.quantity.Unit;
import java.util.Optional;

/**
 * One column of the specimen table. Immutable.
 *
 * @param index from 0
 * @param name as written in the first row; empty for a column without a name
 * @param key the name by which it is known; empty for a column of people's own
 * @param number which of several, from 1: diameters are numbered
 * @param unit the unit that its name gives
 */
record Column(int index, String name, String key, int number, Optional<Unit> unit) {
  static final String SPECIMEN = "specimen";
  static final String SERIES = "series";
  static final String SHAPE = "shape";
  static final String DIAMETER = "diameter";
  static final String LENGTH = "length";
  static final String MASS = "mass";
  static final String CAST = "cast";
  static final String AGE = "age_days";
  static final String ENDS = "ends";
  static final String CURING = "curing";
  static final String MOISTURE = "moisture";
  static final String NOTES = "notes";

  /** Whether its cells are numbers. */
  boolean isNumber() {
    return unit.isPresent() || key.equals(AGE);
  }

  /** What to call it in a message. */
  String label() {
    return name.isEmpty() ? CsvTable.letters(index) + " (without a name)" : name;
  }
}
