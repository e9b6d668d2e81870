package io.github.platenwire.commission;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.reading.Quality;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.Map;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SampleDecoderTest {
  @TempDir Path folder;

  private static DeviceDefinition shipped(String name) throws Exception {
    return DeviceDefinition.parse(Files.readString(Path.of("devices", name + ".toml")), name);
  }

  private static SampleReport decode(String name, String stream) throws Exception {
    return SampleDecoder.decode(
        shipped(name), Sample.of("test", stream.getBytes(StandardCharsets.ISO_8859_1)));
  }

  @Test
  void decode_damagedLine_saysAtWhichByteOfTheSample() throws Exception {
    SampleReport report =
        decode("signed-line-lbf", "+0000001 lbf\r\n+00x0002 lbf\r\n+0000003 lbf\r\n");
    assertThat(report.frames()).isEqualTo(2);
    assertThat(report.undecodedFrames()).isEqualTo(1);
    Undecoded stretch = report.undecoded().get(0);
    assertThat(stretch.offset()).isEqualTo(14);
    assertThat(stretch.faultOffset()).isBetween(14L, 17L);
    assertThat(stretch.bytes()).isEqualTo("+00x0002 lbf".getBytes(StandardCharsets.US_ASCII));
    assertThat(report.isComplete()).isFalse();
    assertThat(report.channels().get(0).greatest()).isEqualTo(3);
  }

  @Test
  void decode_sameLineTwice_findsTheFaultyOneAtItsOwnPlace() throws Exception {
    SampleReport report = decode("signed-line-lbf", "+0000001 lbf\r\n?\r\n+0000001 lbf\r\n?\r\n");
    assertThat(report.undecoded()).extracting(Undecoded::offset).containsExactly(14L, 31L);
  }

  @Test
  void decode_tornEnds_countForNothing() throws Exception {
    SampleReport report = decode("signed-line-lbf", "01 lbf\r\n+0000002 lbf\r\n+00000");
    assertThat(report.isComplete()).isTrue();
    assertThat(report.tornHeadBytes()).isEqualTo(6);
    assertThat(report.unfinishedBytes()).isEqualTo(6);
  }

  @Test
  void decode_statesAndOverload_areCountedByQuality() throws Exception {
    SampleReport report =
        decode(
            "status-line-kn",
            "ST,+00001.0,kN\r\nST,+00002.0,kN\r\nUS,+00003.0,kN\r\nOL,-------,kN\r\n");
    assertThat(report.channels().get(0).qualities())
        .containsEntry(Quality.UNSTABLE, 1L)
        .containsEntry(Quality.OVER, 1L);
    assertThat(report.channels().get(0).least()).isEqualTo(1);
  }

  @Test
  void decode_valuesInAnotherUnit_areToldInTheDefinitions() throws Exception {
    SampleReport report = decode("status-line-kn", "ST,+00001.0,kN\r\nST,+05000.0,N\r\n");
    assertThat(report.channels().get(0).greatest()).isEqualTo(5.0);
  }

  @Test
  void decode_noiseBetweenBinaryFrames_isFoundWhereItStands() throws Exception {
    // the frame of the shipped definition's own comment
    byte[] bytes = HexFormat.of().parseHex("aa5500003039000009c40081c7");
    String frame = new String(bytes, StandardCharsets.ISO_8859_1);
    SampleReport report = decode("binary-load-and-gauge", frame + frame + "\u0007\u0007" + frame);
    assertThat(report.frames()).isEqualTo(3);
    assertThat(report.undecoded()).extracting(Undecoded::offset).containsExactly(26L);
    assertThat(report.channels().get(0).greatest()).isEqualTo(1234.5);
    assertThat(report.explainedBytes()).isEqualTo(39);
  }

  @Test
  void decode_nothingThatFits_isNotComplete() throws Exception {
    assertThat(decode("signed-line-lbf", "no end").isComplete()).isFalse();
    assertThat(decode("signed-line-lbf", "no end").share()).isZero();
  }

  @Test
  void read_byteLogAndPlainFile_giveTheSameBytes() throws Exception {
    Path log = folder.resolve("a.bytes");
    Files.writeString(log, "# platenwire-bytes 1\n0 +0000001 \n20 lbf\\x0D\\x0A\n");
    Path plain = folder.resolve("a.bin");
    Files.writeString(plain, "+0000001 lbf\r\n");
    assertThat(Sample.read(log).bytes()).isEqualTo(Sample.read(plain).bytes());
    assertThat(Sample.read(log).timed()).isTrue();
    assertThat(Sample.read(plain).timed()).isFalse();
  }

  private static byte[] frames(int count) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (int i = 0; i < count; i++) {
      int load = (int) Math.round(3000 * Math.sin(i * 0.03));
      int[] frame = {0x02, 0xF0, load >> 8 & 0xFF, load & 0xFF, i * 7 & 0xFF, i >> 4 & 0xFF, 0};
      for (int b = 0; b < 6; b++) {
        frame[6] ^= frame[b];
      }
      for (int b : frame) {
        out.write(b);
      }
    }
    return out.toByteArray();
  }

  @Test
  void draft_binaryFrames_findsLengthBeginningAndChecksumAndAsksForUnits() throws Exception {
    Sample sample = Sample.of("test", frames(200));
    Draft asked = DefinitionDraft.of(sample, Hints.none("packed"));
    assertThat(asked.notes().get(0)).contains("7 bytes", "02 F0", "exclusive or");
    assertThat(asked.questions()).isNotEmpty();
    Hints hints =
        Hints.none("packed")
            .withUnits(
                asked.questions().stream()
                    .map(q -> q.about().startsWith("bytes 2 to 3") ? "N" : Hints.PASS_OVER)
                    .toList());
    DeviceDefinition definition =
        DeviceDefinition.parse(DefinitionDraft.of(sample, hints).text(), "draft");
    SampleReport report = SampleDecoder.decode(definition, sample);
    assertThat(report.frames()).isEqualTo(200);
    assertThat(report.isComplete()).isTrue();
    assertThat(report.channels().get(0).greatest()).isEqualTo(3000);
    assertThat(report.channels().get(0).least()).isEqualTo(-3000);
  }

  @Test
  void draft_noise_saysThatItCannot() {
    byte[] noise = new byte[4000];
    new Random(5).nextBytes(noise);
    Draft draft = DefinitionDraft.of(Sample.of("noise", noise), Hints.none("noise"));
    assertThat(draft.text()).isEmpty();
    assertThat(draft.questions()).isEmpty();
    assertThat(draft.notes().get(0)).contains("neither lines of text nor frames");
  }

  @Test
  void rhythm_knownMoments_givesRateSpreadAndExtremes() {
    Rhythm rhythm = new Rhythm();
    for (long millis : new long[] {0, 100, 210, 300}) {
      rhythm.at(millis * 1_000_000);
    }
    rhythm.pause();
    rhythm.at(9_000_000_000L);
    // intervals 100, 110 and 90 ms: mean 100, standard deviation 10
    assertThat(rhythm.hertz()).isCloseTo(10, Offset.offset(1e-9));
    assertThat(rhythm.jitterSeconds()).isCloseTo(0.010, Offset.offset(1e-9));
    assertThat(Map.of("shortest", rhythm.shortestSeconds(), "longest", rhythm.longestSeconds()))
        .isEqualTo(Map.of("shortest", 0.090, "longest", 0.110));
    assertThat(rhythm.moments()).isEqualTo(5);
  }
}
