package io.github.platenwire.lab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import io.github.platenwire.calibration.ScaleCorrection;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.toml.TomlException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The files lab.toml, study.toml and calibrations/NAME.toml. */
class LabFilesTest {
  private static final String LAB =
      """
      format = "platenwire-lab 1"
      name = "Weir lab"
      units-first = "inch-pound"
      zone = "UTC"
      """;

  private static final String CALIBRATION =
      """
      format = "platenwire-calibration 1"
      name = "cell-1"
      certificate = "C-0001"
      laboratory = "invented"
      date = 2026-03-02
      """;

  private static final String STUDY =
      """
      format = "platenwire-study 1"
      title = "Weir"
      reference = "NA-T"
      ages-days = [3, 7, 28]
      replicates = 3
      [[series]]
      name = "NA-T"
      label = "Natural, tank"
      mix = "NA"
      placing = "poured"
      curing = "tank"
      bar = "plain"
      [[series]]
      name = "RA-S"
      ages-days = [0.5, 28]
      replicates = 2
      """;

  @Test
  void lab_everyKey_givesIt() throws TomlException {
    assertThat(LabSettings.parse(LAB, "lab.toml"))
        .isEqualTo(new LabSettings("Weir lab", UnitSystem.INCH_POUND, ZoneId.of("UTC")));
  }

  static Stream<Arguments> wrongLab() {
    return Stream.of(
        arguments(
            "platenwire-lab 1",
            "platenwire-lab 2",
            "1:1: 'platenwire-lab 2' is newer than this Platenwire, which reads \"platenwire-lab"
                + " 1\""),
        arguments(
            "name = \"Weir lab\"\n",
            "",
            "1:1: 'name' is missing; it must be a text, such as name = \"…\""),
        arguments(
            "inch-pound",
            "imperial",
            "3:1: 'imperial' is not possible for units-first; possible: si, inch-pound"),
        arguments(
            "\"UTC\"",
            "\"Eurpe/Berlin\"",
            "4:1: 'Eurpe/Berlin' is no time zone, did you mean 'Europe/Berlin'?"),
        arguments(
            "\"UTC\"",
            "\"our local time zone\"",
            "4:1: 'our local time zone' is no time zone; write \"UTC\" or a name of the form"
                + " \"Area/City\""),
        arguments(
            "zone",
            "time-zone",
            "4:1: unknown key 'time-zone'; known here: format, name,"
                + " shared-register, units-first, zone"));
  }

  @ParameterizedTest(name = "{0} -> {1}")
  @MethodSource("wrongLab")
  void lab_wrongKeyOrValue_saysLineAndColumn(String right, String wrong, String message) {
    assertThatThrownBy(() -> LabSettings.parse(LAB.replace(right, wrong), "lab.toml"))
        .isInstanceOf(TomlException.class)
        .hasMessage("lab.toml:" + message);
  }

  @Test
  void calibration_onlyWhatIsNeeded_correctsNothing() throws TomlException {
    assertThat(Calibration.parse(CALIBRATION, "calibrations/cell-1.toml", "cell-1"))
        .isEqualTo(
            new Calibration(
                "cell-1",
                "C-0001",
                "invented",
                LocalDate.of(2026, 3, 2),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                2,
                Optional.empty(),
                CALIBRATION));
  }

  @Test
  void calibration_everyKey_givesIt() throws TomlException {
    String text =
        CALIBRATION
            + "due = 2027-03-02\nclass = \"1\"\nexpanded-uncertainty-percent = 0.5\nscale = 1.002\n";
    Calibration calibration = Calibration.parse(text, "calibrations/cell-1.toml", "cell-1");
    assertThat(calibration.due()).contains(LocalDate.of(2027, 3, 2));
    assertThat(calibration.accuracyClass()).contains("1");
    assertThat(calibration.expandedUncertaintyPercent()).hasValue(0.5);
    assertThat(calibration.fit(Optional.empty()).correction())
        .isEqualTo(new ScaleCorrection(1.002));
    assertThat(calibration.expandedPercent(calibration.fit(Optional.empty()))).hasValue(0.5);
  }

  static Stream<Arguments> wrongCalibration() {
    return Stream.of(
        arguments(
            "\"cell-1\"",
            "\"cell-2\"",
            "2:1: the name in the file is 'cell-2', but the file is called cell-1.toml; the two must"
                + " be the same"),
        arguments("\"C-0001\"", "\"\"", "3:1: 'certificate' is empty"),
        arguments(
            "date = 2026-03-02\n",
            "",
            "1:1: 'date' is missing; it must be a date, such as date = 2026-03-02"),
        arguments(
            "2026-03-02",
            "\"2026-03-02\"",
            "5:1: 'date' must be a date without quotes, such as 2026-11-25, but it is the text"
                + " \"2026-03-02\""),
        arguments(
            "2026-03-02",
            "2026-03-02\ndue = 2026-03-02",
            "6:1: 'due' must be after 'date', 2026-03-02, but it is 2026-03-02"),
        arguments(
            "2026-03-02",
            "2026-03-02\nexpanded-uncertainty-percent = 0",
            "6:1: 'expanded-uncertainty-percent' must be more than 0 and at most 100, but it is 0"),
        arguments(
            "2026-03-02",
            "2026-03-02\nscale = 0",
            "6:1: 'scale' must not be 0; 1 leaves the value as it is"),
        arguments(
            "2026-03-02",
            "2026-03-02\nscales = 2",
            "6:1: unknown key 'scales', did you mean 'scale'?"));
  }

