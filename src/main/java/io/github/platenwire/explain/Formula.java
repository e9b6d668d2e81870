package io.github.platenwire.explain;

import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * A formula with its numbers. Written in each system of units so that whoever puts the printed
 * numbers into the printed formula gets the printed result. Immutable.
 */
final class Formula {
  /** Agreement asked of a formula with its figure: rounding of doubles, and nothing more. */
  private static final double HAIR = 1e-9;

  /** Sums that cancel to nought, in any of the units that figures have. */
  private static final double TINY = 1e-12;

  private final String name;
  private final Map<UnitSystem, Side> sides;

  private Formula(String name, Map<UnitSystem, Side> sides) {
    this.name = name;
    this.sides = sides;
  }

  /** What is computed. */
  @FunctionalInterface
  interface Law {
    double of(double... numbers);
  }

  private record Side(String numbers, double result) {}

  /**
   * A formula that holds in both systems alike.
   *
   * @param name with symbols, such as {@code P / A}
   * @param template the same with {@code {}} for each number, in the order of the terms
   */
  static Formula of(String name, String template, Law law, Term... terms) {
    return of(name, template, template, law, law, terms);
  }

  /** A formula whose constants differ between the systems. */
  static Formula of(
      String name, String template, String inchPound, Law law, Law inchPoundLaw, Term... terms) {
    Map<UnitSystem, Side> sides = new EnumMap<>(UnitSystem.class);
    sides.put(UnitSystem.SI, side(UnitSystem.SI, template, law, terms));
    sides.put(UnitSystem.INCH_POUND, side(UnitSystem.INCH_POUND, inchPound, inchPoundLaw, terms));
    return new Formula(name, sides);
  }

  /**
   * A formula whose numbers have units without a counterpart, written in SI alone; its result is
   * given in both.
   */
  static Formula inSi(String name, String template, Law law, Term... terms) {
    Map<UnitSystem, Side> sides = new EnumMap<>(UnitSystem.class);
    sides.put(UnitSystem.SI, side(UnitSystem.SI, template, law, terms));
    return new Formula(name, sides);
  }

  private static Side side(UnitSystem system, String template, Law law, Term... terms) {
    StringBuilder words = new StringBuilder();
    double[] numbers = new double[terms.length];
    int from = 0;
    for (int i = 0; i < terms.length; i++) {
      int at = template.indexOf("{}", from);
      words.append(template, from, at).append(terms[i].words(system));
      numbers[i] = terms[i].in(system);
      from = at + 2;
    }
    return new Side(words + template.substring(from), law.of(numbers));
  }

  /** What comes out in SI units. */
  double result() {
    return side(UnitSystem.SI).result();
  }

  private Side side(UnitSystem system) {
    Side side = sides.get(system);
    if (side == null) {
      throw new IllegalStateException("a formula has both systems");
    }
    return side;
  }

  /** Whether it gives a figure, in both systems, but for the rounding of doubles. */
  boolean gives(Figure figure) {
    return gives(new Term(figure.exact(), figure.unit(), figure.inchPoundUnit()));
  }

  /** Whether it gives a value, likewise. */
  boolean gives(Term value) {
    return sides.entrySet().stream()
        .allMatch(side -> near(side.getValue().result(), value.in(side.getKey())));
  }

  private static boolean near(double told, double exact) {
    return Math.abs(told - exact) <= HAIR * Math.abs(exact) + TINY;
  }

  /** One line for each system, or one alone where both are the same. */
  List<String> lines(Unit unit, Unit inchPoundUnit, UnitSystem first) {
    List<String> lines = new ArrayList<>();
    if (sides.size() == 1) {
      String numbers = name + " = " + side(UnitSystem.SI).numbers() + " = ";
      return List.of(numbers + FigureWords.both(result(), unit, inchPoundUnit, UnitSystem.SI));
    }
    UnitSystem second = first == UnitSystem.SI ? UnitSystem.INCH_POUND : UnitSystem.SI;
    lines.add(line(first, first == UnitSystem.SI ? unit : inchPoundUnit));
    String other = line(second, second == UnitSystem.SI ? unit : inchPoundUnit);
    if (!other.equals(lines.get(0))) {
      lines.add(other);
    }
    return lines;
  }

  private String line(UnitSystem system, Unit unit) {
    Side side = side(system);
    return name
        + " = "
        + side.numbers()
        + " = "
        + FigureWords.number(side.result())
        + FigureWords.symbol(unit);
  }
}
