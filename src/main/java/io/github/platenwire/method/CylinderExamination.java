package io.github.platenwire.method;

import io.github.platenwire.method.Method.Objection;
import io.github.platenwire.method.Method.Weight;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** What speaks against testing a cylinder, before anything is loaded. Immutable. */
final class CylinderExamination {
  private static final double MOST_DIAMETER_MILLIMETRES = 2000;

  /** Slack for what is just at a limit in decimal, but a hair beyond it in binary. */
  private static final double HAIR = 1e-9;

  private final CompressionRules rules;

  CylinderExamination(CompressionRules rules) {
    this.rules = rules;
  }

  List<Objection> examine(Specimen specimen, TestSetting setting) {
    List<Objection> objections = new ArrayList<>();
    examineChannels(setting, objections);
    examineShape(specimen, objections);
    examineDiameters(specimen, objections);
    examineLength(specimen, objections);
    examineEnds(specimen, objections);
    examineAge(specimen, setting, objections);
    objections.sort((a, b) -> a.weight().compareTo(b.weight()));
    return List.copyOf(objections);
  }

  private static void examineChannels(TestSetting setting, List<Objection> objections) {
    try {
      LoadChannel channel = LoadChannel.find(setting.channels());
      if (!(channel.facts().rangeHigh() > 0)) {
        objections.add(
            refused(
                "the range of channel '" + channel.facts().name() + "' does not reach above 0",
                "give its greatest load in the rig file"));
      }
    } catch (IllegalArgumentException e) {
      objections.add(
          refused(
              String.valueOf(e.getMessage()),
              "name one channel of quantity 'force' in the rig file"));
    }
  }

  private void examineShape(Specimen specimen, List<Objection> objections) {
    List<String> shapes = rules.specimen().shapes();
    if (!shapes.contains(specimen.shape())) {
      objections.add(
          refused(
              "the shape is '"
                  + specimen.shape()
                  + "', and this method is for "
                  + String.join(" or ", shapes),
              "choose the method for this shape, or correct the specimen's row"));
    }
  }

  private void examineDiameters(Specimen specimen, List<Objection> objections) {
    List<Double> diameters = specimen.diametersMillimetres();
    int asked = rules.specimen().diameters();
    if (diameters.size() < asked) {
      objections.add(
          refused(
              diameters.size() + " of " + asked + " diameters are given",
              "measure the diameter at mid-height, at right angles, and enter each"));
      return;
    }
    if (diameters.stream().anyMatch(diameter -> !isPlausible(diameter))) {
      objections.add(
          refused(
              "the diameters " + diameters + " mm are not possible",
              "measure and enter them anew"));
      return;
    }
    double percent = CylinderGeometry.differencePercent(diameters);
    if (percent > rules.specimen().differencePercent() + HAIR) {
      objections.add(
          new Objection(
              Weight.NEEDS_REASON,
              "the diameters differ by "
                  + BothUnits.rounded(percent, "0.01")
                  + " %, more than "
                  + BothUnits.plain(rules.specimen().differencePercent())
                  + " %: "
                  + rules.standard()
                  + " does not allow this cylinder to be tested",
              "measure again; put it aside, or give a reason for testing it all the same"));
    }
  }

  private static boolean isPlausible(double millimetres) {
    return millimetres > 0 && millimetres <= MOST_DIAMETER_MILLIMETRES;
  }

  private void examineLength(Specimen specimen, List<Objection> objections) {
    OptionalDouble length = specimen.lengthMillimetres();
    if (length.isEmpty() || !isPlausible(length.getAsDouble())) {
      objections.add(
          refused(
              length.isEmpty()
                  ? "the length is not given"
                  : "the length " + length.getAsDouble() + " mm is not possible",
              "measure the length and enter it; without it nobody can tell whether the strength"
                  + " must be corrected"));
      return;
    }
    if (specimen.diametersMillimetres().stream().allMatch(CylinderExamination::isPlausible)) {
      CylinderGeometry.of(specimen)
          .ifPresent(geometry -> examineRatio(geometry.lengthRatio(), objections));
    }
  }

  private void examineRatio(double ratio, List<Objection> objections) {
    String seen = "length over diameter is " + BothUnits.rounded(ratio, "0.001");
    double least = rules.specimen().leastRatio();
    double greatest = rules.specimen().greatestRatio();
    if (ratio < least - HAIR) {
      objections.add(
          refused(
              seen + ", below " + BothUnits.plain(least) + ", where the correction table ends",
              "check the length and the diameters; such a specimen cannot be tested by "
                  + rules.standard()));
    } else if (ratio > greatest + HAIR) {
      objections.add(
          departure(
              seen
                  + ", above "
                  + BothUnits.plain(greatest)
                  + "; no correction is printed for it, and none is made",
              "check the length; shorten a core before testing it"));
    }
  }

  private void examineEnds(Specimen specimen, List<Objection> objections) {
    List<String> known = rules.specimen().ends();
    if (specimen.ends().isEmpty()) {
      objections.add(
          departure(
              "how the ends were prepared is not given",
              "enter one of: " + String.join(", ", known)));
    } else if (!known.contains(specimen.ends().get())) {
      objections.add(
          departure(
              "the ends are '" + specimen.ends().get() + "', which the method does not know",
              "enter one of: " + String.join(", ", known)));
    }
  }

  private void examineAge(Specimen specimen, TestSetting setting, List<Objection> objections) {
    CylinderAge age = CylinderAge.of(rules, specimen, setting);
    switch (age.standing()) {
      case NOT_KNOWN -> objections.add(departure(age.words(), "enter when the specimen was cast"));
      case BEFORE_CAST ->
          objections.add(refused(age.words(), "correct the cast time, or set the machine's clock"));
      case NOT_PLANNED ->
          objections.add(departure(age.words(), "enter the age at which it is to be broken"));
      case OUTSIDE ->
          objections.add(
              departure(age.words(), "test within the tolerance, or go on: it is recorded"));
      case WITHIN, NO_TOLERANCE -> {}
    }
  }

  private static Objection refused(String problem, String remedy) {
    return new Objection(Weight.REFUSED, problem, remedy);
  }

  private static Objection departure(String problem, String remedy) {
    return new Objection(Weight.DEPARTURE, problem, remedy);
  }
}
