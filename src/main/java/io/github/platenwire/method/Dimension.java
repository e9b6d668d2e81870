package io.github.platenwire.method;

import io.github.platenwire.quantity.Unit;
import java.util.List;
import java.util.Locale;

/**
 * A size of a specimen, or of what is fixed to it, beside diameters and length; and what else of a
 * specimen must be known as a number before its test. Immutable.
 *
 * <p>Each has a word, of which the names in the lab's table ({@code width_mm}), in the raw file's
 * head ({@code width-mm}) and in the summary are made.
 */
public enum Dimension {
  /** Width of the section, across the load; of a cube one side of the loaded face. */
  WIDTH("width"),
  /** Depth of the section, along the load; of a cube the other side of the loaded face. */
  DEPTH("depth"),
  /** Distance of the supports. */
  SPAN("span"),
  /** Distance of the points between which a gauge measures. */
  GAUGE_LENGTH("gauge_length"),
  /** Depth of a sawn notch. */
  NOTCH_DEPTH("notch_depth"),
  /** Diameter of the bar across the crack. */
  BAR_DIAMETER("bar_diameter"),
  /** Concrete between the bar and the nearest face. */
  COVER("cover"),
  /** Angle between the two faces of the wedge. */
  WEDGE_ANGLE("wedge_angle", Unit.DEGREE),
  /** Compressive strength of its companions: a test of stiffness loads to a part of it. */
  COMPANION_STRENGTH("companion_strength", Unit.MEGAPASCAL, Unit.PSI);

  private final String word;
  private final Unit base;
  private final Unit other;

  Dimension(String word) {
    this(word, Unit.MILLIMETRE, Unit.INCH);
  }

  Dimension(String word, Unit only) {
    this(word, only, only);
  }

  Dimension(String word, Unit base, Unit other) {
    this.word = word;
    this.base = base;
    this.other = other;
  }

  /** The word of which names are made, such as {@code gauge_length}. */
  public String word() {
    return word;
  }

  /** The units in which people give it; the first is the base unit. */
  public List<Unit> units() {
    return base == other ? List.of(base) : List.of(base, other);
  }

  /** Its name in the raw file's head, such as {@code gauge-length-mm}. */
  public String headerKey() {
    return word.replace('_', '-') + "-" + suffix(base);
  }

  /** Its name in the summary in one of its units, such as {@code gauge_length_in}. */
  public String summaryKey(Unit unit) {
    return word + "_" + suffix(unit);
  }

  private static String suffix(Unit unit) {
    return unit.symbol().toLowerCase(Locale.ROOT);
  }
}
