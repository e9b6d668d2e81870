package io.github.platenwire.recorder;

import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;

/** Numbers and clauses as an explanation writes them, both systems of units always. Stateless. */
final class FigureWords {
  /** One digit more than any figure is printed with, and then some. */
  private static final MathContext DIGITS = new MathContext(7, RoundingMode.HALF_EVEN);

  private FigureWords() {}

  /** What a clause is about. */
  enum Topic {
    AREA,
    STRESS,
    CORRECTION,
    ROUNDING
  }

  static String number(double value) {
    if (!Double.isFinite(value)) {
      return "unknown";
    }
    BigDecimal short7 = BigDecimal.valueOf(value).round(DIGITS);
    return short7.signum() == 0 ? "0" : short7.stripTrailingZeros().toPlainString();
  }

  static String both(double value, Unit si, Unit inchPound, UnitSystem first) {
    String one = number(value) + " " + si.symbol();
    if (inchPound == si) {
      return one.strip();
    }
    String other = number(si.convert(value, inchPound)) + " " + inchPound.symbol();
    return first == UnitSystem.SI ? one + " (" + other + ")" : other + " (" + one + ")";
  }

  static String rough(double value, Unit si, Unit inchPound, UnitSystem first) {
    MathContext two = new MathContext(2, RoundingMode.UP);
    double inSi =
        Double.isFinite(value) ? BigDecimal.valueOf(value).round(two).doubleValue() : value;
    double other = si.convert(value, inchPound);
    double inPounds =
        Double.isFinite(other) ? BigDecimal.valueOf(other).round(two).doubleValue() : other;
    String one = number(inSi) + " " + si.symbol();
    if (si == inchPound) {
      return one;
    }
    String second = number(inPounds) + " " + inchPound.symbol();
    return first == UnitSystem.SI ? one + " (" + second + ")" : second + " (" + one + ")";
  }

  /** A channel's value in its own unit, with the other system's beside it. */
  static String pair(double value, Unit unit, UnitSystem first) {
    Quantity quantity = unit.quantity();
    if (quantity != Quantity.FORCE && quantity != Quantity.LENGTH) {
      return number(value) + " " + unit.symbol();
    }
    boolean force = quantity == Quantity.FORCE;
    boolean inchPound =
        force
            ? unit == Unit.POUND_FORCE || unit == Unit.KIP
            : unit == Unit.INCH || unit == Unit.MIL;
    Unit si = !inchPound ? unit : force ? Unit.KILONEWTON : Unit.MILLIMETRE;
    Unit pounds = inchPound ? unit : force ? Unit.POUND_FORCE : Unit.INCH;
    return both(unit.convert(value, si), si, pounds, first);
  }

  static String printed(Figure figure, UnitSystem first) {
    String si = (figure.rounded() + " " + figure.unit().symbol()).strip();
    if (figure.inchPoundUnit() == figure.unit()) {
      return si;
    }
    String other = figure.inchPoundRounded() + " " + figure.inchPoundUnit().symbol();
    return first == UnitSystem.SI ? si + " (" + other + ")" : other + " (" + si + ")";
  }

  /**
   * Where the standard says so. The sections of ASTM C39/C39M are from memory: 7 Specimens, 9
   * Calculation, 10 Report.
   */
  static String clause(String standard, Topic topic) {
    if (!standard.startsWith("ASTM C39")) {
      return standard;
    }
    return standard
        + switch (topic) {
          case AREA -> ", sections 7 (diameter) and 9 (Calculation)";
          case STRESS, CORRECTION -> ", section 9 (Calculation)";
          case ROUNDING -> ", section 10 (Report)";
        };
  }

  /** Lines of a method file's rounding table that are about a figure. */
  static List<String> roundingLines(String methodText, String figureName) {
    String word = figureName.replaceFirst("^peak-", "").replaceFirst("-.*$", "");
    int at = methodText.indexOf("\n[rounding]");
    if (at < 0) {
      return List.of();
    }
    return methodText
        .substring(at + 1)
        .lines()
        .skip(1)
        .takeWhile(line -> !line.startsWith("["))
        .filter(line -> line.startsWith(word + "-"))
        .map(line -> line.replaceAll("\\s+", " ").strip())
        .toList();
  }
}
