package io.github.platenwire.study;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.quantity.UnitSystem;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** A lab folder with closed tests that were never recorded: their summaries are written by hand. */
public final class StudyLab {
  /** When the first specimen of each age was cast is this long before the day of its test. */
  public static final Instant DAY = Instant.parse("2026-11-25T08:00:00Z");

  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private final Path root;
  private final UnitSystem unitsFirst;
  private final StringBuilder study;
  private final StringBuilder specimens =
      new StringBuilder(
          "specimen,series,shape,diameter_1_mm,diameter_2_mm,length_mm,cast,age_days,ends\n");
  private final List<String> rows = new ArrayList<>();
  private int tests;
  private String rig = "frame-1";
  private String certificate = "certificate C-1 of lab, 2026-08-27, due 2027-08-27: in date";

  /** A lab whose plan begins as given; the series are added. */
  public StudyLab(Path root, UnitSystem unitsFirst, String reference, String ages) {
    this.root = root;
    this.unitsFirst = unitsFirst;
    this.study =
        new StringBuilder(
            "format = \"platenwire-study 1\"\ntitle = \"Footbridge over Alder Weir\"\nreference = \""
                + reference
                + "\"\nages-days = "
                + ages
                + "\nreplicates = 3\n");
  }

  /** Adds a series to the plan, with further lines of TOML. */
  public StudyLab series(String name, String... lines) {
    study.append("\n[[series]]\nname = \"").append(name).append("\"\n");
    Arrays.stream(lines).forEach(line -> study.append(line).append('\n'));
    return this;
  }

  /** From now on the tests are done on another frame, or under another certificate. */
  public StudyLab on(String newRig, String newCertificate) {
    rig = newRig;
    certificate = newCertificate;
    return this;
  }

  /** Adds a row of the table: a cylinder cast so many hours before {@link #DAY}. */
  public StudyLab waiting(String name, String series, double ageDays, double castHoursBefore) {
    specimens.append(
        String.format(
            Locale.ROOT,
            "%s,%s,cylinder,100,100,200,%s,%s,ground%n",
            name,
            series,
            cast(castHoursBefore).replace('T', ' '),
            ageDays));
    return this;
  }

  /** Adds any row of the table. */
  public StudyLab row(String row) {
    specimens.append(row).append('\n');
    return this;
  }

  private static String cast(double hoursBefore) {
    return STAMP_LOCAL.format(DAY.minusSeconds(Math.round(hoursBefore * 3600)));
  }

  private static final DateTimeFormatter STAMP_LOCAL =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss", Locale.ROOT).withZone(ZoneOffset.UTC);

  /** Cylinders of one series and age that broke on {@link #DAY}, named SERIES-AGE-1 and so on. */
  public StudyLab cylinders(String series, int ageDays, double... megapascals) {
    return cylinders(series, ageDays, "around", megapascals);
  }

  /** The same with what the operator saw of the aggregate. */
  public StudyLab cylinders(String series, int ageDays, String aggregate, double... megapascals) {
    for (int i = 0; i < megapascals.length; i++) {
      String name = String.format(Locale.ROOT, "%s-%02d-%d", series, ageDays, i + 1);
      waiting(name, series, ageDays, ageDays * 24.0);
      cylinder(name, series, ageDays, ageDays * 24.0, megapascals[i], aggregate, "break");
    }
    return this;
  }

  /** One closed test of a cylinder that is so old. */
  public StudyLab cylinder(
      String name,
      String series,
      int ageDays,
      double ageHours,
      double megapascals,
      String aggregate,
      String reason) {
    double newtons = megapascals * Math.PI * 2500;
    String results =
        figure("strength", "Compressive strength", megapascals, "MPa", "psi", 0.005)
            + ","
            + figure("peak-load", "Greatest load", newtons / 1000, "kN", "lbf", 0.005)
            + ","
            + figure("diameter", "Mean diameter", 100, "mm", "in", 0);
    return summary(
        name,
        series,
        "cylinder",
        ageDays,
        ageHours,
        "compression-cylinder-c39",
        reason,
        results,
        "null",
        "\"aggregate\" : \"" + aggregate + "\", \"notes\" : null");
  }

