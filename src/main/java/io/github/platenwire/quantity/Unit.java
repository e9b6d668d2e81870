package io.github.platenwire.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The closed table of units that may meet Platenwire's edges, each with its exact factor to the
 * base unit of its quantity and its UCUM code. Values are converted once, at the edge; inside, all
 * numbers are in base units. Immutable.
 *
 * <p>Factors: inch 25.4 mm, pound 0.45359237 kg and standard gravity 9.80665 m/s² are exact by
 * definition (international yard and pound agreement of 1959; CGPM 1901), from which the others
 * follow; pinned in the tests to the values of the check list.
 */
public enum Unit {
  NEWTON("N", "N", Quantity.FORCE, "1"),
  KILONEWTON("kN", "kN", Quantity.FORCE, "1000"),
  MEGANEWTON("MN", "MN", Quantity.FORCE, "1000000"),
  POUND_FORCE("lbf", "[lbf_av]", Quantity.FORCE, "4.4482216152605"),
  KIP("kip", "k[lbf_av]", Quantity.FORCE, "4448.2216152605"),
  KILOGRAM_FORCE("kgf", "kgf", Quantity.FORCE, "9.80665"),
  TONNE_FORCE("tf", "10*3.kgf", Quantity.FORCE, "9806.65"),

  MILLIMETRE("mm", "mm", Quantity.LENGTH, "1"),
  MICROMETRE("µm", "um", Quantity.LENGTH, "0.001"),
  CENTIMETRE("cm", "cm", Quantity.LENGTH, "10"),
  METRE("m", "m", Quantity.LENGTH, "1000"),
  INCH("in", "[in_i]", Quantity.LENGTH, "25.4"),
  MIL("mil", "[mil_i]", Quantity.LENGTH, "0.0254"),

  MEGAPASCAL("MPa", "MPa", Quantity.STRESS, "1"),
  KILOPASCAL("kPa", "kPa", Quantity.STRESS, "0.001"),
  PSI("psi", "[psi]", Quantity.STRESS, psiInMegapascals()),
  KSI("ksi", "k[psi]", Quantity.STRESS, psiInMegapascals().movePointRight(3)),

  MEGAPASCAL_PER_SECOND("MPa/s", "MPa/s", Quantity.STRESS_RATE, "1"),
  PSI_PER_SECOND("psi/s", "[psi]/s", Quantity.STRESS_RATE, psiInMegapascals()),

  MEGAPASCAL_PER_MINUTE("MPa/min", "MPa/min", Quantity.STRESS_RATE, perMinute(BigDecimal.ONE)),
  PSI_PER_MINUTE("psi/min", "[psi]/min", Quantity.STRESS_RATE, perMinute(psiInMegapascals())),

  SECOND("s", "s", Quantity.TIME, "1"),
  MILLISECOND("ms", "ms", Quantity.TIME, "0.001"),
  MINUTE("min", "min", Quantity.TIME, "60"),
  HOUR("h", "h", Quantity.TIME, "3600"),
  DAY("d", "d", Quantity.TIME, "86400"),

  KILOGRAM("kg", "kg", Quantity.MASS, "1"),
  GRAM("g", "g", Quantity.MASS, "0.001"),
  POUND("lb", "[lb_av]", Quantity.MASS, "0.45359237"),

  KILOGRAM_PER_CUBIC_METRE("kg/m³", "kg/m3", Quantity.DENSITY, "1"),
  POUND_PER_CUBIC_FOOT("lb/ft³", "[lb_av]/[cft_i]", Quantity.DENSITY, poundPerCubicFoot()),

  SQUARE_MILLIMETRE("mm²", "mm2", Quantity.AREA, "1"),
  SQUARE_INCH("in²", "[sin_i]", Quantity.AREA, "645.16"),

  DEGREE("deg", "deg", Quantity.ANGLE, "1"),

  NEWTON_PER_MILLIMETRE("N/mm", "N/mm", Quantity.STIFFNESS, "1"),
  KILONEWTON_PER_MILLIMETRE("kN/mm", "kN/mm", Quantity.STIFFNESS, "1000"),
  POUND_FORCE_PER_INCH("lbf/in", "[lbf_av]/[in_i]", Quantity.STIFFNESS, poundForcePerInch()),

  MILLIMETRE_PER_MINUTE("mm/min", "mm/min", Quantity.SPEED, perMinute(BigDecimal.ONE)),
  INCH_PER_MINUTE("in/min", "[in_i]/min", Quantity.SPEED, perMinute(new BigDecimal("25.4"))),

