package io.github.platenwire.explain;

import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import java.util.ArrayList;
import java.util.List;

/**
 * The steps of an explanation as they are told, numbered. A formula is told as leading to a figure
 * only if its numbers give that figure: an explanation that does not add up is worse than none. Not
 * thread-safe.
 */
final class Telling {
  private static final String INDENT = "     ";

  private final UnitSystem first;
  private final List<String> lines = new ArrayList<>();
  private int steps;

  Telling(UnitSystem first) {
    this.first = first;
  }

  void head(String text) {
    lines.add(text);
  }

  /** The next numbered step. */
  void step(String text) {
    steps++;
    lines.add(steps < 10 ? steps + ".   " + text : steps + ".  " + text);
  }

  /** More of the step. */
  void more(String text) {
    lines.add(INDENT + text);
  }

  /** Numbers that lead on to something else. */
  void formula(Formula formula, Unit unit, Unit inchPoundUnit) {
    formula.lines(unit, inchPoundUnit, first).forEach(line -> more("  " + line));
  }

  /**
   * The formula that leads to a figure.
   *
   * @return whether it was told, since its numbers give the figure
   */
  boolean formula(Formula formula, Figure figure) {
    if (!formula.gives(figure)) {
      noFormula(figure);
      return false;
    }
    formula(formula, figure.unit(), figure.inchPoundUnit());
    return true;
  }

  /** The formula that leads to a value on the way to a figure, told only if it gives that value. */
  boolean formula(Formula formula, Term value) {
    if (!formula.gives(value)) {
      more(
          "The rows above do not lead to it by a formula that can be told here; it was "
              + value.both(first)
              + ".");
      return false;
    }
    formula(formula, value.unit(), value.inchPoundUnit());
    return true;
  }

  /** Says that no formula is told. */
  void noFormula(Figure figure) {
    more(
        "The numbers above do not lead to it by a formula that can be told here; the method's own"
            + " program came to "
            + FigureWords.both(figure.exact(), figure.unit(), figure.inchPoundUnit(), first)
            + ".");
  }

  UnitSystem first() {
    return first;
  }

  List<String> lines() {
    return List.copyOf(lines);
  }
}
