package io.github.platenwire.device;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.util.Random;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A million damaged frames of each kind: decoded, marked or passed over, and nothing else. */
@Timeout(60)
class DecoderStormTest {
  private static final int FRAMES = 1_000_000;

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "signed-line-lbf, 2B202031 3233342E 35206C62 660D0A",
    "query-line-n, 2B312E32 33343530 4530330A",
    "binary-load-and-gauge, AA5500003039000009C40081C7",
    "registers-load-and-gauge, 010308449A5000000009C4A18E"
  })
  void accept_millionDamagedFrames_decodesMarksOrPassesOver(String name, String hex) {
    DeviceDefinition device = Definitions.shipped(name);
    byte[] sound = Hex.bytes(hex);
    Random random = new Random(20261125);
    Tally tally = new Tally();
    FrameDecoder decoder = device.newDecoder();
    long fed = 0;
    for (int i = 0; i < FRAMES; i++) {
      byte[] frame = damaged(sound, random);
      decoder.accept(frame, 0, frame.length, i, tally);
      fed += frame.length;
      if (i % 4096 == 0) {
        decoder.cut(tally);
      }
    }
    decoder.cut(tally);
    assertThat(tally.bytes).isLessThanOrEqualTo(fed);
    assertThat(tally.garbled).isPositive();
    assertThat(tally.longest).isLessThanOrEqualTo(1024);
  }

  private static byte[] damaged(byte[] sound, Random random) {
    byte[] frame = sound.clone();
    switch (random.nextInt(5)) {
      case 0 -> frame[random.nextInt(frame.length)] ^= (byte) (1 << random.nextInt(8));
      case 1 -> frame = java.util.Arrays.copyOf(frame, 1 + random.nextInt(frame.length));
      case 2 -> random.nextBytes(frame);
      case 3 -> frame[random.nextInt(frame.length)] = 0;
      default -> frame = java.util.Arrays.copyOfRange(frame, 1, frame.length + 3);
    }
    return frame;
  }

  private static final class Tally implements FrameSink {
    private long bytes;
    private long garbled;
    private int longest;

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
      bytes += field == 0 ? length : 0;
      longest = Math.max(longest, length);
      boolean empty = Double.isNaN(value);
      boolean usable = quality == Quality.OK || quality == Quality.UNSTABLE;
      if (empty && usable) {
        throw new AssertionError(value + " " + quality);
      }
    }

    @Override
    public void garbled(byte[] frame, int from, int length, long arrivalNanos) {
      garbled++;
      bytes += length;
      longest = Math.max(longest, length);
    }
  }
}
