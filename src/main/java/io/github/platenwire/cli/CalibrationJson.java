package io.github.platenwire.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.platenwire.calibration.CalibrationCheck;
import io.github.platenwire.calibration.CalibrationPoint;
import io.github.platenwire.calibration.ClassLimits;
import io.github.platenwire.calibration.Correction;
import io.github.platenwire.calibration.CorrectionFit;
import io.github.platenwire.calibration.PolynomialCorrection;
import io.github.platenwire.calibration.ScaleCorrection;
import io.github.platenwire.calibration.StepErrors;
import io.github.platenwire.calibration.TableCorrection;
import io.github.platenwire.lab.Calibration;
import java.util.OptionalDouble;

/** A checked calibration as JSON. Stateless. */
final class CalibrationJson {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private CalibrationJson() {}

  static String text(
      Calibration calibration,
      CorrectionFit fit,
      CalibrationCheck check,
      CalibrationVerdict verdict) {
    ObjectNode root = MAPPER.createObjectNode();
    root.put("name", calibration.name());
    root.put("certificate", calibration.certificate());
    root.put("laboratory", calibration.laboratory());
    root.put("date", calibration.date().toString());
    calibration.due().ifPresent(due -> root.put("due", due.toString()));
    root.put("standard", check.limits().name());
    root.put("unit", check.runs().unit().symbol());
    root.set("correction", correction(fit.correction()));
    put(root, "residual_standard_uncertainty", fit.standardUncertainty());
    put(root, "residual_standard_uncertainty_percent", fit.standardUncertaintyPercent(0));
    put(root, "zero_percent", check.zeroPercent());
    root.set("steps", steps(check));
    root.set("ranges", ranges(check));
    verdict.stated().ifPresent(stated -> root.put("stated_class", stated.name()));
    root.put("met", verdict.met());
    verdict.failures().forEach(root.putArray("failures")::add);
    check.remarks().forEach(root.putArray("remarks")::add);
    return root.toPrettyString();
  }

  private static ObjectNode correction(Correction correction) {
    ObjectNode node = MAPPER.createObjectNode();
    node.put("words", correction.words());
    if (correction instanceof ScaleCorrection scale) {
      node.put("scale", scale.factor());
    } else if (correction instanceof TableCorrection table) {
      ArrayNode points = node.putArray("points");
      for (CalibrationPoint point : table.points()) {
        points.addObject().put("indicated", point.indicated()).put("applied", point.applied());
      }
    } else if (correction instanceof PolynomialCorrection polynomial) {
      polynomial.coefficients().forEach(node.putArray("coefficients")::add);
      node.put("low", polynomial.low()).put("high", polynomial.high());
    }
    return node;
  }

  private static ArrayNode steps(CalibrationCheck check) {
    ArrayNode steps = MAPPER.createArrayNode();
    for (StepErrors step : check.steps()) {
      ObjectNode node = steps.addObject();
      node.put("applied", step.applied());
      node.put("shown", step.indicated());
      node.put("error_percent", step.errorPercent());
      put(node, "repeatability_percent", step.repeatabilityPercent());
      put(node, "reversibility_percent", step.reversibilityPercent());
      put(node, "resolution_percent", step.resolutionPercent());
      check.classOf(step).map(ClassLimits::name).ifPresent(name -> node.put("class", name));
    }
    return steps;
  }

  private static ArrayNode ranges(CalibrationCheck check) {
    ArrayNode ranges = MAPPER.createArrayNode();
    for (CalibrationCheck.Range range : check.ranges()) {
      ObjectNode node = ranges.addObject();
      node.put("class", range.className()).put("from", range.from()).put("to", range.to());
      put(node, "lower_limit_by_resolution", range.lowerLimit());
    }
    return ranges;
  }

  private static void put(ObjectNode node, String key, OptionalDouble value) {
    value.ifPresent(number -> node.put(key, number));
  }
}
