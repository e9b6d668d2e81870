package io.github.platenwire.method;

import io.github.platenwire.quantity.UncertaintyBudget;
import io.github.platenwire.quantity.Unit;
import java.util.List;
import java.util.Optional;

/**
 * What a test came to. Immutable.
 *
 * @param figures the results, the most important first
 * @param checks what the method asked for and whether it was met
 * @param departures departures from the method, in whole sentences
 * @param suspects readings left out as impossible, by number in the raw file
 * @param curve width against load on first loading, where a crack was followed
 */
public record MethodResult(
    List<Figure> figures,
    List<Check> checks,
    List<String> departures,
    List<Long> suspects,
    Optional<VirginTable> curve) {
  /** Makes the lists immutable. */
  public MethodResult {
    figures = List.copyOf(figures);
    checks = List.copyOf(checks);
    departures = List.copyOf(departures);
    suspects = List.copyOf(suspects);
  }

  /** A result without a curve. */
  public MethodResult(
      List<Figure> figures, List<Check> checks, List<String> departures, List<Long> suspects) {
    this(figures, checks, departures, suspects, Optional.empty());
  }

  /** The same result with other departures. */
  public MethodResult withDepartures(List<String> others) {
    return new MethodResult(figures, checks, others, suspects, curve);
  }

  /** The figure of a name, if the test came to one. */
  public Optional<Figure> figure(String name) {
    return figures.stream().filter(figure -> figure.name().equals(name)).findFirst();
  }

  /**
   * One result.
   *
   * @param name a short fixed name, such as {@code strength}
   * @param title for a person, such as {@code Compressive strength}
   * @param exact the value before rounding, in {@code unit}
   * @param unit SI unit of {@code exact} and {@code rounded}
   * @param rounded rounded by the method's rule, as printed
   * @param inchPoundUnit the unit shown beside it; the same unit where the trade has no other
   * @param inchPoundRounded rounded from the exact value in that unit, as printed
   * @param uncertainty its budget in {@code unit}, where one can be given
   * @param samplingBound how far the true value can lie above for want of a reading at that moment,
   *     in {@code unit}
   * @param rows numbers of the raw rows it rests on
   */
  public record Figure(
      String name,
      String title,
      double exact,
      Unit unit,
      String rounded,
      Unit inchPoundUnit,
      String inchPoundRounded,
      Optional<UncertaintyBudget> uncertainty,
      Optional<Double> samplingBound,
      List<Long> rows) {
    /** Makes the list immutable. */
    public Figure {
      rows = List.copyOf(rows);
    }
  }

  /**
   * One thing the method asked for.
   *
   * @param name a short fixed name, such as {@code rate}
   * @param met whether it was met
   * @param words what was seen, with figures in both systems of units
   */
  public record Check(String name, boolean met, String words) {}
}
