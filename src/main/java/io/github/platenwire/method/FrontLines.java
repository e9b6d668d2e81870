package io.github.platenwire.method;

import java.util.List;
import java.util.Optional;

/** The lines through what was read of a front, where enough was. Immutable. */
record FrontLines(FrontAdvance advance) {
  private static final int FEWEST = 3;

  /** Empty with fewer than three readings, or fewer than two different times. */
  static Optional<FrontLines> of(List<FrontPart.Reading> readings) {
    double[] seconds = readings.stream().mapToDouble(FrontPart.Reading::seconds).toArray();
    boolean differ = readings.stream().anyMatch(reading -> reading.seconds() != seconds[0]);
    if (readings.size() < FEWEST || !differ) {
      return Optional.empty();
    }
    double[] depths = readings.stream().mapToDouble(FrontPart.Reading::base).toArray();
    return Optional.of(new FrontLines(FrontAdvance.of(seconds, depths)));
  }
}
