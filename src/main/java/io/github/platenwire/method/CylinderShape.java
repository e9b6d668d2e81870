package io.github.platenwire.method;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Cylinders and cores: pressed along the axis, where the stress is the load over the cross-section
 * pi d^2/4, or split along a diameter, where it is 2 P/(pi l d).
 */
record CylinderShape(
    Load load,
    int diameters,
    double differencePercent,
    double readingMillimetres,
    double leastRatio,
    double greatestRatio,
    Optional<LengthCorrection> correction,
    String standard,
    Rounding rounding)
    implements Shape {
  /** How a cylinder is loaded. */
  enum Load {
    ALONG_AXIS,
    ACROSS_AXIS
  }

  /** Steps to which the specimen's figures are rounded. */
  record Rounding(
      Steps size, Steps area, Steps density, BigDecimal ratio, Optional<BigDecimal> factor) {}

  static String[] specimenKeys() {
    return new String[] {
      "diameters",
      "diameter-difference-percent",
      "reading-mm",
      "length-ratio-least",
      "length-ratio-greatest"
    };
  }

  static String[] roundingKeys(boolean corrected) {
    List<String> keys =
        new ArrayList<>(
            List.of("area-mm2", "area-in2", "density-kg-per-m3", "density-lb-per-ft3", "ratio"));
    if (corrected) {
      keys.add("factor");
    }
    return keys.toArray(String[]::new);
  }

  static CylinderShape parse(TomlSection file, Load load) throws TomlException {
    Numbers specimen = new Numbers(file.section("specimen"));
    Numbers rounding = new Numbers(file.section("rounding"));
    double least = specimen.positive("length-ratio-least");
    Optional<TomlSection> correction = file.optionalSection("correction");
    return new CylinderShape(
        load,
        specimen.wholeWithin("diameters", 1, 10),
        specimen.positive("diameter-difference-percent"),
        specimen.positive("reading-mm"),
        least,
        specimen.above("length-ratio-greatest", least),
        correction.isPresent()
            ? Optional.of(LengthCorrection.parse(correction.get(), least))
            : Optional.empty(),
        file.string("standard"),
        new Rounding(
            Steps.parse(rounding, "size-mm", "size-in"),
            Steps.parse(rounding, "area-mm2", "area-in2"),
            Steps.parse(rounding, "density-kg-per-m3", "density-lb-per-ft3"),
            rounding.step("ratio"),
            correction.isPresent() ? Optional.of(rounding.step("factor")) : Optional.empty()));
  }

  @Override
  public void examine(Specimen specimen, Objections objections) {
    boolean measured = examineDiameters(specimen, objections);
    boolean hasLength =
        objections.demand(
            "length",
            specimen.lengthMillimetres(),
            load == Load.ALONG_AXIS
                ? "nobody can tell whether its proportions are right"
                : "there is no stress");
    if (measured && hasLength) {
      examineRatio(lengthRatio(specimen), objections);
    }
  }

  /** Whether every diameter is there and possible. */
  private boolean examineDiameters(Specimen specimen, Objections objections) {
    List<Double> given = specimen.diametersMillimetres();
    if (given.stream().anyMatch(diameter -> !Objections.isPlausible(diameter))) {
      objections.refuse(
          "the diameters " + given + " mm are not possible", "measure and enter them anew");
      return false;
    }
    if (given.size() < diameters) {
      objections.refuse(
          given.size() + " of " + diameters + " diameters are given",
          "measure the diameter at mid-height, at right angles, and enter each");
      return !given.isEmpty();
    }
    double percent = differencePercent(given);
    if (percent > differencePercent + Objections.HAIR) {
      objections.askReason(
          "the diameters differ by "
              + BothUnits.rounded(percent, "0.01")
              + " %, more than "
              + BothUnits.plain(differencePercent)
              + " %: "
              + standard
              + " does not allow this cylinder to be tested",
          "measure again; put it aside, or give a reason for testing it all the same");
    }
    return true;
  }

  private void examineRatio(double ratio, Objections objections) {
    String seen = "length over diameter is " + BothUnits.rounded(ratio, "0.001");
    if (ratio < leastRatio - Objections.HAIR) {
      objections.refuse(
          seen
              + ", below "
              + BothUnits.plain(leastRatio)
              + (correction.isPresent()
                  ? ", where the correction table ends"
                  : ", the least that the method is for"),
          "check the length and the diameters; such a specimen cannot be tested by " + standard);
    } else if (ratio > greatestRatio + Objections.HAIR) {
      objections.depart(
          seen
              + ", above "
              + BothUnits.plain(greatestRatio)
              + "; no correction is printed for it, and none is made",
          "check the length; shorten a core before testing it");
    }
  }

  @Override
  public Section section(Specimen specimen) {
    List<Double> measured = specimen.diametersMillimetres();
    Section.Size diameter =
        new Section.Size("diameter", measured, diameterExponent(), readingMillimetres);
    double mean = diameter.mean();
    double length = specimen.lengthMillimetres().orElseThrow();
    double area = Math.PI * mean * mean / 4;
    Optional<Section.Factor> factor = correction.flatMap(table -> table.factor(length / mean));
    List<Section.Size> sizes = new ArrayList<>(List.of(diameter));
    if (load == Load.ACROSS_AXIS) {
      sizes.add(new Section.Size("length", List.of(length), -1, readingMillimetres));
    }
    return new Section(
        load == Load.ALONG_AXIS ? area : Math.PI * length * mean / 2,
        sizes,
        properties(specimen, mean, length, area, factor),
        factor,
        Optional.of(check(measured)));
  }

  private double diameterExponent() {
    return load == Load.ALONG_AXIS ? -2 : -1;
  }

  private List<Section.Property> properties(
      Specimen specimen, double mean, double length, double area, Optional<Section.Factor> factor) {
    List<Section.Property> list = new ArrayList<>();
    list.add(Properties.area(area, rounding.area));
    list.add(Properties.size("diameter", "Mean diameter", mean, rounding.size));
    if (load == Load.ACROSS_AXIS) {
      list.add(Properties.size("length", "Length", length, rounding.size));
    }
    list.add(
        Properties.plain("length-ratio", "Length over diameter", length / mean, rounding.ratio));
    if (factor.isPresent() && rounding.factor.isPresent()) {
      list.add(
          Properties.plain(
              "correction", "Correction for length", factor.get().value(), rounding.factor.get()));
    }
    specimen
        .massKilograms()
        .ifPresent(mass -> list.add(Properties.density(mass, area * length, rounding.density)));
    return list;
  }

  private MethodResult.Check check(List<Double> measured) {
    double percent = differencePercent(measured);
    return new MethodResult.Check(
        "diameters",
        percent <= differencePercent + Objections.HAIR,
        measured.size()
            + " diameters, differing by "
            + BothUnits.rounded(percent, "0.01")
            + " %, limit "
            + BothUnits.plain(differencePercent)
            + " %");
  }

  private static double lengthRatio(Specimen specimen) {
    return specimen.lengthMillimetres().orElseThrow()
        / specimen.diametersMillimetres().stream()
            .mapToDouble(Double::doubleValue)
            .average()
            .orElseThrow();
  }

  /** Greatest less least diameter, in percent of the least. */
  private static double differencePercent(List<Double> diameters) {
    double least = Collections.min(diameters);
    return (Collections.max(diameters) - least) / least * 100;
  }
}
