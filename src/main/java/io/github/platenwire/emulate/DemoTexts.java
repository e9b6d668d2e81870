package io.github.platenwire.emulate;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;

/** Writes the demo's study as the files of a lab folder. Stateless. */
final class DemoTexts {
  private static final String HEADER =
      "specimen,series,shape,diameter_1_mm,diameter_2_mm,length_mm,mass_g,cast,age_days,"
          + "ends,curing,moisture,notes,width_mm,depth_mm,bar_diameter_mm,cover_mm\n";

  private static final String STUDY =
      """
      format = "platenwire-study 1"
      title = "Footbridge over Alder Weir: recycled against natural aggregate"
      reference = "NA-T"
      ages-days = [3, 7, 28]
      replicates = 3
      """;

  /** The recycled mix was cast before this folder was begun; its three-day tests are past. */
  private static final String WITHOUT_THREE_DAYS = "ages-days = [7, 28]\n";

  private static final String BEAMS = "method = \"split-beam\"\nages-days = [7]\n";

  private DemoTexts() {}

  static String specimens(List<DemoSpecimen> today, List<DemoSpecimen> waiting) {
    StringBuilder table = new StringBuilder(HEADER);
    today.forEach(specimen -> table.append(row(specimen, "")));
    waiting.forEach(specimen -> table.append(row(specimen, "not yet broken")));
    for (DemoBeam beam : DemoBeam.ALL) {
      table.append(beam.row(today.get(0).cast().toString().replace('T', ' ')));
    }
    return table.toString();
  }

  static String study(String tank, String sacking) {
    return STUDY
        + series("NA-T", "natural aggregate, tank", "NA", tank)
        + series("NA-S", "natural aggregate, site", "NA", sacking)
        + series("RA-T", "recycled aggregate, tank", "RA", tank)
        + WITHOUT_THREE_DAYS
        + series("RA-S", "recycled aggregate, site", "RA", sacking)
        + WITHOUT_THREE_DAYS
        + series("NA-PB", "natural aggregate, plain bar", "NA", tank)
        + bar("plain, well bonded")
        + series("NA-CB", "natural aggregate, coated bar", "NA", tank)
        + bar("coated, poorly bonded")
        + "reference = \"NA-PB\"\n";
  }

  private static String bar(String words) {
    return "bar = \"" + words + "\"\n" + BEAMS;
  }

  static String rig(String rigName, String port, String device, String calibration) {
    return String.format(
        Locale.ROOT,
        """
      format = "platenwire-rig 1"
      name = %s
      title = "Frame 1, emulated, 1500 kN"

      [[channel]]
      name = "load"
      quantity = "force"
      unit = "kN"
      port = %s
      device = %s
      calibration = "%s"
      range = [-15, 1500]
      zero-tolerance = 5
      resolution = 0.05
      greatest-slope = 50
      """,
        quoted(rigName),
        quoted(port),
        quoted(device),
        calibration);
  }

  static String calibration(String name, String certificate, LocalDate date) {
    return String.format(
        Locale.ROOT,
        """
      format = "platenwire-calibration 1"
      name = "%s"
      certificate = "%s"
      laboratory = "none: this frame is emulated"
      date = %s
      due = %s
      class = "1"
      expanded-uncertainty-percent = 0.5
      """,
        name,
        certificate,
        date,
        date.plusYears(1));
  }

  private static String series(String name, String label, String mix, String curing) {
    return String.format(
        Locale.ROOT,
        """

      [[series]]
      name = "%s"
      label = "%s"
      mix = "%s"
      placing = "hand-rodded"
      curing = "%s"
      """,
        name,
        label,
        mix,
        curing);
  }

  private static String row(DemoSpecimen specimen, String notes) {
    return String.join(
            ",",
            specimen.name(),
            specimen.series(),
            "cylinder",
            plain(specimen.firstDiameterMillimetres()),
            plain(specimen.secondDiameterMillimetres()),
            plain(specimen.lengthMillimetres()),
            Long.toString(specimen.massGrams()),
            specimen.cast().toString().replace('T', ' '),
            Integer.toString(specimen.ageDays()),
            "ground",
            specimen.curing(),
            "moist",
            notes,
            ",,,")
        + "\n";
  }

  private static String plain(double value) {
    return BigDecimal.valueOf(value).toPlainString();
  }

  /** A TOML basic string. */
  private static String quoted(String text) {
    return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }
}
