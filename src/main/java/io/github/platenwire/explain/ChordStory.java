package io.github.platenwire.explain;

import io.github.platenwire.live.ChordCycle;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Tells how a modulus or a Poisson's ratio comes out of the loading cycles (ASTM C469). Immutable.
 */
final class ChordStory implements Story {
  private static final Pattern OF_CYCLE =
      Pattern.compile("(modulus|poisson|stress-low|stress-high|strain-high)-cycle-([0-9]+)");
  private static final int FIRST_COUNTED = 2;

  private final Evidence evidence;

  ChordStory(Evidence evidence) {
    this.evidence = evidence;
  }

  @Override
  public boolean tells(Figure figure) {
    return evidence.figure("area").isPresent()
        && (isMean(figure) || OF_CYCLE.matcher(figure.name()).matches())
        && !cycles(figure).isEmpty();
  }

  private static boolean isMean(Figure figure) {
    return figure.name().equals("modulus") || figure.name().equals("poisson");
  }

  private List<ChordCycle> cycles(Figure figure) {
    Matcher one = OF_CYCLE.matcher(figure.name());
    int asked = one.matches() ? Integer.parseInt(one.group(2)) : 0;
    return evidence.trail().cycles().stream()
        .filter(cycle -> asked == 0 ? cycle.number() >= FIRST_COUNTED : cycle.number() == asked)
        .toList();
  }

  @Override
  public void tell(Figure figure, Telling telling) {
    List<ChordCycle> cycles = cycles(figure);
    long deciding =
        figure.name().startsWith("stress-low")
            ? cycles.get(0).first().lastSeq()
            : cycles.get(0).second().lastSeq();
    new StrainRowStory(evidence, deciding).tell(telling);
    evidence.figure("zero").ifPresent(zero -> new ZeroStory(evidence).onTheWay(zero, telling));
    SizeStory sizes = new SizeStory(evidence);
    sizes.measured(telling);
    evidence.figure("area").ifPresent(area -> sizes.areaOnTheWay(area, telling));
    for (ChordCycle cycle : cycles) {
      tell(cycle, figure, telling);
    }
    if (isMean(figure)) {
      mean(cycles, figure, telling);
    }
  }

  private void tell(ChordCycle cycle, Figure figure, Telling telling) {
    ChordMarks marks = new ChordMarks(evidence, cycle);
    marks.zero(telling);
    if (!figure.name().startsWith("strain-high")) {
      marks.first(telling);
    }
    if (!figure.name().startsWith("stress-low")) {
      marks.second(telling);
    }
    if (figure.name().startsWith("modulus")) {
      chord(cycle, telling);
    } else if (figure.name().startsWith("poisson")) {
      widening(cycle, telling);
    }
  }

  private void chord(ChordCycle cycle, Telling telling) {
    telling.step(
        "Chord of cycle "
            + cycle.number()
            + ": (S2 - S1) / (e2 - e1)"
            + evidence.clause(FigureWords.Topic.STRESS)
            + ", one µm/m being a millionth:");
    telling.formula(
        Formula.of(
            "(S2 - S1) / (e2 - e1)",
            "({} - {}) / (({} - {}) / 1000000)",
            n -> (n[0] - n[1]) / ((n[2] - n[3]) / 1e6),
            stress("stress-high", cycle),
            stress("stress-low", cycle),
            strain(cycle.second().strain()),
            strain(cycle.first().strain())),
        named("modulus", cycle));
  }

  private void widening(ChordCycle cycle, Telling telling) {
    telling.step(
        "Poisson's ratio of cycle "
            + cycle.number()
            + ": widening over shortening along the chord, from mark to mark:");
    telling.formula(
        Formula.of(
            "(t2 - t1) / (e2 - e1)",
            "({} - {}) / ({} - {})",
            n -> (n[0] - n[1]) / (n[2] - n[3]),
            strain(cycle.second().across()),
            strain(cycle.first().across()),
            strain(cycle.second().strain()),
            strain(cycle.first().strain())),
        named("poisson", cycle));
  }

  private void mean(List<ChordCycle> cycles, Figure figure, Telling telling) {
    telling.step(
        "Mean of "
            + (cycles.size() == 1 ? "the one cycle" : "the " + cycles.size() + " cycles")
            + " after the first, which seats the gauges:");
    List<Term> terms = cycles.stream().map(cycle -> term(named(figure.name(), cycle))).toList();
    String places = terms.stream().map(term -> "{}").collect(Collectors.joining(" + "));
    telling.formula(
        Formula.of(
            "mean",
            "(" + places + ") / " + terms.size(),
            n -> java.util.Arrays.stream(n).sum() / n.length,
            terms.toArray(Term[]::new)),
        figure);
  }

  private Term stress(String name, ChordCycle cycle) {
    return term(named(name, cycle));
  }

  private static Term term(Figure figure) {
    return new Term(figure.exact(), figure.unit(), figure.inchPoundUnit());
  }

  private static Term strain(double strain) {
    return Term.same(Unit.MICROSTRAIN.fromBase(strain), Unit.MICROSTRAIN);
  }

  private Figure named(String name, ChordCycle cycle) {
    return evidence.figure(name + "-cycle-" + cycle.number()).orElseThrow();
  }
}