  @ParameterizedTest(name = "{0} -> {1}")
  @MethodSource("wrongCalibration")
  void calibration_wrongKeyOrValue_saysLineAndColumn(String right, String wrong, String message) {
    assertThatThrownBy(
            () -> Calibration.parse(CALIBRATION.replace(right, wrong), "cell-1.toml", "cell-1"))
        .isInstanceOf(TomlException.class)
        .hasMessage("cell-1.toml:" + message);
  }

  @Test
  void study_everyKey_givesIt() throws TomlException {
    Study study = Study.parse(STUDY, "study.toml");
    assertThat(study.title()).isEqualTo("Weir");
    assertThat(study.reference()).isEqualTo("NA-T");
    assertThat(study.text()).isEqualTo(STUDY);
    assertThat(study.series())
        .containsExactly(
            new Study.Series(
                "NA-T",
                "Natural, tank",
                Optional.of("NA"),
                Optional.of("poured"),
                Optional.of("tank"),
                Optional.of("plain"),
                Optional.empty(),
                Optional.empty(),
                java.util.List.of(3.0, 7.0, 28.0),
                3),
            new Study.Series(
                "RA-S",
                "RA-S",
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                java.util.List.of(0.5, 28.0),
                2));
    assertThat(study.find("RA-S")).contains(study.series().get(1));
    assertThat(study.find("ra-s")).isEmpty();
  }

  @Test
  void study_method_isTheSeriesOwnOrTheStudys() throws TomlException {
    String text =
        STUDY
            .replace("replicates = 3", "replicates = 3\nmethod = \"compression-cylinder-c39\"")
            .replace("bar = \"plain\"", "bar = \"plain\"\nmethod = \"split-beam\"");
    assertThat(Study.parse(text, "study.toml").series())
        .extracting(Study.Series::method)
        .containsExactly(Optional.of("split-beam"), Optional.of("compression-cylinder-c39"));
  }

  @Test
  void study_ownReference_isHeldAgainstThat() throws TomlException {
    String own = "name = \"PB\"\n[[series]]\nname = \"CB\"\nreference = \"PB\"\n";
    Study study = Study.parse(STUDY + "[[series]]\n" + own, "study.toml");
    assertThat(study.referenceOf("CB")).isEqualTo("PB");
    assertThat(study.referenceOf("RA-S")).isEqualTo("NA-T");
    assertThatThrownBy(() -> Study.parse(STUDY + "reference = \"RA-S\"\n", "study.toml"))
        .hasMessageContaining("study.toml:17:")
        .hasMessageContaining("against itself");
    assertThatThrownBy(() -> Study.parse(STUDY + "reference = \"NA-S\"\n", "study.toml"))
        .hasMessageContaining("study.toml:17:")
        .hasMessageContaining("is none of the series");
  }

  static Stream<Arguments> wrongStudy() {
    return Stream.of(
        arguments(
            "reference = \"NA-T\"",
            "reference = \"NA-X\"",
            "3:1: the reference 'NA-X' is none of the series; did you mean 'NA-T'?"),
        arguments(
            "reference = \"NA-T\"",
            "reference = \"none of them\"",
            "3:1: the reference 'none of them' is none of the series; there are: NA-T, RA-S"),
        arguments(
            "[3, 7, 28]",
            "[3, 28, 7]",
            "4:1: 'ages-days' must be rising ages in days, greater than 0, such as [3, 7, 28]"),
        arguments(
            "[3, 7, 28]",
            "[0, 7]",
            "4:1: 'ages-days' must be rising ages in days, greater than 0, such as [3, 7, 28]"),
        arguments(
            "replicates = 3", "replicates = 0", "5:1: 'replicates' must be 1 to 1000, but it is 0"),
        arguments(
            "replicates = 3",
            "replicates = 2.5",
            "5:1: 'replicates' must be a whole number, but it is 2.5"),
        arguments(
            "\"RA-S\"",
            "\"NA-T\"",
            "14:1: there is a series 'NA-T' already; each needs its own name"),
        arguments("placing", "plasing", "10:1: unknown key 'plasing', did you mean 'placing'?"));
  }

  @ParameterizedTest(name = "{0} -> {1}")
  @MethodSource("wrongStudy")
  void study_wrongKeyOrValue_saysLineAndColumn(String right, String wrong, String message) {
    assertThatThrownBy(() -> Study.parse(STUDY.replace(right, wrong), "study.toml"))
        .isInstanceOf(TomlException.class)
        .hasMessage("study.toml:" + message);
  }

  @Test
  void study_noSeries_refuses() {
    assertThatThrownBy(
            () -> Study.parse(STUDY.substring(0, STUDY.indexOf("[[series]]")), "study.toml"))
        .hasMessage("study.toml:1:1: a study needs at least one series, begun by [[series]]");
  }
}
