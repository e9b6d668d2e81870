package io.github.platenwire.emulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.device.Asking;
import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.device.FrameDecoder;
import io.github.platenwire.device.FrameSink;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What each emulated device sends is read by the shipped definition that it names. */
class VoiceTest {
  private static final double CAPACITY_NEWTONS = 200_000;

  /** A ramp from below zero to beyond the capacity, and a gauge that goes with it. */
  private static final SpecimenTruth RAMP =
      new SpecimenTruth() {
        @Override
        public double loadNewtons(long nanos) {
          return -500 + nanos / 1e9 * 21_000.37;
        }

        @Override
        public double gaugeMillimetres(long nanos) {
          return -0.01 + nanos / 1e9 * 0.12345;
        }

        @Override
        public long endNanos() {
          return 10_000_000_000L;
        }
      };

  /** One value as it was read, in newtons or millimetres. */
  private record Read(int field, double value, Quality quality) {}

  private final List<Read> read = new ArrayList<>();
  private int garbled;

  private final FrameSink sink =
      new FrameSink() {
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
          read.add(new Read(field, unit.toBase(value), quality));
        }

        @Override
        public void garbled(byte[] frame, int from, int length, long arrivalNanos) {
          garbled++;
        }
      };

  private static DeviceDefinition definition(Voice voice) throws Exception {
    String name = voice.definition() + ".toml";
    return DeviceDefinition.parse(Files.readString(Path.of("devices", name)), name);
  }

  private static List<TimedBytes> sent(Voice voice, DeviceDefinition device) {
    EmulatedIndicator indicator = voice.indicator(CAPACITY_NEWTONS, 100);
    List<TimedBytes> sent = new ArrayList<>();
    if (voice.isAsked()) {
      Asking asking = device.asking().orElseThrow();
      AskedFrame frame = voice.asked(RAMP, indicator, 3);
      for (long nanos = 5_000_000; nanos < RAMP.endNanos(); nanos += 10_000_000) {
        sent.add(new TimedBytes(nanos, frame.hear(asking.request(), nanos)));
      }
    } else {
      new EmulatedFrame(RAMP, indicator, 3).forEachRemaining(sent::add);
    }
    return sent;
  }

  @ParameterizedTest
  @EnumSource(Voice.class)
  void decode_allThatAVoiceSends_isReadAsSent(Voice voice) throws Exception {
    DeviceDefinition device = definition(voice);
    assertThat(device.asking().isPresent()).isEqualTo(voice.isAsked());
    assertThat(device.valueFields()).hasSize(voice.hasGauge() ? 2 : 1);
    List<TimedBytes> sent = sent(voice, device);
    assertThat(sent).hasSize(1000);
    FrameDecoder decoder = device.newDecoder();
    double step = voice == Voice.LBF ? 2.3 : voice.definition().contains("-kn") ? 5.1 : 0.06;
    int over = 0;
    for (TimedBytes bytes : sent) {
      read.clear();
      decoder.accept(bytes.bytes(), 0, bytes.bytes().length, 0, sink);
      assertThat(read).hasSize(device.valueFields().size());
      double real = Math.min(CAPACITY_NEWTONS, RAMP.loadNewtons(bytes.nanos()));
      if (read.get(0).quality() == Quality.OVER) {
        over++;
        assertThat(real).isCloseTo(CAPACITY_NEWTONS, within(step));
      } else {
        assertThat(read.get(0).value()).isCloseTo(real, within(step));
      }
      if (voice.hasGauge()) {
        assertThat(read.get(1).value())
            .isCloseTo(RAMP.gaugeMillimetres(bytes.nanos()), within(0.000_051));
      }
    }
    assertThat(garbled).isZero();
    boolean showsOver = voice != Voice.LBF && voice != Voice.KN;
    assertThat(over).isBetween(showsOver ? 40 : 0, showsOver ? 60 : 0);
  }

  @ParameterizedTest
  @EnumSource(Voice.class)
  void nudge_everyVoice_isNeverGarbled(Voice voice) throws Exception {
    byte[] nudge = voice.indicator(CAPACITY_NEWTONS, 100).nudge();
    definition(voice).newDecoder().accept(nudge, 0, nudge.length, 0, sink);
    assertThat(nudge).isNotEmpty();
    if (!voice.isAsked()) {
      assertThat(garbled).isZero();
    }
  }

  @Test
  void words_everyVoice_leadBackToIt() {
    assertThat(Voice.words()).doesNotHaveDuplicates();
    for (Voice voice : Voice.values()) {
      assertThat(Voice.ofWord(voice.word())).contains(voice);
    }
    assertThat(Voice.ofWord("morse")).isEmpty();
  }

  private final AskedFrame query =
      Voice.QUERY_GAUGE.asked(RAMP, Voice.QUERY_GAUGE.indicator(CAPACITY_NEWTONS, 10), 77);

  private String ask(String text) {
    byte[] answer = query.hear(text.getBytes(StandardCharsets.US_ASCII), 1_000_000_000);
    return new String(answer, StandardCharsets.US_ASCII);
  }

  /** IEEE 488.2-1992, section 10.14: four fields with commas; errors by SCPI-99, 21.8, memory. */
  @Test
  void hear_commonCommands_answersAsTheStandardSays() {
    assertThat(ask("*IDN?\n")).matches("[^,]+,[^,]+,77,[^,]+\n");
    assertThat(ask("*RST;*CLS\r\n")).isEmpty();
    assertThat(ask("*OPC?;READ?\n")).isEqualTo("1;+2.050040E+04,+1.13450E-01\n");
    assertThat(ask("rea")).isEmpty();
    assertThat(ask("d?\n")).isEqualTo("+2.050040E+04,+1.13450E-01\n");
    assertThat(ask("MOVE 5\n")).isEmpty();
    assertThat(ask("*ESR?\n")).isEqualTo("32\n");
    assertThat(ask("*ESR?\n")).isEqualTo("0\n");
    assertThat(ask(":SYST:ERR?\n")).isEqualTo("-113,\"Undefined header\"\n");
    assertThat(ask("SYSTem:ERRor?\n")).isEqualTo("0,\"No error\"\n");
    assertThat(ask("X".repeat(100_000) + "\nREAD?\n")).startsWith("+2.05");
    assertThat(ask("SYST:ERR?\n")).startsWith("-363,");
  }

  private static byte[] request(int... head) {
    byte[] frame = new byte[head.length + 2];
    for (int i = 0; i < head.length; i++) {
      frame[i] = (byte) head[i];
    }
    return CheckBytes.sealed(frame);
  }

  /** Modbus Application Protocol V1.1b3, section 6.4 and 7: exception codes 1, 2 and 3. */
  @Test
  void hear_requestsForRegisters_answersAsTheStandardSays() {
    AskedFrame slave =
        Voice.REGISTERS.asked(RAMP, Voice.REGISTERS.indicator(CAPACITY_NEWTONS, 10), 1);
    long now = 1_000_000_000;
    assertThat(slave.hear(request(17, 4, 0, 8, 0, 2), now))
        .isEqualTo(request(17, 4, 4, 0x20, 0xCC, 0x00, 0x03));
    assertThat(slave.hear(request(17, 4, 0, 9, 0, 1), now)).isEqualTo(request(17, 4, 2, 0, 3));
    assertThat(slave.hear(request(17, 3, 0, 8, 0, 2), now)).isEqualTo(request(17, 0x83, 1));
    assertThat(slave.hear(request(17, 4, 0, 7, 0, 2), now)).isEqualTo(request(17, 0x84, 2));
    assertThat(slave.hear(request(17, 4, 0, 8, 0, 126), now)).isEqualTo(request(17, 0x84, 3));
    assertThat(slave.hear(request(16, 4, 0, 8, 0, 2), now)).isEmpty();
    byte[] wrong = request(17, 4, 0, 8, 0, 2);
    wrong[7] ^= 1;
    assertThat(slave.hear(wrong, now)).isEmpty();
    byte[] right = request(17, 4, 0, 8, 0, 2);
    byte[] begin = {right[0], right[1], right[2]};
    assertThat(slave.hear(begin, now + 100_000_000)).isEmpty();
    assertThat(slave.hear(right, now + 200_000_000)).hasSize(9);
  }

  /** The very frame of Modbus over Serial Line V1.02, section 6.2.2: 02 07 has the CRC 41 12. */
  @Test
  void crc16_exampleOfTheStandard_isAsPrinted() {
    assertThat(CheckBytes.crc16(new byte[] {2, 7}, 0, 2)).isEqualTo(0x1241);
  }
}
