package io.github.platenwire.recorder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.calibration.TableCorrection;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.CloseReason;
import io.github.platenwire.record.DiskFolder;
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.record.RawFileWriter;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.Samples;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A rig's channels with their devices and calibrations, out of a lab folder. */
class LabChannelsTest {
  private static final String RIG =
      """
      format = "platenwire-rig 1"
      name = "frame-2"
      title = "test"
      [[channel]]
      name = "load"
      quantity = "force"
      unit = "lbf"
      port = "/dev/ttyUSB0"
      device = "some-load"
      range = [0, 300000]
      calibration = "cell-1"
      """;

  private static final String DEVICE =
      """
      format = "platenwire-device 1"
      name = "some-load"
      title = "test"
      kind = "line"
      [line]
      layout = "{load}"
      terminator = "CRLF"
      longest = 40
      [fields.load]
      kind = "number"
      unit = "kN"
      """;

  private static final String CALIBRATION =
      """
      format = "platenwire-calibration 1"
      name = "cell-1"
      certificate = "C-0001"
      laboratory = "invented"
      date = 2026-03-02
      expanded-uncertainty-percent = 0.6
      correction = "table"
      unit = "kN"
      [[run]]
      direction = "ascending"
      rows = [[100, 101], [200, 204]]
      """;

  @TempDir Path dir;
  private LabFolder lab;

  @BeforeEach
  void makeLab() throws Exception {
    lab =
        LabFolder.create(
            dir.resolve("lab"), LabTemplate.example("Weir", ZoneId.of("UTC"), UnitSystem.SI));
    write("rigs/frame-2.toml", RIG);
    write("devices/some-load.toml", DEVICE);
    write("calibrations/cell-1.toml", CALIBRATION);
  }

  private void write(String file, String text) throws IOException {
    Files.writeString(lab.root().resolve(file), text);
  }

  private HeaderChannel channel() throws LabException {
    return LabChannels.of(lab, lab.rig("frame-2")).get(0).header();
  }

  @Test
  void of_tableInKilonewtons_correctsReadingsInPounds() throws Exception {
    HeaderChannel channel = channel();
    double shown = ChannelValue.shown(152.5, Unit.KILONEWTON, channel);
    double value = channel.correction().apply(shown);
    assertThat(Unit.POUND_FORCE.convert(value, Unit.KILONEWTON)).isCloseTo(150, within(1e-9));
    assertThat(ChannelValue.judge(shown, value, Quality.OK, channel)).isEqualTo(Quality.OK);
  }

  @Test
  void judge_aboveTheTable_isOver() throws Exception {
    HeaderChannel channel = channel();
    double shown = ChannelValue.shown(204.1, Unit.KILONEWTON, channel);
    double value = channel.correction().apply(shown);
    assertThat(value).isLessThan(channel.facts().rangeHigh());
    assertThat(ChannelValue.judge(shown, value, Quality.OK, channel)).isEqualTo(Quality.OVER);
    assertThat(ChannelValue.judge(shown, value, Quality.UNSTABLE, channel))
        .isEqualTo(Quality.UNSTABLE);
  }

  @Test
  void of_strainFromADeviceThatSendsALoad_isRefused() throws Exception {
    write(
        "rigs/frame-2.toml",
        RIG.replace("\"force\"", "\"strain\"")
            .replace("\"lbf\"", "\"um/m\"")
            .replace("calibration", "# "));
    assertThatThrownBy(this::channel)
        .isInstanceOf(LabException.class)
        .hasMessageContaining(
            "it measures strain, but the value 'load' of device 'some-load' is in kN, a force");
  }

  @Test
  void of_rigChoosesNone_correctsNothing() throws Exception {
    write("rigs/frame-2.toml", RIG + "correction = \"none\"\n");
    assertThat(channel().correction().apply(152.5)).isEqualTo(152.5);
  }

  /** Errors of 1 and 2 %: sqrt((1 + 4) / 2) % standard, twice that expanded, by hand. */
  @Test
  void of_residualsOfTheCorrection_areKeptInTheHeadBesideTheCertificate() throws Exception {
    write("rigs/frame-2.toml", RIG + "correction = \"none\"\n");
    HeaderChannel channel = channel();
    assertThat(channel.facts().calibrationPercent()).hasValue(0.6);
    assertThat(channel.facts().correctionPercent().orElseThrow())
        .isCloseTo(2 * Math.sqrt(2.5), within(1e-9));
    Path file = dir.resolve("residuals.raw.csv");
    writeRecord(file, channel);
    try (RawFileReader reader = RawFileReader.open(file)) {
      assertThat(reader.header().channels().get(0).facts()).isEqualTo(channel.facts());
    }
    write(
        "calibrations/cell-1.toml",
        CALIBRATION.replace("expanded-uncertainty-percent = 0.6\n", ""));
    assertThat(channel().facts().correctionPercent()).isEmpty();
  }

  private static void writeRecord(Path file, HeaderChannel channel) throws IOException {
    RawHeader sample = Samples.header();
    RawHeader header =
        new RawHeader(
            sample.test(),
            sample.start(),
            sample.originNanos(),
            sample.zone(),
            sample.program(),
            sample.lab(),
            sample.operator(),
            sample.overrideReason(),
            sample.specimen(),
            sample.method(),
            sample.rig(),
            List.of(channel),
            sample.checklist());
    try (RawFileWriter writer = RawFileWriter.create(new DiskFolder(), file, header)) {
      writer.finish(CloseReason.OPERATOR, Instant.parse("2026-11-25T07:17:31Z"), 0);
    }
  }

