package io.github.platenwire.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.platenwire.statistics.ConfidenceSet;
import io.github.platenwire.statistics.Interval;
import io.github.platenwire.study.AgeCurves;
import io.github.platenwire.study.AgeTrend;
import io.github.platenwire.study.CrackRatio;
import io.github.platenwire.study.StudyComparison;
import io.github.platenwire.study.StudyComparison.AgainstReference;
import io.github.platenwire.study.StudyComparison.AgeComparison;
import io.github.platenwire.study.StudyComparison.CrackComparison;
import io.github.platenwire.study.StudyComparison.SeriesSet;
import io.github.platenwire.study.StudyComparison.SeriesTrend;
import io.github.platenwire.study.StudyComparison.SpecimenValue;
import io.github.platenwire.study.StudyData;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A comparison as JSON; SI units, nothing rounded. Stateless. */
final class ComparisonJson {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private ComparisonJson() {}

  static String text(StudyData data, StudyComparison comparison) {
    StudyComparison.Subject subject = comparison.subject();
    ObjectNode root = MAPPER.createObjectNode();
    root.put("title", data.study().title());
    root.put("reference", comparison.reference());
    root.putObject("figure")
        .put("name", subject.figure())
        .put("title", subject.title())
        .put("unit", subject.unit().symbol())
        .put("method", subject.method())
        .put("standard", subject.standard());
    root.put("level", 0.95);
    comparison.sets().forEach(set -> set(root.withArray("sets").addObject(), set));
    comparison.ages().forEach(age -> age(root.withArray("ages").addObject(), age));
    comparison.trends().forEach(trend -> trend(root.withArray("trends").addObject(), trend));
    comparison.cracks().forEach(crack -> crack(root.withArray("cracks").addObject(), crack));
    for (StudyComparison.Observation seen : comparison.observations()) {
      ObjectNode node = root.withArray("observations").addObject();
      node.put("what", seen.what());
      number(node, "age_days", seen.ageDays());
      ArrayNode counts = node.putArray("counts");
      seen.counts()
          .forEach(
              count ->
                  counts
                      .addObject()
                      .put("series", count.series())
                      .put("seen", count.seen())
                      .put("looked", count.looked()));
      node.put("sentence", seen.sentence());
    }
    comparison.sentences().forEach(root.putArray("sentences")::add);
    comparison.warnings().forEach(root.putArray("warnings")::add);
    return root.toPrettyString();
  }

  private static void set(ObjectNode node, SeriesSet set) {
    node.put("series", set.series()).put("label", set.label());
    age(node, set.ageDays());
    node.put("planned", set.planned()).put("n", set.statistics().n());
    node.put("mean", set.statistics().mean());
    number(node, "standard_deviation", set.statistics().standardDeviation());
    number(node, "coefficient_of_variation", set.statistics().coefficientOfVariation());
    interval(node, "interval", set.statistics().meanInterval());
    set.companions()
        .ifPresent(
            verdict -> {
              ObjectNode companions = node.putObject("companions");
              companions.put("range_percent", verdict.rangePercent());
              number(companions, "limit_percent", verdict.limitPercent());
              verdict.within().ifPresent(within -> companions.put("within", within));
              companions.put("words", verdict.words());
            });
    set.suspect()
        .ifPresent(
            suspect ->
                node.putObject("suspected_outlier")
                    .put("specimen", suspect.specimen())
                    .put("statistic", suspect.finding().statistic())
                    .put("critical", suspect.finding().critical()));
    set.values().forEach(value -> value(node.withArray("specimens").addObject(), value));
  }

  private static void value(ObjectNode node, SpecimenValue value) {
    node.put("specimen", value.specimen()).put("value", value.value());
    value.uncertainty().ifPresent(budget -> node.put("expanded_uncertainty", budget.expanded()));
    number(node, "true_age_days", value.trueAgeDays());
    node.put("record", value.record());
    value.rows().forEach(node.putArray("rows")::add);
  }

  private static void age(ObjectNode node, AgeComparison age) {
    age(node, age.ageDays());
    node.put("reference", age.reference());
    node.put("choice", age.choice());
    for (AgainstReference one : age.series()) {
      ObjectNode series = node.withArray("series").addObject();
      series.put("series", one.series());
      series.put("n", one.ratio().nFirst()).put("n_reference", one.ratio().nSecond());
      series.put("ratio", one.ratio().ratio());
      interval(series, "ratio_interval", one.ratioInterval());
      series.put("ratio_set", set(one.ratio().set()));
      one.calibrated()
          .ifPresent(with -> series.put("calibration_share", with.calibrationRelative()));
      series.put("difference", one.difference().difference());
      interval(series, "difference_interval", one.differenceInterval());
      one.difference().inference().ifPresent(sure -> series.put("welch_p", sure.probability()));
      one.sentences().forEach(series.putArray("sentences")::add);
    }
  }

