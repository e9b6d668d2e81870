package io.github.platenwire.method;

import java.util.List;
import java.util.Optional;

/**
 * What a test shows of its crack at one moment. Immutable. Millimetres and newtons; NaN while
 * unknown.
 *
 * @param micros moment of the row that it rests on, microseconds; behind the newest reading by what
 *     alignment and averaging take
 * @param gauges every gauge, lost ones too
 * @param openingMillimetres mean opening over the gauges that count, elastic stretch in it
 * @param widthMillimetres mean width over the gauges that count, elastic stretch taken off
 * @param rotationMillimetres opening on one face less that on the other
 * @param firstCrackByDeparture load at which the opening left its initial line, once found
 * @param firstCrackBySmallWidth greatest load up to the small opening, once found
 * @param next the next threshold, while there is one
 * @param firstLoading whether the load is where it has not been before
 * @param state unloading, holding and the like, in words; empty while there is nothing to say
 * @param ghost the difference to an earlier specimen, where it can be told
 */
public record CrackPart(
    long micros,
    List<Gauge> gauges,
    double openingMillimetres,
    double widthMillimetres,
    double rotationMillimetres,
    Optional<Double> firstCrackByDeparture,
    Optional<Double> firstCrackBySmallWidth,
    Optional<Next> next,
    boolean firstLoading,
    String state,
    Optional<Beside> ghost) {
  /** Makes the list immutable. */
  public CrackPart {
    gauges = List.copyOf(gauges);
  }

  /**
   * One gauge.
   *
   * @param name its channel
   * @param openingMillimetres its reading less its zero
   * @param fault why the mean does not rest on it, such as {@code stuck}; empty while it does
   */
  public record Gauge(String name, double openingMillimetres, Optional<String> fault) {
    /** Whether the mean rests on it. */
    public boolean counts() {
      return fault.isEmpty();
    }
  }

  /**
   * The lowest threshold that was not crossed.
   *
   * @param millimetres its width
   * @param meaning what the width means
   * @param toGoMillimetres how far off it is
   */
  public record Next(double millimetres, String meaning, double toGoMillimetres) {}

  /**
   * A comparison at this load.
   *
   * @param specimen the earlier specimen
   * @param widerMillimetres this crack's width less the earlier one's
   */
  public record Beside(String specimen, double widerMillimetres) {}

  /** The names of the gauges that the mean rests on, with commas between; {@code none}. */
  public String restsOn() {
    List<String> names = gauges.stream().filter(Gauge::counts).map(Gauge::name).toList();
    return names.isEmpty() ? "none" : String.join(", ", names);
  }

  /** The same beside an earlier specimen; on first loading only, for that is what it has. */
  CrackPart beside(GhostCurve curve, double newtons) {
    double wider = widthMillimetres - curve.widthAt(newtons);
    return new CrackPart(
        micros,
        gauges,
        openingMillimetres,
        widthMillimetres,
        rotationMillimetres,
        firstCrackByDeparture,
        firstCrackBySmallWidth,
        next,
        firstLoading,
        state,
        firstLoading && Double.isFinite(wider)
            ? Optional.of(new Beside(curve.specimen(), wider))
            : Optional.empty());
  }
}
