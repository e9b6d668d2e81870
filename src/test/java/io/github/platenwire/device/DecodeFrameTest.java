package io.github.platenwire.device;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A frame as a raw file keeps it decodes again as it did in the stream. */
class DecodeFrameTest {
  private static final String WITHOUT_CHECKSUM =
      """
      format = "platenwire-device 1"
      name = "bare-frames"
      title = "Frames without a checksum"
      kind = "binary"
      [binary]
      length = 4
      sync = "\\\\xAA\\\\x55"
      [fields.load]
      kind = "integer"
      at = 2
      order = "AB"
      unit = "N"
      """;

  /** One value of a frame. */
  private record Seen(String frame, int field, double value, Unit unit, Quality quality) {}

  /**
   * Found by fuzzing: a line decoder called an empty frame garbled, with no byte to show for it.
   */
  @Test
  void decodeFrame_nothingAtAll_saysNothing() {
    for (String name : List.of("status-line-kn", "query-line-n", "binary-load", "registers-load")) {
      Frames frames = new Frames();
      Definitions.shipped(name).decodeFrame(new byte[0], 0, frames);
      assertThat(frames.found).as(name).isEmpty();
    }
  }

  /** Before the mend each frame of a device without a checksum came out as suspect. */
  @Test
  void decodeFrame_binaryWithoutChecksum_isAsInTheStream() {
    List<Seen> seen = holdsAgain(Definitions.parse(WITHOUT_CHECKSUM), "AA550001 AA550002 AA550003");
    assertThat(seen)
        .extracting(Seen::quality)
        .containsExactly(Quality.SUSPECT, Quality.OK, Quality.OK);
  }

  @Test
  void decodeFrame_binaryWithChecksum_isAsInTheStream() throws Exception {
    String frame = "AA550000303900 0009C40081C7";
    holdsAgain(shipped("binary-load-and-gauge"), frame + frame);
  }

  @Test
  void decodeFrame_registers_isAsInTheStream() throws Exception {
    String frame = "010308449A5000000009C4A18E";
    holdsAgain(shipped("registers-load-and-gauge"), frame + frame);
  }

  @Test
  void decodeFrame_notOneWholeFrame_isGarbled() {
    DeviceDefinition device = Definitions.parse(WITHOUT_CHECKSUM);
    for (String wrong : List.of("AA5500", "AB550001")) {
      Collector told = new Collector(new ArrayList<>());
      device.decodeFrame(HexFormat.of().parseHex(wrong), 0, told);
      assertThat(told.seen()).as(wrong).isNotEmpty();
      assertThat(told.seen()).extracting(Seen::quality).containsOnly(Quality.GARBLED);
    }
  }

  /** The room that a reader uses again must not carry anything from one frame into the next. */
  @Test
  void newFrameReader_usedForMany_readsEachAsIfItWereAlone() throws Exception {
    String good = "AA550000303900 0009C40081C7".replace(" ", "");
    assertReadAlike(
        shipped("binary-load-and-gauge"),
        List.of(good, "", good.substring(4), good, "AA55", good + good, "00", good));
    List<String> lines = new ArrayList<>();
    for (String line : List.of("+0012.34 kN", "", "-0000.05 kN", "+0012.3", "x", "+0000.01 kN")) {
      lines.add(HexFormat.of().formatHex(line.getBytes(StandardCharsets.US_ASCII)));
    }
    assertReadAlike(shipped("signed-line-kn"), lines);
  }

  private static void assertReadAlike(DeviceDefinition device, List<String> frames) {
    FrameReader reader = device.newFrameReader();
    boolean anySound = false;
    for (String frame : frames) {
      Collector alone = new Collector(new ArrayList<>());
      device.decodeFrame(HexFormat.of().parseHex(frame), 0, alone);
      Collector among = new Collector(new ArrayList<>());
      reader.read(HexFormat.of().parseHex(frame), 0, among);
      assertThat(among.seen()).as(frame).isEqualTo(alone.seen());
      anySound |= alone.seen().stream().anyMatch(seen -> seen.quality() == Quality.OK);
    }
    assertThat(anySound).isTrue();
  }

  /** What the stream gives, after each sound value was decoded again from its own bytes. */
  private static List<Seen> holdsAgain(DeviceDefinition device, String hex) {
    byte[] stream = HexFormat.of().parseHex(hex.replace(" ", ""));
    List<Seen> seen = new ArrayList<>();
    device.newDecoder().accept(stream, 0, stream.length, 0, new Collector(seen));
    assertThat(seen).isNotEmpty();
    for (Seen value : seen) {
      List<Seen> again = new ArrayList<>();
      device.decodeFrame(HexFormat.of().parseHex(value.frame()), 0, new Collector(again));
      Seen expected =
          value.quality() == Quality.SUSPECT
              ? new Seen(value.frame(), value.field(), value.value(), value.unit(), Quality.OK)
              : value;
      assertThat(again).contains(expected);
    }
    return seen;
  }

  private static DeviceDefinition shipped(String name) throws Exception {
    return DeviceDefinition.parse(Files.readString(Path.of("devices", name + ".toml")), name);
  }

  private record Collector(List<Seen> seen) implements FrameSink {
    @Override
    public void value(
        byte[] frame,
        int from,
        int length,
        long arrivalNanos,
        int field,
        double value,
        Unit unit,
        Quality quality) {
      String hex = HexFormat.of().formatHex(Arrays.copyOfRange(frame, from, from + length));
      seen.add(new Seen(hex, field, value, unit, quality));
    }

    @Override
    public void garbled(byte[] frame, int from, int length, long arrivalNanos) {
      String hex = HexFormat.of().formatHex(Arrays.copyOfRange(frame, from, from + length));
      seen.add(new Seen(hex, -1, Double.NaN, Unit.NEWTON, Quality.GARBLED));
    }
  }
}
