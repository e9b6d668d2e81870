package io.github.platenwire.study;

import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.record.StoredSummary;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One closed test of a study, by the newest version of its summary. Immutable.
 *
 * @param record the raw file, relative to the lab folder, with slashes
 * @param summaryFile the summary, relative to the lab folder, with slashes
 * @param summary what it tells
 */
public record ClosedTest(String record, String summaryFile, StoredSummary summary) {
  private static final double SECONDS_PER_DAY = 86_400;
  private static final String BREAK = "break";

  /** The specimen's name. */
  public String specimen() {
    return summary.specimen().name();
  }

  /** The specimen's series. */
  public String series() {
    return summary.specimen().series();
  }

  /**
   * The age at which it was to be broken, days; where none is planned, the true age in whole days
   * (at least one); empty when neither is known.
   */
  public OptionalDouble ageDays() {
    OptionalDouble planned = summary.specimen().plannedAgeDays();
    OptionalDouble known = trueAgeDays();
    return planned.isEmpty() && known.isPresent()
        ? OptionalDouble.of(Math.max(1, Math.rint(known.getAsDouble())))
        : planned;
  }

  /** The true time between casting and test, days; empty when the cast time is not known. */
  public OptionalDouble trueAgeDays() {
    if (summary.specimen().cast().isEmpty()) {
      return OptionalDouble.empty();
    }
    Instant cast = summary.specimen().cast().get().atZone(summary.zone()).toInstant();
    return OptionalDouble.of(Duration.between(cast, summary.start()).toSeconds() / SECONDS_PER_DAY);
  }

  /**
   * A figure of the test that may stand in a comparison: a finite one, and a strength only when the
   * specimen broke.
   */
  public Optional<Figure> figure(String name) {
    boolean broken = summary.raw().reason().equals(BREAK);
    return summary
        .result()
        .figure(name)
        .filter(figure -> Double.isFinite(figure.exact()))
        .filter(figure -> broken || !name.startsWith("strength"));
  }

  /**
   * Whether the specimen has been tested: it broke, its crack was opened, or water was followed
   * into it. A modulus leaves it whole, and it counts only where the plan asks for one.
   *
   * @param planned the method that the plan names for the series, if any
   */
  boolean isDone(Optional<String> planned) {
    boolean front = figure("rate-in-time").isPresent() || figure("absorption").isPresent();
    boolean modulus =
        figure("modulus").isPresent() && planned.equals(Optional.of(summary.method().name()));
    return summary.raw().reason().equals(BREAK)
        || summary.result().curve().isPresent()
        || front
        || modulus;
  }
}
