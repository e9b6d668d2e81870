package io.github.platenwire.study;

import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.UncertaintyBudget;
import io.github.platenwire.record.StoredSummary;
import io.github.platenwire.statistics.Interval;
import io.github.platenwire.statistics.StudentT;
import io.github.platenwire.statistics.Values;
import io.github.platenwire.study.CalibratedRatio.Frames;
import io.github.platenwire.study.CalibratedRatio.Systematic;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What the values of one set have in common through the frame that measured them: which frame under
 * which certificates, and how uncertain its scale is. Immutable.
 *
 * @param frames rig and certificates of each test, in words; one entry where all are the same
 * @param certified whether every channel of every test names a certificate
 * @param systematic relative standard uncertainties that no number of specimens reduces
 */
record SharedCalibration(Set<String> frames, boolean certified, Systematic systematic) {
  /** How the budgets of the methods name what belongs to the frame. */
  private static final Pattern OF_THE_FRAME =
      Pattern.compile("calibration certificate|no certificate");

  /** How they name what all specimens of one shape share and another shape does not. */
  private static final Pattern OF_THE_SHAPE = Pattern.compile("^correction for length");

  /** What a calibration's words say beside the certificate: whether it was due on the day. */
  private static final Pattern STANDING = Pattern.compile("(, (no )?due |, was due |: dated ).*$");

  private static final String CERTIFICATE = "certificate ";

  SharedCalibration {
    frames = Set.copyOf(frames);
  }

  /** Of the tests of one set, for one of their figures. */
  static SharedCalibration of(List<ClosedTest> tests, String figure) {
    double shared = 0;
    double own = 0;
    for (ClosedTest test : tests) {
      @Nullable Figure found = test.figure(figure).orElse(null);
      if (found != null && found.exact() != 0 && found.uncertainty().isPresent()) {
        UncertaintyBudget budget = found.uncertainty().get();
        shared = Math.max(shared, relative(budget, OF_THE_FRAME.asPredicate(), found.exact()));
        own = Math.max(own, relative(budget, OF_THE_SHAPE.asPredicate(), found.exact()));
      }
    }
    return new SharedCalibration(
        tests.stream().map(SharedCalibration::frame).collect(Collectors.toSet()),
        tests.stream()
            .flatMap(test -> test.summary().channels().stream())
            .allMatch(channel -> channel.calibration().startsWith(CERTIFICATE)),
        new Systematic(shared, own));
  }

  /** Standard uncertainty of a figure from the lines of its budget that are not the frame's. */
  static double withoutFrame(UncertaintyBudget budget, Predicate<String> lines) {
    return rootOfSquares(budget, OF_THE_FRAME.asPredicate().negate().and(lines));
  }

  private static double relative(UncertaintyBudget budget, Predicate<String> lines, double value) {
    return rootOfSquares(budget, lines) / Math.abs(value);
  }

  private static double rootOfSquares(UncertaintyBudget budget, Predicate<String> lines) {
    return Math.sqrt(
        budget.lines().stream()
            .filter(line -> lines.test(line.source()))
            .mapToDouble(line -> line.contribution() * line.contribution())
            .sum());
  }

  private static String frame(ClosedTest test) {
    return test.summary().rig()
        + test.summary().channels().stream()
            .map(SharedCalibration::certificate)
            .collect(Collectors.joining("; ", " with ", ""));
  }

  private static String certificate(StoredSummary.StoredChannel channel) {
    return channel.name() + ": " + STANDING.matcher(channel.calibration()).replaceFirst("");
  }

  /** Whether a common error cancels between this set and another. */
  Frames against(SharedCalibration other) {
    if (!certified || !other.certified) {
      return Frames.NOT_KNOWN;
    }
    return frames.size() == 1 && frames.equals(other.frames) ? Frames.SAME : Frames.DIFFERENT;
  }

  /**
   * The interval of a difference with calibration in it: a common relative error of one frame
   * stretches the difference as a whole, errors of two frames add in squares (JCGM 100).
   */
  Interval ofDifference(
      Interval statistical, double ownMean, double otherMean, SharedCalibration other) {
    double squares =
        square(systematic.own() * ownMean) + square(other.systematic.own() * otherMean);
    if (against(other) == Frames.SAME) {
      double common = Math.max(systematic.shared(), other.systematic.shared());
      squares += square(common * (ownMean - otherMean));
    } else {
      squares +=
          square(systematic.shared() * ownMean) + square(other.systematic.shared() * otherMean);
    }
    double reach = StudentT.twoSided(Values.LEVEL, Double.POSITIVE_INFINITY) * Math.sqrt(squares);
    double centre = ownMean - otherMean;
    return Interval.around(centre, Math.hypot(statistical.halfWidth(), reach));
  }

  private static double square(double value) {
    return value * value;
  }
}