  /** A split beam whose crack opens by so much for each kilonewton above the first crack. */
  public StudyLab beam(
      String name,
      String series,
      int ageDays,
      double millimetresPerKilonewton,
      double lastNewtons) {
    double crack = 8000;
    StringBuilder loads = new StringBuilder();
    StringBuilder widths = new StringBuilder();
    for (double load = 0; load <= lastNewtons; load += 250) {
      loads.append(load == 0 ? "" : ",").append(load);
      double width = Math.max(0, (load - crack) / 1000 * millimetresPerKilonewton);
      widths.append(load == 0 ? "" : ",").append(width);
    }
    String curve =
        "{\"gauges\":[\"gauge-a\"],\"load_n\":["
            + loads
            + "],\"width_mm\":["
            + widths
            + "],\"gauge_mask\":[],\"row\":[]}";
    double width = (12_000 - crack) / 1000 * millimetresPerKilonewton;
    String results =
        figure("width-at-12-kN", "Crack width at 12 kN", width, "mm", "in", 0.005)
            .replace("noise before loading", "gauges: noise and resolution");
    return summary(
        name,
        series,
        "beam",
        ageDays,
        ageDays * 24.0,
        "split-beam",
        "operator",
        results,
        curve,
        "\"notes\" : null");
  }

  /** What is seen of the bar on beams of one series, named SERIES-1 and so on. */
  public StudyLab beams(String series, int ageDays, String... imprints) {
    for (int i = 0; i < imprints.length; i++) {
      summary(
          series + "-" + (i + 1),
          series,
          "beam",
          ageDays,
          ageDays * 24.0,
          "split-beam",
          "break",
          figure("peak-load", "Greatest load", 20 + i, "kN", "lbf", 0.005),
          "null",
          "\"imprint\" : \"" + imprints[i] + "\"");
    }
    return this;
  }

  /**
   * Fronts of one series that go straight, named SERIES-1 and so on; of no known age where it is 0.
   *
   * @param millimetresPerMinute how fast each goes
   */
  public StudyLab fronts(String series, int ageDays, double... millimetresPerMinute) {
    for (int i = 0; i < millimetresPerMinute.length; i++) {
      double rate = millimetresPerMinute[i];
      summary(
          series + "-" + (i + 1),
          series,
          "disc",
          ageDays,
          ageDays * 24.0,
          "front-advance",
          "operator",
          figure("readings", "Readings that count", 9, "1", "1", 0)
              + ","
              + figure(
                  "rate-in-time", "Advance along the line in time", rate, "mm/min", "in/min", 0)
              + ","
              + figure("rate-in-root-time", "Advance in the root", rate, "mm/√s", "in/√s", 0)
              + ","
              + figure(
                  "time-to-50-mm-in-time", "Time to 50 mm (1.97 in)", 50 / rate, "min", "min", 0)
              + ","
              + figure(
                  "time-to-50-mm-in-time-from", "Earliest time to it", 45 / rate, "min", "min", 0),
          "null",
          "\"notes\" : null");
    }
    return this;
  }

  /** One closed test of any method that came to one figure. */
  public StudyLab other(
      String name, String series, int ageDays, String method, String figure, double value) {
    return summary(
        name,
        series,
        "cylinder",
        ageDays,
        ageDays * 24.0,
        method,
        "break",
        figure(figure, "Compressive strength", value, "MPa", "psi", 0.005),
        "null",
        "\"notes\" : null");
  }

  /** Moduli of one series, named SERIES-E-1 and so on. */
  public StudyLab moduli(String series, int ageDays, double... megapascals) {
    for (int i = 0; i < megapascals.length; i++) {
      summary(
          series + "-E-" + (i + 1),
          series,
          "cylinder",
          ageDays,
          ageDays * 24.0,
          "modulus-c469",
          "complete",
          figure(
              "modulus",
              "Modulus of elasticity, mean of 2 cycles after the first",
              megapascals[i],
              "MPa",
              "psi",
              0.005),
          "null",
          "\"notes\" : null");
    }
    return this;
  }

