package io.github.platenwire.study;

import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.method.VirginTable;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.study.CalibratedRatio.Frames;
import io.github.platenwire.study.CalibratedRatio.Systematic;
import io.github.platenwire.study.StudyComparison.CrackComparison;
import io.github.platenwire.study.StudyComparison.SpecimenCurve;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * Holds the cracks of one series against those of its reference, over the range of loads and of
 * widths that every specimen of both reached. Used once; not thread-safe.
 */
final class CrackComparer {
  private static final int MOST_PLACES = 14;

  /** Lines of a width's budget that tell how well it is known from nothing. */
  private static final Pattern NOISE = Pattern.compile("^gauges: |^elastic stretch");

  private static final String WIDTH = "width-at-";
  private static final String LOAD = "load-at-";

  private final StudyData data;
  private final String series;
  private final String reference;

  CrackComparer(StudyData data, String series, String reference) {
    this.data = data;
    this.series = series;
    this.reference = reference;
  }

  /** Specimens are companions by the method that opened them and their age. */
  private record Kind(String method, OptionalDouble ageDays) {}

  /** One comparison for each method and age at which both series have a crack. */
  List<CrackComparison> compare(OptionalDouble onlyAgeDays) {
    Map<Kind, List<ClosedTest>> own = opened(series);
    Map<Kind, List<ClosedTest>> its = opened(reference);
    List<CrackComparison> comparisons = new ArrayList<>();
    own.forEach(
        (kind, tests) -> {
          if (its.containsKey(kind)
              && (onlyAgeDays.isEmpty() || onlyAgeDays.equals(kind.ageDays()))) {
            comparisons.add(compare(kind, tests, its.get(kind)));
          }
        });
    return comparisons;
  }

  private Map<Kind, List<ClosedTest>> opened(String name) {
    Map<String, ClosedTest> first = new LinkedHashMap<>();
    data.testsOf(name).stream()
        .filter(test -> curve(test).isPresent())
        .forEach(test -> first.putIfAbsent(test.specimen(), test));
    Map<Kind, List<ClosedTest>> byKind = new LinkedHashMap<>();
    for (ClosedTest test : first.values()) {
      Kind kind = new Kind(test.summary().method().name(), test.ageDays());
      byKind.computeIfAbsent(kind, any -> new ArrayList<>()).add(test);
    }
    return byKind;
  }

  private CrackComparison compare(Kind kind, List<ClosedTest> own, List<ClosedTest> its) {
    List<CrackCurve> first = own.stream().map(test -> curve(test).orElseThrow()).toList();
    List<CrackCurve> second = its.stream().map(test -> curve(test).orElseThrow()).toList();
    double noise = Math.max(noise(own), noise(its));
    Calibrations calibrations = Calibrations.of(own, its);
    List<CrackRatio.At> loads =
        CrackRatio.sharedLoads(first, second)
            .map(range -> NiceSteps.within(range, loadUnit(), MOST_PLACES))
            .map(places -> CrackRatio.atLoads(first, second, noise, places))
            .orElse(List.of());
    List<CrackRatio.At> widths =
        CrackRatio.sharedWidths(first, second)
            .map(range -> NiceSteps.within(range, widthUnit(), MOST_PLACES))
            .map(places -> CrackRatio.atWidths(first, second, noise, places))
            .orElse(List.of());
    List<CrackRatio.At> atLoads = calibrations.widen(loads, WIDTH);
    List<CrackRatio.At> atWidths = calibrations.widen(widths, LOAD);
    return new CrackComparison(
        series,
        reference,
        kind.method(),
        kind.ageDays(),
        curves(own),
        curves(its),
        atLoads,
        atWidths,
        noise,
        calibrations.reason(atLoads, atWidths),
        new CrackSentences(series, reference, data.unitsFirst()).of(atLoads, atWidths));
  }

  private Unit loadUnit() {
    return data.unitsFirst() == UnitSystem.SI ? Unit.KILONEWTON : Unit.KIP;
  }

