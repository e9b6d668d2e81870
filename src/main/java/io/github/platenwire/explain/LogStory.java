package io.github.platenwire.explain;

import io.github.platenwire.method.FrontPart;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import java.util.List;

/** Tells of what a log of depths or masses has without any line: how many, the last. Immutable. */
final class LogStory implements Story {
  private final Evidence evidence;
  private final List<FrontPart.Reading> readings;

  LogStory(Evidence evidence) {
    this.evidence = evidence;
    readings = evidence.trail().readings();
  }

  @Override
  public boolean tells(Figure figure) {
    return !readings.isEmpty()
        && switch (figure.name()) {
          case "readings", "last-depth", "last-mass", "last-time" -> true;
          default -> false;
        };
  }

  @Override
  public void tell(Figure figure, Telling telling) {
    FrontPart.Reading last = readings.get(readings.size() - 1);
    if (figure.name().equals("last-depth") || figure.name().equals("last-mass")) {
      ReadingStory story = new ReadingStory(evidence, last.seq());
      story.tell(telling);
      story.neighbours("Chosen: of all that counts it was read last.", telling);
      return;
    }
    new ReadingsList(evidence).tell(readings, telling);
    if (figure.name().equals("readings")) {
      telling.step("Counted: " + readings.size() + ".");
      return;
    }
    telling.step("Time of the last since the first, in minutes:");
    telling.formula(
        Formula.of(
            "seconds / 60", "{} / 60", n -> n[0] / 60, Term.same(last.seconds(), Unit.SECOND)),
        figure);
  }
}
