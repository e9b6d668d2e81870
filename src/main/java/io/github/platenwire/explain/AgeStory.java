package io.github.platenwire.explain;

import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.RawHeader;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;

/** Tells of the age: the true time between casting and test. Immutable. */
final class AgeStory implements Story {
  private static final double SECONDS_PER_DAY = 86_400;

  private final Evidence evidence;

  AgeStory(Evidence evidence) {
    this.evidence = evidence;
  }

  @Override
  public boolean tells(Figure figure) {
    return figure.name().equals("age") && evidence.specimen().cast().isPresent();
  }

  @Override
  public void tell(Figure age, Telling telling) {
    RawHeader header = evidence.header();
    LocalDateTime cast = header.specimen().cast().orElseThrow();
    Instant castInstant = cast.atZone(header.zone()).toInstant();
    telling.step(
        "Cast, as the specimens' table has it: "
            + cast
            + " in the lab's time zone "
            + header.zone()
            + ", which is "
            + castInstant
            + ".");
    telling.step("Test: the file's clock stood at zero on " + header.start() + ".");
    telling.step("The time between them, whatever summer time did to the clocks:");
    double seconds = Duration.between(castInstant, header.start()).toMillis() / 1000.0;
    telling.formula(
        Formula.of(
            "seconds / (24 x 60 x 60)",
            "{} / " + FigureWords.number(SECONDS_PER_DAY),
            n -> n[0] / SECONDS_PER_DAY,
            Term.same(seconds, Unit.SECOND)),
        age);
  }
}