  @Test
  void calibrationFile_changedAfterwards_changesNoClosedRecord() throws Exception {
    Path file = dir.resolve("a.raw.csv");
    HeaderChannel before = channel();
    writeRecord(file, before);
    byte[] bytes = Files.readAllBytes(file);
    write("calibrations/cell-1.toml", CALIBRATION.replace("[200, 204]", "[200, 230]"));
    assertThat(channel().correction()).isNotEqualTo(before.correction());
    assertThat(Files.readAllBytes(file)).isEqualTo(bytes);
    try (RawFileReader reader = RawFileReader.open(file)) {
      HeaderChannel kept = reader.header().channels().get(0);
      assertThat(kept).isEqualTo(before);
      assertThat(kept.correction()).isInstanceOf(TableCorrection.class);
      assertThat(kept.calibration().orElseThrow().text()).isEqualTo(CALIBRATION);
    }
  }

  @Test
  void of_polynomialChosen_isKeptInTheHeadToTheLastDigit() throws Exception {
    write(
        "calibrations/cell-1.toml",
        CALIBRATION.replace(
            "[[100, 101], [200, 204]]", "[[50, 50.1], [100, 101], [150, 152.2], [200, 204]]"));
    write("rigs/frame-2.toml", RIG + "correction = \"polynomial\"\n");
    HeaderChannel before = channel();
    Path file = dir.resolve("b.raw.csv");
    writeRecord(file, before);
    try (RawFileReader reader = RawFileReader.open(file)) {
      assertThat(reader.header().channels().get(0)).isEqualTo(before);
    }
  }

  @ParameterizedTest(name = "a device that sends {0}")
  @CsvSource({
    "lbf, 1000, 1000",
    "kgf, 1000, 2204.62262",
    "kN, 1, 224.808943",
    "N, 1000, 224.808943",
    "kip, 1, 1000"
  })
  void of_forcesInAnyUnitOfTheTrade_areConverted(String unit, double sent, double pounds)
      throws Exception {
    // factors: published values, NIST SP 811 as cited in the check list of the units
    write("devices/some-load.toml", DEVICE.replace("\"kN\"", "\"" + unit + "\""));
    Unit from = Unit.parse(unit, Quantity.FORCE);
    assertThat(ChannelValue.shown(sent, from, channel())).isCloseTo(pounds, within(1e-4));
  }

  @ParameterizedTest(name = "a gauge that sends {0}")
  @CsvSource({
    "in, 0.1, 2.54",
    "mm, 2.54, 2.54",
    "um, 2540, 2.54",
    "µm, 2540, 2.54",
    "mil, 100, 2.54"
  })
  void of_lengthsInAnyUnitOfTheTrade_areConverted(String unit, double sent, double millimetres)
      throws Exception {
    write("devices/some-load.toml", DEVICE.replace("\"kN\"", "\"" + unit + "\""));
    write("rigs/frame-2.toml", gauge(RIG));
    Unit from = Unit.parse(unit, Quantity.LENGTH);
    assertThat(ChannelValue.shown(sent, from, channel())).isCloseTo(millimetres, within(1e-9));
  }

  private static String gauge(String rig) {
    return rig.replace("\"force\"", "\"length\"")
        .replace("\"lbf\"", "\"mm\"")
        .replace("calibration = \"cell-1\"\n", "");
  }

  @Test
  void of_crackFromADeviceInKilonewtons_isRefusedWithTheLine() throws Exception {
    write("rigs/frame-2.toml", gauge(RIG));
    assertThatThrownBy(this::channel)
        .isInstanceOf(LabException.class)
        .hasMessage(
            "rigs/frame-2.toml:9:1: channel 'load': it measures length, but the value 'load' of"
                + " device 'some-load' is in kN, a force");
  }

  @Test
  void of_crackCalibratedInKilonewtons_isRefusedWithTheLine() throws Exception {
    write("devices/some-load.toml", DEVICE.replace("\"kN\"", "\"mm\""));
    write("rigs/frame-2.toml", gauge(RIG) + "calibration = \"cell-1\"\n");
    assertThatThrownBy(this::channel)
        .hasMessage(
            "rigs/frame-2.toml:11:1: channel 'load': it measures length, but the runs of the"
                + " calibration 'cell-1' are in kN, a force");
  }

  @Test
  void of_crackInKilonewtons_isRefusedWithTheLine() throws Exception {
    write("rigs/frame-2.toml", RIG.replace("\"force\"", "\"length\""));
    assertThatThrownBy(this::channel)
        .hasMessageStartingWith("rigs/frame-2.toml:7:1: 'lbf' is no unit of length; possible:");
  }

  @Test
  void of_unknownField_isRefusedWithTheLine() throws Exception {
    write("rigs/frame-2.toml", RIG + "field = \"laod\"\n");
    assertThatThrownBy(this::channel)
        .hasMessage(
            "rigs/frame-2.toml:12:1: channel 'load': device 'some-load' has no value 'laod'; it"
                + " has: load");
  }

  @Test
  void of_polynomialFromTooFewReadings_isRefusedWithTheLine() throws Exception {
    write("rigs/frame-2.toml", RIG + "correction = \"polynomial\"\n");
    assertThatThrownBy(this::channel)
        .hasMessageStartingWith(
            "rigs/frame-2.toml:12:1: channel 'load': a polynomial of degree 2 needs at least 4");
  }
}
