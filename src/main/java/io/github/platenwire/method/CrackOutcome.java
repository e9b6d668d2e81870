package io.github.platenwire.method;

import io.github.platenwire.live.CrackResult;
import io.github.platenwire.live.CrackTracker;
import io.github.platenwire.live.FirstCrack;
import io.github.platenwire.live.Stiffness;
import io.github.platenwire.live.Thresholds;
import io.github.platenwire.live.WidthAtLoad;
import io.github.platenwire.live.ZeroLevel;
import io.github.platenwire.quantity.UncertaintyBudget;
import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The figures of one beam, out of what was followed. Used once; not thread-safe. */
final class CrackOutcome {
  private static final int MOST_POINTS = 400;

  private final CrackRules rules;
  private final Specimen specimen;
  private final TestSetting setting;
  private final List<Method.Objection> objections;
  private final LoadChannel load;
  private final List<GaugeChannel> gauges;
  private final CrackBudget budget;
  private final CrackFigures figures;
  private final List<String> withoutUncertainty = new ArrayList<>();

  CrackOutcome(
      CrackRules rules,
      Specimen specimen,
      TestSetting setting,
      List<Method.Objection> objections,
      LoadChannel load,
      List<GaugeChannel> gauges) {
    this.rules = rules;
    this.specimen = specimen;
    this.setting = setting;
    this.objections = objections;
    this.load = load;
    this.gauges = gauges;
    budget = new CrackBudget(rules, load, gauges);
    figures = new CrackFigures(rules.rounding());
  }

  MethodResult result(
      CrackTracker tracker,
      OpeningRates rates,
      FallingSlopes slopes,
      CrackFaults faults,
      Trail trail) {
    CrackResult result =
        tracker.result(rules.asked().stream().map(CrackRules.Asked::newtons).toList());
    trail.crack(result);
    rules
        .notch()
        .ifPresent(
            notch -> new NotchedBeamFigures(notch, specimen, budget, figures).add(result, slopes));
    result.crossings().forEach(crossing -> addCrossing(crossing, slopes));
    addWidths(result);
    addFirstCracks(result.firstCrack());
    addPeak(result);
    addStiffness(result.stiffness());
    new CrackCycles(rules, budget, figures).add(result);
    addWork(result);
    addZeros(result);
    CrackChecks checks = new CrackChecks(rules, setting, objections, load, gauges);
    return new MethodResult(
        figures.list(),
        checks.checks(result, rates, faults),
        departures(checks, result),
        faults.suspects(),
        curve(result));
  }

  /** What the checks found, and of which loads no uncertainty can be given, and why. */
  private List<String> departures(CrackChecks checks, CrackResult result) {
    List<String> departures = new ArrayList<>(checks.departures());
    if (!withoutUncertainty.isEmpty()) {
      boolean line = Double.isFinite(result.stiffness().before());
      departures.add(
          "No uncertainty is given of "
              + String.join(", ", withoutUncertainty)
              + ": "
              + (line
                  ? "the crack did not open with rising load there, so there is no slope by which an"
                      + " error of width becomes one of load."
                  : "too few readings lie on the line before cracking to tell the noise of the"
                      + " gauges and the stretch that is taken off."));
    }
    return departures;
  }

  private void addCrossing(Thresholds.Crossing crossing, FallingSlopes slopes) {
    double width = crossing.threshold().millimetres();
    CrackRules.Threshold threshold =
        rules.thresholds().stream().filter(t -> t.millimetres() == width).findFirst().orElseThrow();
    double uncertainty = crossing.uncertaintyNewtons();
    if (!Double.isFinite(uncertainty)) {
      withoutUncertainty.add("the load at a crack of " + BothUnits.fixed(width, 2) + " mm");
    }
    figures.load(
        "load-at-" + BothUnits.fixed(width, 2) + "-mm",
        "Load at a crack of "
            + BothUnits.fixed(width, 2)
            + " mm ("
            + BothUnits.fixed(Unit.INCH.fromBase(width), 4)
            + " in; "
            + threshold.meaning()
            + "; "
            + threshold.source()
            + ")"
            + (crossing.interpolated() ? "" : ", an upper bound: the gauges changed just before"),
        crossing.newtons(),
        Double.isFinite(uncertainty)
            ? Optional.of(budget.ofLoad(crossing.newtons(), uncertainty, slopes.at(width), width))
            : Optional.empty(),
        CrackFigures.rows(crossing.firstSeq(), crossing.lastSeq()));
  }

  private void addWidths(CrackResult result) {
    for (WidthAtLoad width : result.widths()) {
      CrackRules.Asked asked =
          rules.asked().stream()
              .filter(each -> each.newtons() == width.newtons())
              .findFirst()
              .orElseThrow();
      double slope = slopeNear(result.curve(), width.newtons());
      figures.width(
          "width-at-" + asked.words().replace(' ', '-'),
          "Crack width at " + asked.words() + " on first loading",
          width.millimetres(),
          Optional.of(budget.ofWidth(width, slope)),
          CrackFigures.rows(width.firstSeq(), width.lastSeq()));
    }
  }

  /** Slope of width on load over about 2 % of the load, mm/N. */
  private static double slopeNear(List<CrackResult.Point> curve, double newtons) {
    CrackResult.Point low = curve.get(0);
    CrackResult.Point high = curve.get(curve.size() - 1);
    for (CrackResult.Point point : curve) {
      low = point.newtons() <= 0.99 * newtons ? point : low;
      if (point.newtons() >= 1.01 * newtons) {
        high = point;
        break;
      }
    }
    double loads = high.newtons() - low.newtons();
    return loads > 0 ? (high.millimetres() - low.millimetres()) / loads : 0;
  }

