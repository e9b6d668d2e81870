package io.github.platenwire.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class CalibrationRunsTest {
  private static final String TEXT =
      """
      unit = "kN"
      resolution = 0.1
      [[run]]
      direction = "ascending"
      rows = [[100, 100.2], [200, 200.1]]
      zero-after = 0.1
      [[run]]
      direction = "descending"
      rows = [[200, 200.3], [100, 100.4]]
      """;

  private static CalibrationRuns parse(String text) throws TomlException {
    return CalibrationRuns.parse(TomlSection.parse(text, "c.toml"));
  }

  @Test
  void parse_everyKey_givesIt() throws TomlException {
    CalibrationRuns runs = parse(TEXT);
    assertThat(runs.unit()).isEqualTo(Unit.KILONEWTON);
    assertThat(runs.resolution()).hasValue(0.1);
    assertThat(runs.steps()).isEqualTo(2);
    assertThat(runs.ascending().get(0).zeroAfter()).isEqualTo(OptionalDouble.of(0.1));
    assertThat(runs.descending().get(0).points().get(0))
        .isEqualTo(new CalibrationPoint(200, 200.3));
    assertThat(runs.mean(1)).isEqualTo(new CalibrationPoint(200, 200.1));
  }

  static Stream<Arguments> wrong() {
    return Stream.of(
        arguments("\"kN\"", "\"lb\"", "1:1: 'lb' is a mass; a load in pounds is written 'lbf'"),
        arguments(
            "\"kN\"",
            "\"psi\"",
            "1:1: 'psi' is no unit of force or length; possible: N, kN, MN, lbf, kip, kgf, tf, mm,"
                + " µm, cm, m, in, mil"),
        arguments("resolution = 0.1", "resolution = 0", "2:1: 'resolution' must be greater than 0"),
        arguments(
            "[100, 100.2]",
            "[0, 0.2]",
            "5:1: row 1 of 'rows' applies 0; it must be more than 0 (what is shown with nothing"
                + " applied goes into 'zero-after')"),
        arguments(
            "[100, 100.2]",
            "[100]",
            "5:1: row 1 of 'rows' must be two numbers, [applied, indicated]"),
        arguments(
            "[200, 200.1]",
            "[90, 200.1]",
            "5:1: row 2 of 'rows' applies 90 after 100, but this run ascends"),
        arguments(
            "[200, 200.3]",
            "[50, 200.3]",
            "9:1: row 2 of 'rows' applies 100 after 50, but this run descends"),
        arguments(
            "[100, 100.4]",
            "[150, 100.4]",
            "9:1: a descending run may have only steps of an ascending run that stands before it;"
                + " 150 is none"),
        arguments(
            "direction = \"descending\"\nrows = [[200, 200.3], [100, 100.4]]",
            "direction = \"ascending\"\nrows = [[100, 100.3], [220, 220.4]]",
            "9:1: row 2 applies 220, but in the first ascending run it applies 200; the same step"
                + " may differ by 5 %"),
        arguments(
            "direction = \"descending\"\nrows = [[200, 200.3], [100, 100.4]]",
            "direction = \"ascending\"\nrows = [[100, 100.3]]",
            "9:1: each ascending run must have the same steps; the first has 2 rows, this one 1"),
        arguments(
            "\"descending\"",
            "\"falling\"",
            "8:1: 'falling' is not possible for direction; possible: ascending, descending"));
  }

  @ParameterizedTest(name = "{0} -> {1}")
  @MethodSource("wrong")
  void parse_wrongValue_saysLineAndWhatIsRight(String right, String wrong, String message) {
    assertThatThrownBy(() -> parse(TEXT.replace(right, wrong)))
        .isInstanceOf(TomlException.class)
        .hasMessage("c.toml:" + message);
  }

  @ParameterizedTest
  @ValueSource(strings = {"iso-7500-1", "iso-9513", "astm-e4", "astm-e83"})
  void shipped_everyStandard_hasItsOwnName(String name) {
    assertThat(LimitTable.shippedNames()).contains(name);
    assertThat(LimitTable.shipped(name).name()).isEqualTo(name);
  }
}
