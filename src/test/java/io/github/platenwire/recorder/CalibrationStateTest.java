package io.github.platenwire.recorder;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.lab.Calibration;
import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the checklist says of a calibration that is due on 2 March 2027, day by day. */
class CalibrationStateTest {
  private static final String TEXT =
      """
      format = "platenwire-calibration 1"
      name = "cell"
      certificate = "A-17"
      laboratory = "The lab"
      date = 2026-03-02
      due = 2027-03-02
      """;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2026-03-01 | false | : dated after the test",
        "2026-03-02 | true  | : in date",
        "2027-01-30 | true  | : in date",
        "2027-01-31 | true  | : in date, 30 days left",
        "2027-03-01 | true  | : in date, 1 day left",
        "2027-03-02 | true  | : in date, 0 days left",
        "2027-03-03 | false | : out of date"
      })
  void on_everyDay_saysWhetherItHoldsAndHowLong(LocalDate today, boolean inOrder, String ending)
      throws Exception {
    Calibration calibration = Calibration.parse(TEXT, "cell.toml", "cell");
    CalibrationState state = CalibrationState.on(Optional.of(calibration), today);
    assertThat(state.inOrder()).isEqualTo(inOrder);
    assertThat(state.words()).startsWith("certificate A-17 of The lab").endsWith(ending);
  }
}
