package io.github.platenwire.method;

import io.github.platenwire.method.Method.Objection;
import java.math.BigDecimal;
import java.util.List;

/** What speaks against testing a specimen, before anything is loaded. Immutable. */
record SpecimenExamination(
    StrengthRules.SpecimenRules rules,
    Shape shape,
    List<StrengthRules.AgeTolerance> ages,
    BigDecimal ageStep) {

  List<Objection> examine(Specimen specimen, TestSetting setting) {
    Objections objections = new Objections();
    examineLoad(setting, objections);
    examineShape(specimen, objections);
    shape.examine(specimen, objections);
    examineEnds(specimen, objections);
    examineAge(specimen, setting, objections);
    return objections.sorted();
  }

  private static void examineLoad(TestSetting setting, Objections objections) {
    try {
      LoadChannel channel = LoadChannel.find(setting.channels());
      if (!(channel.facts().rangeHigh() > 0)) {
        objections.refuse(
            "the range of channel '" + channel.facts().name() + "' does not reach above 0",
            "give its greatest load in the rig file");
      }
    } catch (IllegalArgumentException e) {
      objections.refuse(
          String.valueOf(e.getMessage()), "name one channel of quantity 'force' in the rig file");
    }
  }

  private void examineShape(Specimen specimen, Objections objections) {
    if (!rules.shapes().contains(specimen.shape())) {
      objections.refuse(
          "the shape is '"
              + specimen.shape()
              + "', and this method is for "
              + String.join(" or ", rules.shapes()),
          "choose the method for this shape, or correct the specimen's row");
    }
  }

  private void examineEnds(Specimen specimen, Objections objections) {
    List<String> known = rules.ends();
    if (known.isEmpty()) {
      return;
    }
    String remedy = "enter one of: " + String.join(", ", known);
    if (specimen.ends().isEmpty()) {
      objections.depart("how the ends were prepared is not given", remedy);
    } else if (!known.contains(specimen.ends().get())) {
      objections.depart(
          "the ends are '" + specimen.ends().get() + "', which the method does not know", remedy);
    }
  }

  private void examineAge(Specimen specimen, TestSetting setting, Objections objections) {
    SpecimenAge age = SpecimenAge.of(ages, ageStep, specimen, setting);
    switch (age.standing()) {
      case NOT_KNOWN -> objections.depart(age.words(), "enter when the specimen was cast");
      case BEFORE_CAST ->
          objections.refuse(age.words(), "correct the cast time, or set the machine's clock");
      case NOT_PLANNED ->
          objections.depart(age.words(), "enter the age at which it is to be broken");
      case OUTSIDE ->
          objections.depart(age.words(), "test within the tolerance, or go on: it is recorded");
      case WITHIN, NO_TOLERANCE -> {}
    }
  }
}
