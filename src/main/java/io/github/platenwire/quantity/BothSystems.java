package io.github.platenwire.quantity;

import java.util.Locale;

/**
 * Writes a value in both systems of units side by side, for a sentence or a message. Locale-proof.
 * Stateless.
 */
public final class BothSystems {
  private BothSystems() {}

  /**
   * A value in both systems, such as {@code 54.91 kN (12345 lbf)}.
   *
   * @param base the value in the quantity's base unit
   * @param quantity force, length, stress, stress rate or strain; a strain is the same in both
   * @param first the system that stands before the bracket
   * @throws IllegalArgumentException for a quantity of which the trade writes no pair
   */
  public static String words(double base, Quantity quantity, UnitSystem first) {
    String si = one(base, quantity, UnitSystem.SI);
    if (quantity == Quantity.STRAIN) {
      return si;
    }
    String inchPound = one(base, quantity, UnitSystem.INCH_POUND);
    return first == UnitSystem.SI ? si + " (" + inchPound + ")" : inchPound + " (" + si + ")";
  }

  private static String one(double base, Quantity quantity, UnitSystem system) {
    boolean si = system == UnitSystem.SI;
    return switch (quantity) {
      case FORCE -> si ? text(base, Unit.KILONEWTON, 2) : text(base, Unit.POUND_FORCE, 0);
      case LENGTH -> si ? text(base, Unit.MILLIMETRE, 3) : text(base, Unit.INCH, 4);
      case STRESS -> si ? text(base, Unit.MEGAPASCAL, 2) : text(base, Unit.PSI, 0);
      case STRESS_RATE ->
          si ? text(base, Unit.MEGAPASCAL_PER_SECOND, 3) : text(base, Unit.PSI_PER_SECOND, 1);
      case STRAIN -> text(base, Unit.MICROSTRAIN, 1);
      default -> throw new IllegalArgumentException("no pair of units, quantity=" + quantity);
    };
  }

  private static String text(double base, Unit unit, int decimals) {
    String number = String.format(Locale.ROOT, "%." + decimals + "f", unit.fromBase(base));
    boolean zero = number.chars().noneMatch(c -> c >= '1' && c <= '9');
    return (zero && number.startsWith("-") ? number.substring(1) : number) + " " + unit.symbol();
  }
}
