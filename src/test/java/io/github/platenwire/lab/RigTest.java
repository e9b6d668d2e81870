package io.github.platenwire.lab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.method.GaugeMount;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.toml.TomlException;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class RigTest {
  private static final String RIG =
      """
      format = "platenwire-rig 1"
      name = "frame-1"
      title = "Frame"

      [[channel]]
      name = "load"
      quantity = "force"
      unit = "kN"
      port = "/dev/ttyUSB0"
      device = "some-device"
      range = [0, 2000]
      """;

  private static final String FULL =
      RIG
          + """
          field = "first"
          delay-ms = 12.5
          calibration = "cell-1"
          zero-tolerance = 3
          late-after-ms = 250
          resolution = 0.1
          greatest-slope = 90
          """;

  private static Rig parse(String text) throws TomlException {
    return Rig.parse(text, "rigs/frame-1.toml", "frame-1");
  }

  @Test
  void parse_everyKey_givesIt() throws TomlException {
    Rig rig = parse(FULL);
    assertThat(rig.name()).isEqualTo("frame-1");
    assertThat(rig.title()).isEqualTo("Frame");
    assertThat(rig.text()).isEqualTo(FULL);
    assertThat(rig.channels())
        .containsExactly(
            new Channel(
                "load",
                Quantity.FORCE,
                Unit.KILONEWTON,
                "/dev/ttyUSB0",
                "some-device",
                Optional.of("first"),
                12.5,
                Optional.of("cell-1"),
                Optional.empty(),
                0,
                2000,
                3,
                250,
                OptionalDouble.of(0.1),
                OptionalDouble.of(90),
                Optional.empty()));
    assertThat(rig.channel("load")).contains(rig.channels().get(0));
    assertThat(rig.channel("gauge-1")).isEmpty();
  }

  private static Rig gauge(String quantity, String unit, String lines) throws TomlException {
    return parse(
        RIG.replace("\"force\"", '"' + quantity + '"').replace("\"kN\"", '"' + unit + '"') + lines);
  }

  @Test
  void parse_gaugeOnALever_tellsHowItIsMounted() throws TomlException {
    String lines = "gauge-length-in = 5.25\nlever = 2\nunder-load = \"falls\"\n";
    assertThat(gauge("length", "mm", lines).channels().get(0).mount())
        .contains(new GaugeMount(false, false, OptionalDouble.of(5.25 * 25.4), 2));
    assertThat(gauge("length", "mm", "").channels().get(0).mount()).isEmpty();
    Channel strain = gauge("strain", "um/m", "direction = \"transverse\"\n").channels().get(0);
    assertThat(strain.unit()).isEqualTo(Unit.MICROSTRAIN);
    assertThat(strain.mount().orElseThrow().across()).isTrue();
    assertThat(strain.facts(Optional.empty()).mount()).isEqualTo(strain.mount());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "force  | kN   | lever = 2 | 12:1: 'lever' belongs to a gauge that reads a length",
        "force  | kN   | direction = \"axial\" | 12:1: 'direction' belongs to a gauge, not to a load",
        "strain | um/m | gauge-length-mm = 100 | 12:1: 'gauge-length-mm' has no place here",
        "strain | um/m | lever = 2 | 12:1: 'lever' has no place here",
        "strain | mm   | lever = 2 | 8:1: 'mm' is no unit of strain; possible: µm/m",
        "length | um/m | lever = 2 | 8:1: 'um/m' is no unit of length",
        "length | mm   | lever = 0 | 12:1: 'lever' must be above 0 and at most 100",
        "length | mm   | gauge-length-mm = 0.1 | 12:1: a gauge length is 1 to 1000 mm, but it is 0.1",
        "length | mm   | direction = \"across\" | 12:1: 'across' is not possible for direction",
        "length | mm   | under-load = \"rise\" | 12:1: 'rise' is not possible for under-load"
      })
  void parse_mountThatCannotBe_isRefused(
      String quantity, String unit, String line, String message) {
    assertThatThrownBy(() -> gauge(quantity, unit, line + "\n"))
        .isInstanceOf(TomlException.class)
        .hasMessageContaining(message);
  }

  @Test
  void parse_gaugeLengthInBothUnits_isRefused() {
    assertThatThrownBy(() -> gauge("length", "mm", "gauge-length-mm = 100\ngauge-length-in = 4\n"))
        .hasMessageContaining("13:1: give the gauge length in mm or in inches, not in both");
  }

  @Test
  void parse_onlyWhatIsNeeded_takesTheDefaults() throws TomlException {
    Channel channel = parse(RIG).channels().get(0);
    assertThat(channel.zeroTolerance()).isEqualTo(20);
    assertThat(channel.lateAfterMillis()).isEqualTo(1000);
    assertThat(channel.delayMillis()).isZero();
    assertThat(channel.field()).isEmpty();
    assertThat(channel.calibration()).isEmpty();
    assertThat(channel.resolution()).isEmpty();
    assertThat(channel.greatestSlope()).isEmpty();
  }

  @Test
  void facts_withAndWithoutCalibration_tellItsUncertainty() throws TomlException {
    Channel channel = parse(FULL).channels().get(0);
    Calibration calibration =
        new Calibration(
            "cell-1",
            "C-1",
            "lab",
            LocalDate.of(2026, 3, 2),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            OptionalDouble.of(0.5),
            OptionalDouble.empty(),
            Optional.empty(),
            2,
            Optional.empty(),
            "");
    ChannelFacts facts = channel.facts(Optional.of(calibration));
    assertThat(facts)
        .isEqualTo(
            new ChannelFacts(
                "load",
                Quantity.FORCE,
                Unit.KILONEWTON,
                0,
                2000,
                OptionalDouble.of(0.1),
                3,
                OptionalDouble.of(90),
                OptionalDouble.of(0.5)));
    assertThat(channel.facts(Optional.empty()).calibrationPercent()).isEmpty();
  }

  static Stream<Arguments> wrong() {
    return Stream.of(
        arguments(
            "format = \"platenwire-rig 1\"\n",
            "",
            "1:1: 'format' is missing; the file must begin with format = \"platenwire-rig 1\""),
        arguments(
            "rig 1",
            "rig 12",
            "1:1: 'platenwire-rig 12' is newer than this Platenwire, which reads"
                + " \"platenwire-rig 1\""),
        arguments(
            "platenwire-rig 1",
            "platenwire-lab 1",
            "1:1: 'format' must be \"platenwire-rig 1\", but it is \"platenwire-lab 1\""),
        arguments(
            "\"frame-1\"",
            "\"frame-2\"",
            "2:1: the name in the file is 'frame-2', but the file is called frame-1.toml; the two"
                + " must be the same"),
        arguments("\"Frame\"", "\" \"", "3:1: 'title' is empty"),
        arguments("title", "titl", "3:1: unknown key 'titl', did you mean 'title'?"),
        arguments(
            "[[channel]]",
            "[channel]",
            "5:1: 'channel' must be tables [[channel]], but it is a table"),
        arguments(
            "\"load\"",
            "\"Load\"",
            "6:1: 'Load' is no channel name: lower-case letters, digits and hyphens, a letter first,"
                + " such as load or gauge-1"),
        arguments(
            "\"load\"",
            "\"event\"",
            "6:1: 'event' is kept for what happens in a test; name the channel otherwise"),
        arguments(
            "\"force\"",
            "\"heat\"",
            "7:1: 'heat' is not possible for quantity; possible: force, length, mass, strain"),
        arguments("\"kN\"", "\"lb\"", "8:1: 'lb' is a mass; a load in pounds is written 'lbf'"),
        arguments(
            "\"kN\"",
            "\"mm\"",
            "8:1: 'mm' is no unit of force; possible: N, kN, MN, lbf, kip, kgf, tf"),
        arguments(
            "port = \"/dev/ttyUSB0\"\n",
            "",
            "5:1: 'port' is missing in [channel]; it must be a text, such as port = \"…\""),
        arguments(
            "\"/dev/ttyUSB0\"", "7", "9:1: 'port' must be a text in double quotes, but it is 7"),
        arguments(
            "\"some-device\"",
            "\"devices/some.toml\"",
            "10:1: 'devices/some.toml' is no name of a device file: write it without folder and"
                + " without .toml"),
        arguments(
            "\"some-device\"",
            "\"some.toml\"",
            "10:1: 'some.toml' is no name of a device file: write it without folder and without"
                + " .toml"),
        arguments(
            "[0, 2000]",
            "[2000, 0]",
            "11:1: 'range' must be the least and the greatest value in kN, such as range = [0,"
                + " 1500]"),
        arguments(
            "[0, 2000]",
            "[2000]",
            "11:1: 'range' must be the least and the greatest value in kN, such as range = [0,"
                + " 1500]"),
        arguments(
            "range = [0, 2000]\n",
            "",
            "5:1: 'range' is missing; it must be the least and the greatest value in kN, such as"
                + " range = [0, 1500]"),
        arguments(
            "[0, 2000]",
            "[0, 2000]\ndelay-ms = -1",
            "12:1: 'delay-ms' must be 0 to 600000, but it is -1"),
        arguments(
            "[0, 2000]",
            "[0, 2000]\nzero-tolerance = 2001",
            "12:1: 'zero-tolerance' must be 0 to 2000, but it is 2001"),
        arguments(
            "[0, 2000]",
            "[0, 2000]\nlate-after-ms = 0",
            "12:1: 'late-after-ms' must be 1 to 600000, but it is 0"),
        arguments(
            "[0, 2000]",
            "[0, 2000]\nresolution = 0",
            "12:1: 'resolution' must be greater than 0, but it is 0"),
        arguments(
            "[0, 2000]",
            "[0, 2000]\ngreatest-slope = -5.5",
            "12:1: 'greatest-slope' must be greater than 0, but it is -5.5"),
        arguments(
            "[0, 2000]",
            "[0, 2000]\nbaud = 9600",
            "12:1: unknown key 'baud'; known here: calibration, correction, delay-ms, device,"
                + " direction, field, gauge-length-in, gauge-length-mm, greatest-slope, late-after-ms, lever, name, port, quantity, range, resolution, under-load, unit,"
                + " zero-tolerance"),
        arguments(
            "[0, 2000]",
            "[0, 2000]\ncalibration = \"../x\"",
            "12:1: '../x' is no name of a calibration file: write it without folder and without"
                + " .toml"),
        arguments(
            "[0, 2000]",
            "[0, 2000]\ncorrection = \"table\"",
            "12:1: 'correction' needs a calibration; name it with calibration = \"…\""),
        arguments(
            "[0, 2000]",
            "[0, 2000]\ncalibration = \"c\"\ncorrection = \"tabel\"",
            "13:1: 'tabel' is not possible for correction, did you mean 'table'? Possible: none,"
                + " scale, table, polynomial"));
  }

  @ParameterizedTest(name = "{0} -> {1}")
  @MethodSource("wrong")
  void parse_wrongKeyOrValue_saysLineAndColumn(String right, String wrong, String message) {
    assertThatThrownBy(() -> parse(RIG.replace(right, wrong)))
        .isInstanceOf(TomlException.class)
        .hasMessage("rigs/frame-1.toml:" + message);
  }

  @Test
  void parse_noChannel_refuses() {
    assertThatThrownBy(() -> parse(RIG.substring(0, RIG.indexOf("[[channel]]"))))
        .hasMessage(
            "rigs/frame-1.toml:1:1: a rig needs at least one channel, begun by [[channel]]");
  }

  @Test
  void parse_twoChannelsOfOneName_refuses() {
    String second = RIG.substring(RIG.indexOf("[[channel]]"));
    assertThatThrownBy(() -> parse(RIG + second))
        .hasMessage(
            "rigs/frame-1.toml:13:1: there is a channel 'load' already; each needs its own name");
  }

  @Test
  void parse_twoChannelsOfOneValue_refuses() {
    String second = RIG.substring(RIG.indexOf("[[channel]]")).replace("load", "load-2");
    assertThatThrownBy(() -> parse(RIG + second))
        .hasMessage(
            "rigs/frame-1.toml:12:1: channels 'load' and 'load-2' take the same value of the same"
                + " device at /dev/ttyUSB0; give them different ports, or different fields of the"
                + " device");
  }

  @Test
  void parse_twoFieldsOfOneDevice_givesTwoChannels() throws TomlException {
    String second = RIG.substring(RIG.indexOf("[[channel]]")).replace("load", "load-2");
    Rig rig = parse(RIG + "field = \"first\"\n" + second + "field = \"second\"\n");
    assertThat(rig.channels()).extracting(Channel::name).containsExactly("load", "load-2");
  }
}