  private Unit widthUnit() {
    return data.unitsFirst() == UnitSystem.SI ? Unit.MILLIMETRE : Unit.INCH;
  }

  private static List<SpecimenCurve> curves(List<ClosedTest> tests) {
    return tests.stream()
        .map(
            test ->
                new SpecimenCurve(
                    test.specimen(), test.summary().result().curve().orElseThrow(), test.record()))
        .toList();
  }

  /** The curve where its loads strictly rise; empty if less than two points are left. */
  private static Optional<CrackCurve> curve(ClosedTest test) {
    List<VirginTable.Point> rising = new ArrayList<>();
    test.summary().result().curve().map(VirginTable::points).orElse(List.of()).stream()
        .filter(
            point -> rising.isEmpty() || point.newtons() > rising.get(rising.size() - 1).newtons())
        .forEach(rising::add);
    return rising.size() < 2
        ? Optional.empty()
        : Optional.of(
            new CrackCurve(
                rising.stream().mapToDouble(VirginTable.Point::newtons).toArray(),
                rising.stream().mapToDouble(VirginTable.Point::millimetres).toArray()));
  }

  /** The greatest standard uncertainty of a width beside calibration and load, millimetres. */
  private static double noise(List<ClosedTest> tests) {
    return tests.stream()
        .flatMap(test -> test.summary().result().figures().stream())
        .filter(figure -> figure.name().startsWith(WIDTH) && figure.uncertainty().isPresent())
        .mapToDouble(
            figure ->
                figure
                    .unit()
                    .toBase(
                        SharedCalibration.withoutFrame(
                            figure.uncertainty().orElseThrow(), NOISE.asPredicate())))
        .max()
        .orElse(0);
  }

  /** What the calibrations of both series do to their ratios. */
  private record Calibrations(List<ClosedTest> own, List<ClosedTest> its, Frames frames) {
    static Calibrations of(List<ClosedTest> own, List<ClosedTest> its) {
      SharedCalibration first = SharedCalibration.of(own, "");
      return new Calibrations(own, its, first.against(SharedCalibration.of(its, "")));
    }

    List<CrackRatio.At> widen(List<CrackRatio.At> ratios, String figures) {
      Optional<Systematic> first = systematic(own, figures);
      Optional<Systematic> second = systematic(its, figures);
      return first.isEmpty() || second.isEmpty()
          ? ratios
          : ratios.stream().map(at -> widened(at, first.get(), second.get())).toList();
    }

    private CrackRatio.At widened(CrackRatio.At at, Systematic first, Systematic second) {
      // Equal curves give an interval of no width, which rounding may put beside the ratio.
      if (!(at.outcome() instanceof CrackRatio.Found found)
          || !found.interval().contains(found.ratio())) {
        return at;
      }
      CalibratedRatio with =
          CalibratedRatio.of(found.ratio(), found.interval(), first, second, frames);
      return new CrackRatio.At(
          at.place(),
          new CrackRatio.Found(
              found.ratio(),
              with.interval(),
              found.degreesOfFreedom(),
              found.nFirst(),
              found.nSecond()));
    }

    /** The greatest share that the frame has in any such figure; empty if there is no budget. */
    private static Optional<Systematic> systematic(List<ClosedTest> tests, String figures) {
      double shared = 0;
      for (ClosedTest test : tests) {
        for (Figure figure : test.summary().result().figures()) {
          if (figure.name().startsWith(figures)) {
            shared =
                Math.max(
                    shared,
                    SharedCalibration.of(List.of(test), figure.name()).systematic().shared());
          }
        }
      }
      return shared > 0 ? Optional.of(new Systematic(shared, 0)) : Optional.empty();
    }

    String reason(List<CrackRatio.At> atLoads, List<CrackRatio.At> atWidths) {
      return atLoads.isEmpty() && atWidths.isEmpty()
          ? "There is no range that all specimens reached."
          : CalibratedRatio.reason(frames);
    }
  }
}