  /** Left out where it is not known. */
  private static void age(ObjectNode node, double ageDays) {
    number(
        node,
        "age_days",
        Double.isNaN(ageDays) ? OptionalDouble.empty() : OptionalDouble.of(ageDays));
  }

  private static String set(ConfidenceSet set) {
    if (set instanceof ConfidenceSet.Bounded) {
      return "bounded";
    }
    return set instanceof ConfidenceSet.NotGiven none ? none.reason() : "unbounded";
  }

  private static void trend(ObjectNode node, SeriesTrend trend) {
    node.put("series", trend.series()).put("n", trend.trend().n());
    trend.trend().line().ifPresent(line -> node.put("slope_on_log_age", line.slope()));
    interval(node, "slope_interval", trend.slopeInterval());
    AgeTrend.Verdict verdict = trend.trend().verdict();
    node.put("verdict", verdict(verdict));
    if (verdict instanceof AgeTrend.NoGainShown none) {
      node.put("smallest_detectable_gain", none.smallestDetectableGainMegapascals());
    }
    trend
        .aci()
        .ifPresent(
            fit -> {
              ObjectNode aci = node.putObject("aci_209r");
              coefficient(aci, "strength_28", fit.strength28Megapascals());
              coefficient(aci, "a_days", fit.aDays());
              coefficient(aci, "b", fit.b());
            });
    trend
        .en()
        .ifPresent(
            fit -> {
              ObjectNode en = node.putObject("en_1992_1_1");
              coefficient(en, "strength_28", fit.strength28Megapascals());
              coefficient(en, "s", fit.s());
            });
    trend.sentences().forEach(node.putArray("sentences")::add);
  }

  private static String verdict(AgeTrend.Verdict verdict) {
    if (verdict instanceof AgeTrend.Gains) {
      return "gains";
    }
    if (verdict instanceof AgeTrend.Falls) {
      return "falls";
    }
    return verdict instanceof AgeTrend.NoGainShown ? "no gain shown" : "too few specimens";
  }

  private static void coefficient(ObjectNode node, String name, AgeCurves.Coefficient value) {
    node.putObject(name).put("value", value.value()).put("standard_error", value.standardError());
  }

  private static void crack(ObjectNode node, CrackComparison crack) {
    node.put("series", crack.series()).put("reference", crack.reference());
    node.put("method", crack.method());
    number(node, "age_days", crack.ageDays());
    node.put("width_standard_uncertainty_mm", crack.widthUncertaintyMillimetres());
    node.put("calibration", crack.calibration());
    places(node.putArray("width_ratios"), "load_n", crack.atLoads());
    places(node.putArray("load_ratios"), "width_mm", crack.atWidths());
    crack.sentences().forEach(node.putArray("sentences")::add);
  }

  private static void places(ArrayNode list, String place, List<CrackRatio.At> all) {
    for (CrackRatio.At at : all) {
      ObjectNode node = list.addObject().put(place, at.place());
      if (at.outcome() instanceof CrackRatio.Found found) {
        node.put("ratio", found.ratio());
        interval(node, "interval", Optional.of(found.interval()));
        node.put("n", found.nFirst()).put("n_reference", found.nSecond());
      } else if (at.outcome() instanceof CrackRatio.FigureOnly figure) {
        node.put("ratio", figure.ratio());
        node.put("n", figure.nFirst()).put("n_reference", figure.nSecond());
      } else if (at.outcome() instanceof CrackRatio.NearNoise noise) {
        node.put("near_the_noise", true);
        node.put("least_usable_width_mm", noise.leastUsableMillimetres());
        node.put("n", noise.nFirst()).put("n_reference", noise.nSecond());
      }
    }
  }

  private static void number(ObjectNode node, String name, OptionalDouble value) {
    value.ifPresent(known -> node.put(name, known));
  }

  private static void interval(ObjectNode node, String name, Optional<Interval> interval) {
    interval.ifPresent(ends -> node.putArray(name).add(ends.low()).add(ends.high()));
  }
}
