package io.github.platenwire.cli;

import io.github.platenwire.method.MethodResult;
import io.github.platenwire.quantity.BothSystems;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.record.ChannelTally;
import io.github.platenwire.record.Summary;
import io.github.platenwire.terminal.TextTable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What the demo prints at its end: truth beside measured, and where to look next. Not thread-safe.
 */
final class DemoReport {
  private final Face face;
  private final List<DemoResult> results = new ArrayList<>();

  DemoReport(Face face) {
    this.face = face;
  }

  void add(DemoResult result) {
    results.add(result);
    Summary summary = result.summary();
    long readings = summary.channels().stream().mapToLong(ChannelTally::received).sum();
    String strength =
        summary
            .result()
            .figure("strength")
            .map(f -> f.rounded() + " MPa (" + f.inchPoundRounded() + " psi)")
            .orElse("no strength");
    face.line(
        result.specimen()
            + ": "
            + readings
            + " readings, "
            + strength
            + ", "
            + result.file().getFileName());
  }

  /**
   * Prints everything; exit code 1 if a strength is further from its truth than its own uncertainty
   * allows.
   */
  int print() {
    face.line("");
    face.lines(table("strength").lines(face.columns(), face.look()));
    face.line("");
    face.lines(table("peak-load").lines(face.columns(), face.look()));
    face.line("");
    results
        .get(results.size() - 1)
        .summary()
        .companions()
        .ifPresent(words -> face.line("Companions of " + words));
    boolean agree = results.stream().allMatch(DemoReport::agrees);
    face.line(
        agree
            ? "Every strength agrees with its truth within its stated uncertainty (k = 2)."
            : "A strength is further from its truth than its stated uncertainty (k = 2). That should not happen often.");
    return agree ? ExitCode.FINE : ExitCode.NOT_MET;
  }

  private TextTable table(String figure) {
    TextTable table =
        TextTable.empty()
            .words(figure.replace('-', ' '))
            .numbers("true")
            .numbers("measured")
            .numbers("off by");
    for (DemoResult result : results) {
      boolean stress = figure.equals("strength");
      row(
          table,
          result,
          figure,
          stress ? result.truth().strengthMegapascals() : result.truth().peakNewtons(),
          stress ? Quantity.STRESS : Quantity.FORCE);
    }
    return table;
  }

  private static void row(
      TextTable table, DemoResult result, String figure, double truth, Quantity quantity) {
    double measured = measured(result, figure);
    table.row(
        result.specimen(),
        BothSystems.words(truth, quantity, UnitSystem.SI),
        BothSystems.words(measured, quantity, UnitSystem.SI),
        String.format(Locale.ROOT, "%+.2f %%", (measured / truth - 1) * 100));
  }

  private static double measured(DemoResult result, String name) {
    MethodResult measured = result.summary().result();
    return measured
        .figure(name)
        .map(figure -> figure.unit().toBase(figure.exact()))
        .orElse(Double.NaN);
  }

  private static boolean agrees(DemoResult result) {
    double truth = result.truth().strengthMegapascals();
    return result
        .summary()
        .result()
        .figure("strength")
        .filter(figure -> figure.uncertainty().isPresent())
        .filter(f -> Math.abs(f.exact() - truth) <= f.uncertainty().get().expanded())
        .isPresent();
  }
}
