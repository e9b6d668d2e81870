package io.github.platenwire.explain;

import io.github.platenwire.method.BreakPosition;
import io.github.platenwire.method.MethodResult;
import io.github.platenwire.method.MethodResult.Figure;
import java.util.List;
import java.util.Optional;

/** Tells where one figure comes from, in numbered steps. Used once; not thread-safe. */
final class FigureStory {
  private final Evidence evidence;
  private final Optional<MethodResult> kept;
  private final Figure figure;
  private final Telling telling;

  /**
   * A figure's story.
   *
   * @param kept what the summary beside the raw file has, if there is one
   */
  FigureStory(Evidence evidence, Optional<MethodResult> kept, Figure figure) {
    this.evidence = evidence;
    this.kept = kept;
    this.figure = figure;
    telling = new Telling(evidence.first());
  }

  private static List<Story> stories(Evidence evidence) {
    return List.of(
        new ZeroStory(evidence),
        new StressStory(evidence),
        new SizeStory(evidence),
        new LengthCorrectionStory(evidence),
        new AgeStory(evidence),
        new BreakStory(evidence),
        new RateStory(evidence),
        new ChordStory(evidence),
        new CrossingStory(evidence),
        new WidthStory(evidence),
        new DepartureStory(evidence),
        new CourseStory(evidence),
        new StiffnessStory(evidence),
        new WorkStory(evidence),
        new WedgeStory(evidence),
        new LogStory(evidence),
        new FrontStory(evidence),
        new AbsorptionStory(evidence));
  }

  List<String> lines() {
    head();
    Optional<Story> story = stories(evidence).stream().filter(one -> one.tells(figure)).findFirst();
    if (story.isPresent()) {
      story.get().tell(figure, telling);
    } else {
      untold();
    }
    rounding();
    kept();
    return telling.lines();
  }

  private void head() {
    telling.head(
        figure.name()
            + " of "
            + evidence.specimen().name()
            + ": "
            + FigureWords.printed(figure, evidence.first()));
    telling.head(figure.title() + ".");
    telling.head(
        "By "
            + evidence.by()
            + ", computed again from "
            + evidence.reduction().test().file().getFileName()
            + besides()
            + ".");
    List<String> differences = evidence.reduction().rowDifferences();
    if (!differences.isEmpty()) {
      telling.head(
          "Caution: the bytes of some rows do not give what stands beside them. "
              + differences.get(0)
              + ".");
    }
    telling.head("");
  }

  /** What else than the raw file enters. */
  private String besides() {
    boolean placed = !evidence.seen().breakPosition().equals(BreakPosition.NOT_RECORDED);
    if (evidence.changes().isEmpty()) {
      return placed ? " and from where the break was seen" : " alone";
    }
    return placed
        ? ", from where the break was seen, and from measurements put right afterwards"
        : " and from measurements put right afterwards";
  }

  /** No story: the rows all the same. */
  private void untold() {
    if (!figure.rows().isEmpty()) {
      new ReadingStory(evidence, figure.rows().get(0)).tell(telling);
    }
    telling.step("Computed by the method: " + evidence.both(figure) + ".");
    telling.noFormula(figure);
  }

  private void rounding() {
    telling.step(
        "Rounding: the exact value "
            + evidence.both(figure)
            + " is printed as "
            + FigureWords.printed(figure, evidence.first())
            + "; each is rounded from the exact value, a half to the even digit"
            + evidence.clause(FigureWords.Topic.ROUNDING)
            + ".");
    FigureWords.roundingLines(evidence.reduction().method().text(), figure)
        .forEach(line -> telling.more("The method's file in the head says: " + line));
    figure
        .uncertainty()
        .ifPresent(
            budget ->
                telling.more(
                    "Expanded uncertainty (k = 2): "
                        + FigureWords.rough(
                            budget.expanded(),
                            figure.unit(),
                            figure.inchPoundUnit(),
                            evidence.first())
                        + "."));
  }

  /** Whether the summary that people hold says the same. */
  private void kept() {
    if (kept.isEmpty()) {
      return;
    }
    Optional<Figure> there = kept.get().figure(figure.name());
    boolean same =
        there.isPresent()
            && Double.doubleToLongBits(there.get().exact())
                == Double.doubleToLongBits(figure.exact())
            && there.get().rounded().equals(figure.rounded())
            && there.get().inchPoundRounded().equals(figure.inchPoundRounded());
    telling.step(
        same
            ? "Kept: the summary beside the raw file has the same figure, digit for digit."
            : "CAUTION: the summary beside the raw file has "
                + there
                    .map(one -> FigureWords.printed(one, evidence.first()))
                    .orElse("no such figure")
                + ", which does not follow from the raw file. See 'platenwire reduce' and"
                + " 'platenwire audit' before anybody relies on it.");
  }
}
