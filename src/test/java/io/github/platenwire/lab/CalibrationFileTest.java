package io.github.platenwire.lab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import io.github.platenwire.calibration.CorrectionFit;
import io.github.platenwire.calibration.CorrectionKind;
import io.github.platenwire.calibration.ScaleCorrection;
import io.github.platenwire.calibration.TableCorrection;
import io.github.platenwire.toml.TomlException;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class CalibrationFileTest {
  /** Each run shows 0.4 % too much, so that every figure can be told by hand. */
  static final String TEXT =
      """
      format = "platenwire-calibration 1"
      name = "cell-1"
      certificate = "C-0001"
      laboratory = "invented"
      date = 2026-03-02
      due = 2027-03-02
      class = "1"
      class-from = 200
      standard = "iso-7500-1"
      expanded-uncertainty-percent = 0.6
      correction = "table"
      unit = "kN"
      resolution = 0.1
      [[run]]
      direction = "ascending"
      rows = [[100, 100.4], [200, 200.8], [400, 401.6]]
      zero-after = 0.0
      [[run]]
      direction = "ascending"
      rows = [[100, 100.4], [200, 200.8], [400, 401.6]]
      """;

  private static Calibration parse(String text) throws TomlException {
    return Calibration.parse(text, "cell-1.toml", "cell-1");
  }

  @Test
  void parse_everyKey_givesIt() throws TomlException {
    Calibration calibration = parse(TEXT);
    assertThat(calibration.classFrom()).hasValue(200);
    assertThat(calibration.limits().name()).isEqualTo("iso-7500-1");
    assertThat(calibration.kind(Optional.empty())).isEqualTo(CorrectionKind.TABLE);
    assertThat(calibration.fit(Optional.empty()).correction().apply(200.8)).isEqualTo(200);
    assertThat(calibration.text()).isEqualTo(TEXT);
  }

  @Test
  void kind_rigFileChooses_winsOverTheCalibrationFile() throws TomlException {
    Calibration calibration = parse(TEXT);
    CorrectionFit fit = calibration.fit(Optional.of(CorrectionKind.SCALE));
    assertThat(((ScaleCorrection) fit.correction()).factor()).isCloseTo(1 / 1.004, within(1e-12));
    assertThat(calibration.fit(Optional.empty()).correction()).isInstanceOf(TableCorrection.class);
  }

  @Test
  void residualPercent_notCorrected_isWhatIsLeftOver() throws TomlException {
    Calibration calibration = parse(TEXT);
    // not corrected, 0.4 % is left over everywhere: 2 x 0.4 = 0.8 by hand
    CorrectionFit none = calibration.fit(Optional.of(CorrectionKind.NONE));
    assertThat(calibration.residualPercent(none).orElseThrow()).isCloseTo(0.8, within(1e-9));
    CorrectionFit table = calibration.fit(Optional.empty());
    assertThat(calibration.residualPercent(table).orElse(0)).isCloseTo(0, within(1e-9));
    assertThat(calibration.expandedUncertaintyPercent()).hasValue(0.6);
  }

  @Test
  void limits_noStandardStated_isTheUsualOne() throws TomlException {
    assertThat(parse(TEXT.replace("standard = \"iso-7500-1\"\n", "")).limits().name())
        .isEqualTo("iso-7500-1");
    String gauge = TEXT.replace("standard = \"iso-7500-1\"\n", "").replace("\"kN\"", "\"mm\"");
    assertThat(parse(gauge).limits().name()).isEqualTo("iso-9513");
  }

  static Stream<Arguments> wrong() {
    return Stream.of(
        arguments(
            "\"iso-7500-1\"",
            "\"iso-7500\"",
            "9:1: 'iso-7500' is not possible for standard, did you mean 'iso-7500-1'? Possible:"
                + " iso-7500-1, iso-9513, astm-e4, astm-e83"),
        arguments(
            "\"iso-7500-1\"",
            "\"iso-9513\"",
            "9:1: ISO 9513 is for a length, but the runs are in kN"),
        arguments(
            "class-from = 200",
            "class-from = 500",
            "8:1: 'class-from' must be more than 0 and at most the greatest applied value, 400, but"
                + " it is 500"),
        arguments("class = \"1\"\n", "", "7:1: 'class-from' needs 'class'"),
        arguments(
            "correction = \"table\"",
            "correction = \"table\"\nscale = 1.01",
            "12:1: 'scale' is of no use where 'correction' is anything but \"scale\""),
        arguments(
            "correction = \"table\"",
            "correction = \"polynomial\"\ndegree = 9",
            "12:1: 'degree' must be 1 to 4, but it is 9"),
        arguments(
            "[400, 401.6]",
            "[400, 150]",
            "11:1: a table must rise from point to point, but after applied 200 indicated 200.8"
                + " comes applied 400 indicated 150"));
  }

  @ParameterizedTest(name = "{0} -> {1}")
  @MethodSource("wrong")
  void parse_wrongValue_saysLineAndWhatIsRight(String right, String wrong, String message) {
    assertThatThrownBy(() -> parse(TEXT.replace(right, wrong)))
        .isInstanceOf(TomlException.class)
        .hasMessage("cell-1.toml:" + message);
  }

  @Test
  void parse_tableWithoutRuns_isRefused() {
    String text = TEXT.substring(0, TEXT.indexOf("class-from")) + "correction = \"table\"\n";
    assertThatThrownBy(() -> parse(text))
        .hasMessage(
            "cell-1.toml:8:1: the correction 'table' has to be computed from runs, but the"
                + " calibration 'cell-1' holds none; add [[run]] tables to it");
  }

  @Test
  void parse_unitWithoutRuns_isRefused() {
    String text = TEXT.substring(0, TEXT.indexOf("class-from")) + "unit = \"kN\"\n";
    assertThatThrownBy(() -> parse(text))
        .hasMessage(
            "cell-1.toml:8:1: 'unit' says something of runs, but there is no [[run]] in this file");
  }
}
