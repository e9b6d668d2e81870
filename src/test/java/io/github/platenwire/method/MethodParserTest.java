package io.github.platenwire.method;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.toml.TomlException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MethodParserTest {
  private static final String SHIPPED = Bench.METHOD.text();

  @Test
  void shipped_everyName_parsesAndIsCalledThat() {
    assertThat(Methods.shippedNames()).isNotEmpty();
    for (String name : Methods.shippedNames()) {
      assertThat(Methods.shipped(name).orElseThrow().name()).isEqualTo(name);
    }
    assertThat(Methods.shipped("../secret")).isEmpty();
  }

  /** Heads of records keep their method's text; what came later must not be needed to read it. */
  @Test
  void parse_crackMethodFromBeforeLoadsWereSetAside_isReadAsItWas() throws TomlException {
    String now = Methods.shipped("split-beam").orElseThrow().text();
    String before =
        now.replaceAll("(?s)\\[load\\].*?(?=\\[machine\\])", "").replaceAll("(?m)^ask = .*$", "");
    assertThat(before).doesNotContain("[load]", "ask =");
    Method method = Method.parse(before, "split-beam.toml");
    assertThat(method.name()).isEqualTo("split-beam");
    assertThat(method.asks()).isEmpty();
  }

  @Test
  void parse_shippedText_keepsItAndNamesItsStandard() throws TomlException {
    Method method = Method.parse(SHIPPED, "mine.toml");
    assertThat(method.text()).isEqualTo(SHIPPED);
    assertThat(method.standard()).isEqualTo("ASTM C39/C39M");
    assertThat(method.title()).isEqualTo("Compressive strength of a concrete cylinder");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "platenwire-method 1\" | platenwire-method 2\" | is not possible for format",
        "kind = \"compression-cylinder\" | kind = \"tension\" | 'tension' is not possible for kind",
        "fraction = 0.95 | fractoin = 0.95 | did you mean 'fraction'",
        "fraction = 0.95 | fraction = 1.5 | 'fraction' must be above 0.0 and at most 1.0",
        "tail-seconds = 3.0 | tail-seconds = 0 | 'tail-seconds' must be greater than 0",
        "tail-seconds = 3.0 | | 'tail-seconds' is missing in [break]",
        "high-mpa-per-second = 0.30 | high-mpa-per-second = 0.1 | must be above 0.2",
        "to-share-of-peak = 0.9 | to-share-of-peak = 0.4 | must be above 0.5",
        "[1.25, 0.93] | [1.60, 0.93] | the ratios must rise",
        "[1.00, 0.87], | | must reach down to length-ratio-least",
        "[1.00, 0.87] | [1.00] | each point must be [ratio, factor]",
        "at-or-below = 1.75 | at-or-below = 1.80 | must not lie beyond the table",
        "tolerance-hours = 20.0 | tolerance-hours = -1 | must be greater than 0",
        "readings = 5 | readings = 1 | 'readings' must be from 2",
        "conditions = \"field\" | conditions = \"yard\" | 'yard' is not possible for conditions",
        "sizes-mm = [95.0, 107.0] | sizes-mm = [107.0, 95.0] | must be [least, greatest]",
        "multipliers = [2.8 | multipliers = [0 | each of the 'multipliers'",
        "strength-mpa = 0.1 | strength-mpa = 0 | must be greater than 0",
        "half-width = 0.005 | half-width = -1 | must not be below 0",
        "shapes = [\"cylinder\", \"core\"] | shapes = [] | must name at least one",
      })
  void parse_wrongValue_saysWhereAndWhatIsRight(String from, String to, String message) {
    assertThat(SHIPPED).contains(from);
    String text = SHIPPED.replace(from, to == null ? "" : to);
    assertThatThrownBy(() -> Method.parse(text, "mine.toml"))
        .isInstanceOf(TomlException.class)
        .hasMessageMatching("(?s)mine\\.toml:\\d+:\\d+: .*")
        .hasMessageContaining(message);
  }

  @Test
  void parse_otherBreakFraction_isUsed() throws TomlException {
    Method method = Method.parse(SHIPPED.replace("fraction = 0.95", "fraction = 0.5"), "mine.toml");
    MethodRun run = method.start(Bench.cylinder(100, 200), Bench.setting(Bench.kilonewtons()));
    Bench bench = new Bench(run, Unit.KILONEWTON, 100);
    bench.hold(0, 2).ramp(250, 20).hold(150, 6);
    assertThat(run.ending()).isEmpty();
    bench.hold(100, 6);
    assertThat(run.ending()).isPresent();
  }
}
