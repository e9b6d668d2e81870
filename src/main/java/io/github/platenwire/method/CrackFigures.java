package io.github.platenwire.method;

import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.UncertaintyBudget;
import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Writes figures of a crack in both systems of units. Not thread-safe. */
final class CrackFigures {
  private final CrackRules.Rounding rounding;
  private final List<Figure> list = new ArrayList<>();

  CrackFigures(CrackRules.Rounding rounding) {
    this.rounding = rounding;
  }

  List<Figure> list() {
    return list;
  }

  void load(
      String name,
      String title,
      double newtons,
      Optional<UncertaintyBudget> budget,
      List<Long> rows) {
    add(name, title, newtons, Unit.KILONEWTON, Unit.POUND_FORCE, rounding.load(), budget, rows);
  }

  void width(
      String name,
      String title,
      double millimetres,
      Optional<UncertaintyBudget> budget,
      List<Long> rows) {
    add(name, title, millimetres, Unit.MILLIMETRE, Unit.INCH, rounding.width(), budget, rows);
  }

  void stiffness(
      String name,
      String title,
      double newtonsPerMillimetre,
      UncertaintyBudget budget,
      List<Long> rows) {
    add(
        name,
        title,
        newtonsPerMillimetre,
        Unit.KILONEWTON_PER_MILLIMETRE,
        Unit.POUND_FORCE_PER_INCH,
        rounding.stiffness(),
        Optional.of(budget),
        rows);
  }

  void work(double joules, UncertaintyBudget budget, List<Long> rows) {
    add(
        "work",
        "Work done on opening the crack",
        joules,
        Unit.JOULE,
        Unit.INCH_POUND_FORCE,
        rounding.work(),
        Optional.of(budget),
        rows);
  }

  void stress(
      String name, String title, double megapascals, UncertaintyBudget budget, List<Long> rows) {
    add(
        name,
        title,
        megapascals,
        Unit.MEGAPASCAL,
        Unit.PSI,
        rounding.stress(),
        Optional.of(budget),
        rows);
  }

  private void add(
      String name,
      String title,
      double base,
      Unit si,
      Unit inchPound,
      Steps steps,
      Optional<UncertaintyBudget> budget,
      List<Long> rows) {
    double exact = si.fromBase(base);
    list.add(
        new Figure(
            name,
            title,
            exact,
            si,
            BothUnits.rounded(exact, steps.si()),
            inchPound,
            BothUnits.rounded(inchPound.fromBase(base), steps.inchPound()),
            budget,
            Optional.empty(),
            rows));
  }

  /** Rows that are there, each once. */
  static List<Long> rows(long... seqs) {
    Set<Long> rows = new LinkedHashSet<>();
    for (long seq : seqs) {
      rows.add(seq);
    }
    rows.remove(0L);
    return List.copyOf(rows);
  }
}
