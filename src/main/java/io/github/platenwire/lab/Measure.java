package io.github.platenwire.lab;

import io.github.platenwire.method.Dimension;
import io.github.platenwire.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What is measured on a specimen, in which units a column may give it, and between which limits it
 * is believed. The limits shall catch a slipped decimal point or a wrong unit, not judge a
 * specimen; they are ours (common practice, no source: cylinders of 50 to 300 mm, beams of up to a
 * few metres).
 */
enum Measure {
  /** A diameter, 25 to 600 mm. */
  DIAMETER("diameter", 25, 600),
  /** The length of a cylinder, core, cube or disc, 10 to 1000 mm. */
  LENGTH("length", 10, 1000),
  /** The length of a prism or beam, 100 to 5000 mm. */
  BEAM_LENGTH("length", 100, 5000),
  /** A mass, 0.05 to 1000 kg. */
  MASS("mass", 0.05, 1000),
  /** Width of a section, 10 to 1500 mm. */
  WIDTH(Dimension.WIDTH, 10, 1500),
  /** Depth of a section, 10 to 1500 mm. */
  DEPTH(Dimension.DEPTH, 10, 1500),
  /** Distance of supports, 50 to 5000 mm. */
  SPAN(Dimension.SPAN, 50, 5000),
  /** Gauge length, 1 to 1000 mm. */
  GAUGE_LENGTH(Dimension.GAUGE_LENGTH, 1, 1000),
  /** Depth of a notch, 1 to 500 mm. */
  NOTCH_DEPTH(Dimension.NOTCH_DEPTH, 1, 500),
  /** Diameter of a bar, 2 to 60 mm. */
  BAR_DIAMETER(Dimension.BAR_DIAMETER, 2, 60),
  /** Cover of a bar, 2 to 500 mm. */
  COVER(Dimension.COVER, 2, 500),
  /** Angle of a wedge, 1 to 120 degrees. */
  WEDGE_ANGLE(Dimension.WEDGE_ANGLE, 1, 120),
  /** Strength of companions, 1 to 300 MPa. */
  COMPANION_STRENGTH(Dimension.COMPANION_STRENGTH, 1, 300);

  /**
   * How far two columns may differ that give the same in two units, as a part of the value: twice
   * the 0.25 mm to which a 100 mm diameter is read.
   */
  static final double AGREEMENT = 0.005;

  private final String word;
  private final Optional<Dimension> dimension;
  private final double leastBase;
  private final double greatestBase;

  Measure(String word, double leastBase, double greatestBase) {
    this(word, Optional.empty(), leastBase, greatestBase);
  }

  Measure(Dimension dimension, double leastBase, double greatestBase) {
    this(dimension.word(), Optional.of(dimension), leastBase, greatestBase);
  }

  Measure(String word, Optional<Dimension> dimension, double leastBase, double greatestBase) {
    this.word = word;
    this.dimension = dimension;
    this.leastBase = leastBase;
    this.greatestBase = greatestBase;
  }

  /** The word with which its columns begin. */
  String word() {
    return word;
  }

  /** The dimension it is, unless it is a diameter, the length or the mass. */
  Optional<Dimension> dimension() {
    return dimension;
  }

  /** The units in which a column may give it, the base unit first. */
  List<Unit> units() {
    if (this == MASS) {
      return List.of(Unit.KILOGRAM, Unit.GRAM, Unit.POUND);
    }
    return dimension.map(Dimension::units).orElse(List.of(Unit.MILLIMETRE, Unit.INCH));
  }

  /** A value to four significant digits, for a message. */
  String rounded(double base) {
    return digits(base, 4) + " " + units().get(0).symbol();
  }

  boolean isLikely(double base) {
    return base >= leastBase && base <= greatestBase;
  }

  /** The limits in a unit, such as {@code 25 to 600 mm}. */
  String limits(Unit unit) {
    return digits(unit.fromBase(leastBase), 3)
        + " to "
        + digits(unit.fromBase(greatestBase), 3)
        + " "
        + unit.symbol();
  }

  /** Another unit in which the bare number would be likely. */
  Optional<Unit> likelyUnit(double number, Unit written) {
    return units().stream()
        .filter(unit -> unit != written && isLikely(unit.toBase(number)))
        .findFirst();
  }

  /** The measure whose columns begin with a word. */
  static Optional<Measure> ofWord(String word) {
    return Arrays.stream(values()).filter(measure -> measure.word.equals(word)).findFirst();
  }

  private static String digits(double value, int count) {
    return Names.plain(new BigDecimal(value).round(new MathContext(count)).doubleValue());
  }
}
