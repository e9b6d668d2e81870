package io.github.platenwire.method;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How old a specimen is at its test, and how that stands to its planned age. Immutable.
 *
 * @param standing how it stands
 * @param days the age; empty if it is not known
 * @param words the same for a person
 */
record SpecimenAge(Standing standing, OptionalDouble days, String words) {
  private static final double SECONDS_PER_DAY = 86_400;
  private static final double HOURS_PER_DAY = 24;

  enum Standing {
    WITHIN,
    OUTSIDE,
    NO_TOLERANCE,
    NOT_PLANNED,
    NOT_KNOWN,
    BEFORE_CAST
  }

  /** The true time between casting and test, whatever summer time did to the clocks. */
  static SpecimenAge of(
      List<StrengthRules.AgeTolerance> ages,
      BigDecimal step,
      Specimen specimen,
      TestSetting setting) {
    if (specimen.cast().isEmpty()) {
      return new SpecimenAge(
          Standing.NOT_KNOWN,
          OptionalDouble.empty(),
          "when the specimen was cast is not given, so its age is not known");
    }
    Instant cast = specimen.cast().get().atZone(setting.zone()).toInstant();
    double days = Duration.between(cast, setting.start()).toMillis() / 1000.0 / SECONDS_PER_DAY;
    String age = BothUnits.rounded(days, step) + " d";
    if (days < 0) {
      return new SpecimenAge(
          Standing.BEFORE_CAST,
          OptionalDouble.of(days),
          "the cast time " + specimen.cast().get() + " lies after the start of the test");
    }
    return judge(ages, specimen.plannedAgeDays(), days, age);
  }

  private static SpecimenAge judge(
      List<StrengthRules.AgeTolerance> ages, OptionalDouble planned, double days, String age) {
    OptionalDouble known = OptionalDouble.of(days);
    if (planned.isEmpty()) {
      return new SpecimenAge(
          Standing.NOT_PLANNED,
          known,
          "the age is " + age + ", but no planned age is given to hold it against");
    }
    double asked = planned.getAsDouble();
    String seen = "the age is " + age + ", planned were " + BothUnits.plain(asked) + " d";
    Optional<StrengthRules.AgeTolerance> tolerance =
        ages.stream().filter(candidate -> candidate.days() == asked).findFirst();
    if (tolerance.isEmpty()) {
      return new SpecimenAge(
          Standing.NO_TOLERANCE, known, seen + "; no tolerance is printed for that age");
    }
    double hours = tolerance.get().hours();
    boolean within = Math.abs(days - asked) * HOURS_PER_DAY <= hours + 1e-9;
    String limit = "the tolerance of +/- " + BothUnits.plain(hours) + " h";
    return new SpecimenAge(
        within ? Standing.WITHIN : Standing.OUTSIDE,
        known,
        seen + (within ? ", within " : ", outside ") + limit);
  }
}