  private static String figure(
      String name, String title, double value, String unit, String other, double frameShare) {
    String budget =
        frameShare == 0
            ? ""
            : String.format(
                Locale.ROOT,
                "\"uncertainty\":{\"budget\":[{\"source\":\"load: calibration certificate\","
                    + "\"contribution\":%s,\"degrees_of_freedom\":null},{\"source\":\"noise before"
                    + " loading\",\"contribution\":0.001,\"degrees_of_freedom\":30}]},",
                value * frameShare);
    return String.format(
        Locale.ROOT,
        "{\"name\":\"%s\",\"title\":\"%s\",\"value\":%s,\"unit\":\"%s\",\"rounded\":\"%.1f\","
            + "\"inch_pound\":{\"rounded\":\"1\",\"unit\":\"%s\"},%s\"rows\":[42,41,43]}",
        name,
        title,
        value,
        unit,
        value,
        other,
        budget);
  }

  private StudyLab summary(
      String name,
      String series,
      String shape,
      int ageDays,
      double ageHours,
      String method,
      String reason,
      String results,
      String curve,
      String observed) {
    Instant start = DAY.plus(Duration.ofMinutes(6L * tests++));
    String test = STAMP.format(start) + "_" + name;
    rows.add(
        test
            + "|"
            + String.format(
                Locale.ROOT,
                "{\"format\":\"platenwire-summary 1\",\"test\":\"%s\",\"program\":\"test\","
                    + "\"specimen\":{\"name\":\"%s\",\"series\":\"%s\",\"shape\":\"%s\",\"cast\":%s,"
                    + "\"planned_age_days\":%s,\"as_written\":{}},\"rig\":{\"name\":\"%s\"},"
                    + "\"method\":{\"name\":\"%s\",\"title\":\"A method\",\"standard\":\"A standard\"},"
                    + "\"times\":{\"start\":\"%s\",\"zone\":\"UTC\"},\"raw\":{\"file\":\"%s.raw.csv\","
                    + "\"sha256\":\"00\",\"rows\":100,\"reason\":\"%s\"},\"results\":[%s],"
                    + "\"checks\":[],\"departures\":[],\"suspect_rows\":[],\"virgin_curve\":%s,"
                    + "\"channels\":[{\"name\":\"load\",\"unit\":\"kN\",\"readings\":99,\"marked\":0,"
                    + "\"calibration\":\"%s\"}],\"observations\":{%s},\"failure\":null,"
                    + "\"register\":{\"witness_before\":null}}",
                test,
                name,
                series,
                shape,
                ageDays == 0
                    ? "null"
                    : '"'
                        + STAMP_LOCAL.format(start.minusSeconds(Math.round(ageHours * 3600)))
                        + '"',
                ageDays == 0 ? "null" : Integer.toString(ageDays),
                rig,
                method,
                start,
                test,
                reason,
                results,
                curve,
                certificate,
                observed));
    return this;
  }

  /** Makes the folder. */
  public LabFolder make() throws LabException, IOException {
    LabTemplate template =
        LabTemplate.example("Weir lab", ZoneOffset.UTC, unitsFirst)
            .withSpecimens(specimens.toString().replace("\r", ""))
            .withStudy(study.toString());
    LabFolder lab = LabFolder.create(root, template);
    Path month = Files.createDirectories(root.resolve("records").resolve("2026-11"));
    for (String row : rows) {
      String test = row.substring(0, row.indexOf('|'));
      Files.writeString(month.resolve(test + ".raw.csv"), "# raw\n");
      Files.writeString(month.resolve(test + ".summary.json"), row.substring(row.indexOf('|') + 1));
    }
    return lab;
  }

  /** Makes the folder and reads its study. */
  public StudyData data() {
    try {
      return StudyData.read(make());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (LabException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Names and contents of every file, to see that nothing was changed. */
  static List<String> fingerprint(Path folder) throws IOException {
    try (var files = Files.walk(folder)) {
      return files
          .filter(Files::isRegularFile)
          .sorted()
          .map(
              file -> {
                try {
                  return file + " " + Arrays.hashCode(Files.readAllBytes(file));
                } catch (IOException e) {
                  throw new UncheckedIOException(e);
                }
              })
          .collect(Collectors.toList());
    }
  }
}
