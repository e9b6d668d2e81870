package io.github.platenwire.explain;

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

  /** A unit behind a number; nothing for a plain number. */
  static String symbol(Unit unit) {
    return unit == Unit.ONE ? "" : " " + unit.symbol();
  }

  static String number(double value) {
    if (!Double.isFinite(value)) {
      return "unknown";
    }
    BigDecimal short7 = BigDecimal.valueOf(value).round(DIGITS);
    return short7.signum() == 0 ? "0" : short7.stripTrailingZeros().toPlainString();
  }

  static String both(double value, Unit si, Unit inchPound, UnitSystem first) {
    String one = number(value) + symbol(si);
    if (inchPound == si) {
      return one;
    }
    String other = number(si.convert(value, inchPound)) + symbol(inchPound);
    return first == UnitSystem.SI ? one + " (" + other + ")" : other + " (" + one + ")";
  }

  static String rough(double value, Unit si, Unit inchPound, UnitSystem first) {
    MathContext two = new MathContext(2, RoundingMode.UP);
    double inSi =
        Double.isFinite(value) ? BigDecimal.valueOf(value).round(two).doubleValue() : value;
    double other = si.convert(value, inchPound);
    double inPounds =
        Double.isFinite(other) ? BigDecimal.valueOf(other).round(two).doubleValue() : other;
    String one = number(inSi) + symbol(si);
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
    String si = figure.rounded() + symbol(figure.unit());
    if (figure.inchPoundUnit() == figure.unit()) {
      return si;
    }
    String other = figure.inchPoundRounded() + " " + figure.inchPoundUnit().symbol();
    return first == UnitSystem.SI ? si + " (" + other + ")" : other + " (" + si + ")";
  }

  /**
   * Where the standard says so. Headings and the numbers of ASTM C39/C39M's sections are from
   * memory of the standards.
   */
  static String clause(String standard, Topic topic) {
    if (standard.startsWith("ASTM C39")) {
      return standard
          + switch (topic) {
            case AREA -> ", sections 7 (Specimens) and 9 (Calculation)";
            case STRESS, CORRECTION -> ", section 9 (Calculation)";
            case ROUNDING -> ", section 10 (Report)";
          };
    }
    if (standard.startsWith("ASTM")) {
      return standard + (topic == Topic.ROUNDING ? ", section Report" : ", section Calculation");
    }
    return standard.startsWith("EN ")
        ? standard + ", clause Expression of results"
        : "the method's file in the head";
  }

  /** Lines of a method file's rounding table that are about a figure. */
  static List<String> roundingLines(String methodText, Figure figure) {
    int at = methodText.indexOf("\n[rounding]");
    if (at < 0) {
      return List.of();
    }
    List<String> lines =
        methodText
            .substring(at + 1)
            .lines()
            .skip(1)
            .takeWhile(line -> !line.startsWith("["))
            .map(line -> line.replaceAll("\\s+", " ").strip())
            .filter(line -> !line.isEmpty() && !line.startsWith("#"))
            .toList();
    return about(lines, figure);
  }

  /** By the figure's own word, else by what it measures. */
  private static List<String> about(List<String> lines, Figure figure) {
    String word =
        figure.name().equals("correction")
            ? "factor"
            : figure.name().replaceFirst("^peak-", "").replaceFirst("-.*$", "");
    List<String> own = lines.stream().filter(line -> line.matches(word + "[- ].*")).toList();
    if (!own.isEmpty()) {
      return own;
    }
    List<String> words = words(figure.unit());
    List<String> found = List.of();
    for (String each : words) {
      found = found.isEmpty() ? lines.stream().filter(l -> l.startsWith(each)).toList() : found;
    }
    return found;
  }

  /** The words by which a method's file may name the rounding of a unit. */
  private static List<String> words(Unit unit) {
    return switch (unit.quantity()) {
      case FORCE -> List.of("load-");
      case LENGTH -> List.of("size-", "width-", "length-");
      case STRESS -> List.of("stress-", "strength-");
      case STIFFNESS -> List.of("stiffness-");
      case ENERGY -> List.of("work-");
      case STRESS_RATE, SPEED, ROOT_TIME_RATE -> List.of("rate-");
      case TIME -> List.of("time-", "age-");
      case MASS -> List.of("mass-");
      case RATIO -> List.of("ratio");
      case STRAIN -> List.of("strain");
      default -> List.of("none");
    };
  }
}