  private void addFirstCracks(FirstCrack first) {
    first
        .byDeparture()
        .ifPresent(
            figure ->
                addFirstCrack(
                    "first-crack-departure",
                    "First crack: load at which the opening left its initial line",
                    figure));
    first
        .bySmallWidth()
        .ifPresent(
            figure ->
                addFirstCrack(
                    "first-crack-width",
                    "First crack: greatest load up to an opening of "
                        + BothUnits.plain(rules.smallWidth())
                        + " mm",
                    figure));
  }

  private void addFirstCrack(String name, String title, FirstCrack.Figure figure) {
    if (!Double.isFinite(figure.uncertaintyNewtons())) {
      withoutUncertainty.add("the load at first crack (" + name + ")");
    }
    figures.load(
        name,
        title,
        figure.newtons(),
        Double.isFinite(figure.uncertaintyNewtons())
            ? Optional.of(
                budget.ofLoad(
                    figure.newtons(),
                    figure.uncertaintyNewtons(),
                    figure.newtonsPerMillimetre(),
                    rules.smallWidth()))
            : Optional.empty(),
        CrackFigures.rows(figure.firstSeq(), figure.lastSeq()));
  }

  private void addPeak(CrackResult result) {
    double peak = result.peakNewtons();
    if (result.peakSeq() == 0 || !(peak > 0)) {
      return;
    }
    double noise = result.loadZero().isKnown() ? 2 * result.loadZero().noise() : 0;
    List<Long> rows = List.of(result.peakSeq());
    figures.load(
        "peak-load", "Greatest load", peak, Optional.of(budget.ofLoad(peak, noise, 0, 0)), rows);
    if (rules.wedge().isPresent() && specimen.dimension(Dimension.WEDGE_ANGLE).isPresent()) {
      double angle = Math.toRadians(specimen.dimension(Dimension.WEDGE_ANGLE).getAsDouble());
      SplittingForce force = new SplittingForce(angle, rules.wedge().get());
      figures.load(
          "splitting-force",
          force.words(),
          force.of(peak),
          Optional.of(force.budget(peak, budget.loadShare())),
          rows);
    }
  }

  private void addStiffness(Stiffness stiffness) {
    if (Double.isFinite(stiffness.before())) {
      figures.stiffness(
          "stiffness-before",
          "Stiffness before cracking, load on opening",
          stiffness.before(),
          stiffnessBudget(stiffness.before(), stiffness.beforeUncertainty()),
          CrackFigures.rows(stiffness.beforeFirstSeq(), stiffness.beforeLastSeq()));
    }
    if (Double.isFinite(stiffness.after())) {
      figures.stiffness(
          "stiffness-after",
          "Stiffness after cracking, from "
              + BothUnits.plain(rules.crackedFrom())
              + " to "
              + BothUnits.plain(rules.crackedTo())
              + " mm",
          stiffness.after(),
          stiffnessBudget(stiffness.after(), stiffness.afterUncertainty()),
          CrackFigures.rows(stiffness.afterFirstSeq(), stiffness.afterLastSeq()));
    }
  }

  private UncertaintyBudget stiffnessBudget(double newtonsPerMillimetre, double expanded) {
    double scale = Unit.KILONEWTON_PER_MILLIMETRE.factor();
    return budget.ofBoth(newtonsPerMillimetre / scale, expanded / scale);
  }

  private void addWork(CrackResult result) {
    if (result.workFirstSeq() > 0) {
      double joules = result.workNewtonMillimetres() / 1000;
      figures.work(
          joules,
          budget.ofBoth(joules, 0),
          CrackFigures.rows(result.workFirstSeq(), result.workLastSeq()));
    }
  }

  private void addZeros(CrackResult result) {
    ZeroLevel zero = result.loadZero();
    if (zero.isKnown()) {
      figures.load(
          "zero-" + load.facts().name(),
          "Load at zero, taken off",
          zero.value(),
          Optional.empty(),
          CrackFigures.rows(zero.firstSeq(), zero.lastSeq()));
    }
    for (int i = 0; i < gauges.size(); i++) {
      ZeroLevel gauge = result.gaugeZeros().get(i);
      if (gauge.isKnown()) {
        figures.width(
            "zero-" + gauges.get(i).name(),
            "Reading of " + gauges.get(i).name() + " at zero, taken off",
            gauge.value(),
            Optional.empty(),
            CrackFigures.rows(gauge.firstSeq(), gauge.lastSeq()));
      }
    }
  }

  private Optional<VirginTable> curve(CrackResult result) {
    List<CrackResult.Point> all = result.curve();
    if (all.size() < 2) {
      return Optional.empty();
    }
    int every = 1 + (all.size() - 1) / MOST_POINTS;
    List<VirginTable.Point> kept = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      if (i % every == 0 || i == all.size() - 1) {
        CrackResult.Point point = all.get(i);
        kept.add(
            new VirginTable.Point(
                point.newtons(), point.millimetres(), point.mask(), point.lastSeq()));
      }
    }
    return Optional.of(new VirginTable(gauges.stream().map(GaugeChannel::name).toList(), kept));
  }
}
