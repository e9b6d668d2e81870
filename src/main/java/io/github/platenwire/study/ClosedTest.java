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

  /** Whether the specimen is used up: it broke, or its crack was opened. */
  boolean isDone() {
    return summary.raw().reason().equals(BREAK) || summary.result().curve().isPresent();
  }
}
