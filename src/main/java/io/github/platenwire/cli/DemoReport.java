package io.github.platenwire.cli;

import io.github.platenwire.method.MethodResult;
import io.github.platenwire.quantity.BothSystems;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.record.ChannelTally;
import io.github.platenwire.record.Summary;
import io.github.platenwire.terminal.TextTable;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

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
    face.line(" " + result.specimen().name() + ": " + strength + " from " + readings + " readings");
  }

  /**
   * Prints everything; exit code 1 if a strength is further from its truth than its own uncertainty
   * allows.
   */
  int print() {
    face.line("");
    face.lines(table().lines(face.columns(), face.look()));
    face.line("");
    lastOfEachSet().stream()
        .flatMap(result -> result.summary().companions().stream())
        .forEach(face::line);
    face.line("");
    results
        .get(results.size() - 1)
        .line()
        .ifPresent(
            line ->
                face.line(
                    "Register "
                        + line.rig()
                        + " has "
                        + line.number()
                        + " lines, one for each test; its witness now is "
                        + line.witness()
                        + "."));
    boolean agree = results.stream().allMatch(DemoReport::agrees);
    face.line(
        agree
            ? "Every strength agrees with its truth within its stated uncertainty (k = 2)."
            : "A strength is further from its truth than its stated uncertainty (k = 2). That should not happen often.");
    return agree ? ExitCode.FINE : ExitCode.NOT_MET;
  }

  /** The summary that closes a set tells how all of its companions stand. */
  private Collection<DemoResult> lastOfEachSet() {
    Map<String, DemoResult> last = new LinkedHashMap<>();
    results.forEach(
        result -> last.put(result.specimen().series() + result.specimen().ageDays(), result));
    return last.values();
  }

  private TextTable table() {
    TextTable table =
        TextTable.empty()
            .words("strength")
            .numbers("true")
            .numbers("measured")
            .numbers("off by")
            .numbers("peak load");
    for (DemoResult result : results) {
      double strength = measured(result, "strength");
      table.row(
          result.specimen().name(),
          BothSystems.words(result.truth().strengthMegapascals(), Quantity.STRESS, UnitSystem.SI),
          BothSystems.words(strength, Quantity.STRESS, UnitSystem.SI),
          off(strength, result.truth().strengthMegapascals()),
          off(measured(result, "peak-load"), result.truth().peakNewtons()));
    }
    return table;
  }

  private static String off(double measured, double truth) {
    return String.format(Locale.ROOT, "%+.2f %%", (measured / truth - 1) * 100);
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
