package io.github.platenwire.report;

import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Figures, times and lists of rows in words. Locale-proof. Stateless. */
final class Words {
  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT);
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("yyyy-MM-dd", Locale.ROOT);

  /** An uncertainty is given with so many digits (GUM 7.2.6: one or two at most). */
  private static final int DIGITS_OF_UNCERTAINTY = 2;

  private static final int MOST_ROWS = 6;

  private Words() {}

  /** A figure in the unit shown first, such as {@code 25.0 MPa}. */
  static String first(Figure figure, UnitSystem first) {
    return first == UnitSystem.SI || sameUnits(figure) ? si(figure) : inchPound(figure);
  }

  /** A figure in the other unit; empty where the trade has no other. */
  static String other(Figure figure, UnitSystem first) {
    if (sameUnits(figure)) {
      return "";
    }
    return first == UnitSystem.SI ? inchPound(figure) : si(figure);
  }

  private static boolean sameUnits(Figure figure) {
    return figure.unit() == figure.inchPoundUnit();
  }

  private static String si(Figure figure) {
    return with(figure.rounded(), figure.unit());
  }

  private static String inchPound(Figure figure) {
    return with(figure.inchPoundRounded(), figure.inchPoundUnit());
  }

  /** A number with its unit, if it has one. */
  static String with(String number, Unit unit) {
    return unit == Unit.ONE ? number : number + " " + unit.symbol();
  }

  /**
   * A figure's expanded uncertainty in the unit shown first and in the other, such as {@code ± 0.16
   * MPa} and {@code ± 23 psi}; only one where the trade has no other; empty if none is given.
   */
  static List<String> uncertainty(Figure figure, UnitSystem first) {
    if (figure.uncertainty().isEmpty()) {
      return List.of();
    }
    double expanded = figure.uncertainty().get().expanded();
    String si = plusMinus(expanded, figure.unit());
    if (sameUnits(figure)) {
      return List.of(si);
    }
    String inchPound =
        plusMinus(figure.unit().convert(expanded, figure.inchPoundUnit()), figure.inchPoundUnit());
    return first == UnitSystem.SI ? List.of(si, inchPound) : List.of(inchPound, si);
  }

  private static String plusMinus(double expanded, Unit unit) {
    return "± " + with(significant(expanded, DIGITS_OF_UNCERTAINTY), unit);
  }

  /** A number with so many significant digits, never with an exponent. */
  static String significant(double value, int digits) {
    if (!Double.isFinite(value)) {
      return "not known";
    }
    BigDecimal rounded =
        BigDecimal.valueOf(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
    return rounded.scale() < 0
        ? rounded.setScale(0, RoundingMode.UNNECESSARY).toPlainString()
        : rounded.toPlainString();
  }

  /** The same without noughts at its end. */
  static String shortest(double value, int digits) {
    String words = significant(value, digits);
    return words.contains(".") ? words.replaceAll("0+$", "").replaceAll("\\.$", "") : words;
  }

  /** A number with so many decimals. */
  static String decimals(double value, int decimals) {
    return Double.isFinite(value)
        ? BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString()
        : "not known";
  }

  /** A number as short as it can be: {@code 7} and not {@code 7.0}. */
  static String plain(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? Long.toString((long) value)
        : BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  /** An age, such as {@code 7 days}. */
  static String days(double age) {
    if (Double.isNaN(age)) {
      return "age not known";
    }
    return plain(age) + (age == 1 ? " day" : " days");
  }

  /** An age behind a name, such as {@code at 7 days}, with the blank or comma before it. */
  static String atAge(double age) {
    return (Double.isNaN(age) ? ", " : " at ") + days(age);
  }

  /** An age in a table; handed on empty where it is not known. */
  static Cell ageCell(double age) {
    return Cell.of(Double.isNaN(age) ? "not known" : plain(age), age);
  }

  /** A moment in a zone, whole seconds, with the zone's name. */
  static String moment(Instant instant, ZoneId zone) {
    return MOMENT.format(instant.atZone(zone)) + " " + zone.getId();
  }

  /** The same in whole minutes, without the zone's name. */
  static String minute(Instant instant, ZoneId zone) {
    return MINUTE.format(instant.atZone(zone));
  }

  /** The day of a moment in a zone. */
  static String day(Instant instant, ZoneId zone) {
    return DAY.format(instant.atZone(zone));
  }

  /** Row numbers: the first few of them, or from where to where if none is left out. */
  static String rows(List<Long> rows) {
    if (rows.size() > MOST_ROWS && isRun(rows)) {
      return rows.get(0) + "\u00A0to\u00A0" + rows.get(rows.size() - 1);
    }
    String some =
        rows.stream().limit(MOST_ROWS).map(String::valueOf).collect(Collectors.joining(", "));
    return rows.size() > MOST_ROWS ? some + " and " + (rows.size() - MOST_ROWS) + " more" : some;
  }

  private static boolean isRun(List<Long> rows) {
    return IntStream.range(1, rows.size()).allMatch(i -> rows.get(i) == rows.get(i - 1) + 1);
  }

  /** What stands before the first bracket of a figure's title. */
  static String shortTitle(Figure figure) {
    int bracket = figure.title().indexOf(" (");
    return bracket < 0 ? figure.title() : figure.title().substring(0, bracket);
  }
}
