package io.github.platenwire.audit;

import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.Specimen;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** Holds a specimen's row of today against the one that its test was made with. Stateless. */
final class SpecimenComparison {
  private SpecimenComparison() {}

  /** What differs: {@code what then -> what now}. */
  record Difference(String what, String then, String now) {}

  /**
   * All differences in what a figure or a comparison can rest on; notes and own columns are left
   * out.
   *
   * @param then as in the raw file's head
   * @param corrected as in the newest version of the summary: a row may say the same
   * @param now as in the table
   */
  static List<Difference> of(Specimen then, Specimen corrected, Specimen now) {
    List<Difference> differences = new ArrayList<>();
    add(differences, "series", then.series(), then.series(), now.series());
    add(differences, "shape", then.shape(), then.shape(), now.shape());
    add(
        differences,
        "diameters (mm)",
        then.diametersMillimetres(),
        corrected.diametersMillimetres(),
        now.diametersMillimetres());
    add(
        differences,
        "length (mm)",
        then.lengthMillimetres(),
        corrected.lengthMillimetres(),
        now.lengthMillimetres());
    for (Dimension dimension : Dimension.values()) {
      add(
          differences,
          dimension.headerKey(),
          then.dimension(dimension),
          corrected.dimension(dimension),
          now.dimension(dimension));
    }
    add(
        differences,
        "mass (kg)",
        then.massKilograms(),
        corrected.massKilograms(),
        now.massKilograms());
    add(differences, "cast", then.cast(), then.cast(), now.cast());
    add(
        differences,
        "planned age (d)",
        then.plannedAgeDays(),
        then.plannedAgeDays(),
        now.plannedAgeDays());
    add(differences, "ends", then.ends(), then.ends(), now.ends());
    add(differences, "curing", then.curing(), then.curing(), now.curing());
    add(differences, "moisture", then.moisture(), then.moisture(), now.moisture());
    return differences;
  }

  private static void add(
      List<Difference> differences, String what, Object then, Object corrected, Object now) {
    if (!Objects.equals(then, now) && !Objects.equals(corrected, now)) {
      differences.add(new Difference(what, words(then), words(now)));
    }
  }

  private static String words(Object value) {
    String text = value.toString().replaceFirst("^Optional(Double)?", "");
    return text.equals(".empty") || text.equals("[]")
        ? "nothing"
        : text.replaceAll("^\\[|\\]$", "");
  }
}