  // UCUM has whole exponents only: the code is one of its annotations around a plain length.
  MILLIMETRE_PER_ROOT_SECOND("mm/√s", "mm{per_root_second}", Quantity.ROOT_TIME_RATE, "1"),
  INCH_PER_ROOT_SECOND("in/√s", "[in_i]{per_root_second}", Quantity.ROOT_TIME_RATE, "25.4"),

  JOULE("J", "J", Quantity.ENERGY, "1"),
  INCH_POUND_FORCE("in·lbf", "[in_i].[lbf_av]", Quantity.ENERGY, "0.1129848290276167"),

  MICROSTRAIN("µm/m", "um/m", Quantity.STRAIN, "0.000001"),

  ONE("1", "1", Quantity.RATIO, "1"),
  PERCENT("%", "%", Quantity.RATIO, "0.01");

  private static final Map<String, Unit> BY_SYMBOL =
      Arrays.stream(values()).collect(Collectors.toUnmodifiableMap(Unit::symbol, unit -> unit));

  private final String symbol;
  private final String ucum;
  private final Quantity quantity;
  private final BigDecimal exactFactor;
  private final double factor;

  Unit(String symbol, String ucum, Quantity quantity, String factor) {
    this(symbol, ucum, quantity, new BigDecimal(factor));
  }

  Unit(String symbol, String ucum, Quantity quantity, BigDecimal factor) {
    this.symbol = symbol;
    this.ucum = ucum;
    this.quantity = quantity;
    this.exactFactor = factor;
    this.factor = factor.doubleValue();
  }

  private static BigDecimal psiInMegapascals() {
    return new BigDecimal("4.4482216152605")
        .divide(new BigDecimal("645.16"), MathContext.DECIMAL128);
  }

  private static BigDecimal poundForcePerInch() {
    return new BigDecimal("4.4482216152605").divide(new BigDecimal("25.4"), MathContext.DECIMAL128);
  }

  private static BigDecimal perMinute(BigDecimal perSecond) {
    return perSecond.divide(new BigDecimal("60"), MathContext.DECIMAL128);
  }

  private static BigDecimal poundPerCubicFoot() {
    return new BigDecimal("0.45359237")
        .divide(new BigDecimal("0.028316846592"), MathContext.DECIMAL128);
  }

  /** The symbol people write, such as {@code kN}. */
  public String symbol() {
    return symbol;
  }

  /** The code of the Unified Code for Units of Measure, for machine-readable files. */
  public String ucum() {
    return ucum;
  }

  /** What this unit measures. */
  public Quantity quantity() {
    return quantity;
  }

  /** How many base units one of this unit is, exact or to 34 digits. */
  public BigDecimal exactFactor() {
    return exactFactor;
  }

  /** How many base units one of this unit is, as the nearest double. */
  public double factor() {
    return factor;
  }

  /** A value in this unit, in the quantity's base unit. */
  public double toBase(double value) {
    return value * factor;
  }

  /** A value in the quantity's base unit, in this unit. */
  public double fromBase(double base) {
    return base / factor;
  }

  /**
   * A value in this unit, in another unit of the same quantity. The same unit gives the very same
   * double.
   *
   * @throws IllegalArgumentException if the two measure different quantities
   */
  public double convert(double value, Unit to) {
    if (to.quantity != quantity) {
      throw new IllegalArgumentException("no way from " + symbol + " to " + to.symbol);
    }
    return to == this ? value : value * factor / to.factor;
  }

  /**
   * The unit with a symbol.
   *
   * @param symbol as written by a person; {@code um} and {@code um/m} are taken for µm and µm/m,
   *     with the Greek letter too
   * @param quantity what is to be measured
   * @throws IllegalArgumentException if there is no such unit for that quantity; the message says
   *     what would be right
   */
  public static Unit parse(String symbol, Quantity quantity) {
    Unit unit = BY_SYMBOL.get(symbol.replaceFirst("^[uμ]m", "µm"));
    if (unit != null && unit.quantity == quantity) {
      return unit;
    }
    if (unit == POUND && quantity == Quantity.FORCE) {
      throw new IllegalArgumentException("'lb' is a mass; a load in pounds is written 'lbf'");
    }
    String possible =
        Arrays.stream(values())
            .filter(candidate -> candidate.quantity == quantity)
            .map(Unit::symbol)
            .collect(Collectors.joining(", "));
    throw new IllegalArgumentException(
        "'" + symbol + "' is no unit of " + quantity.word() + "; possible: " + possible);
  }
}
