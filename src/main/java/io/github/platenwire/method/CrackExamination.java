package io.github.platenwire.method;

import io.github.platenwire.method.Method.Objection;
import io.github.platenwire.method.Method.Weight;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** What speaks against testing a beam on a rig. Stateless apart from its rules. */
final class CrackExamination {
  private final CrackRules rules;

  CrackExamination(CrackRules rules) {
    this.rules = rules;
  }

  List<Objection> examine(Specimen specimen, TestSetting setting) {
    List<Objection> objections = new ArrayList<>();
    if (!rules.shapes().contains(specimen.shape())) {
      objections.add(
          new Objection(
              Weight.REFUSED,
              "its shape is '"
                  + specimen.shape()
                  + "', but this method is for "
                  + String.join(", ", rules.shapes()),
              "choose the method for that shape, or correct the shape in specimens.csv"));
    }
    int gauges = GaugeChannel.find(setting.channels()).size();
    if (gauges < 1 || gauges > GaugeChannel.MOST) {
      objections.add(
          new Objection(
              Weight.REFUSED,
              "the rig has " + gauges + " channels of length; a crack takes 1 to 8 gauges",
              "name a rig whose file has the gauges across the crack"));
    }
    rules.notch().ifPresent(notch -> examineNotch(notch, specimen, objections));
    return List.copyOf(objections);
  }

  private static void examineNotch(
      CrackRules.Notch notch, Specimen specimen, List<Objection> objections) {
    examineSize(specimen, Dimension.WIDTH, notch.width(), notch, objections);
    examineSize(specimen, Dimension.DEPTH, notch.depth(), notch, objections);
    examineSize(specimen, Dimension.NOTCH_DEPTH, notch.notch(), notch, objections);
    examineSize(specimen, Dimension.SPAN, notch.span(), notch, objections);
    double depth = specimen.dimension(Dimension.DEPTH).orElse(Double.NaN);
    if (specimen.dimension(Dimension.NOTCH_DEPTH).orElse(0) >= depth) {
      objections.add(
          new Objection(
              Weight.REFUSED,
              "its notch is as deep as the beam or deeper",
              "measure depth and notch_depth again and correct specimens.csv"));
    }
  }

  private static void examineSize(
      Specimen specimen,
      Dimension dimension,
      double nominal,
      CrackRules.Notch notch,
      List<Objection> objections) {
    OptionalDouble size = specimen.dimension(dimension);
    if (size.isEmpty() || !(size.getAsDouble() > 0)) {
      objections.add(
          new Objection(
              Weight.REFUSED,
              "its "
                  + dimension.word().replace('_', ' ')
                  + " is missing, and the strength cannot be had without it",
              "enter it in specimens.csv, column " + dimension.word() + "_mm"));
    } else if (Math.abs(size.getAsDouble() / nominal - 1) * 100 > notch.tolerancePercent()) {
      objections.add(
          new Objection(
              Weight.DEPARTURE,
              "its "
                  + dimension.word().replace('_', ' ')
                  + " is "
                  + BothUnits.plain(size.getAsDouble())
                  + " mm, where the standard has "
                  + BothUnits.plain(nominal)
                  + " mm",
              "say so with the result"));
    }
  }
}
