package io.github.platenwire.device;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.Port;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** The whole talk with a device that is asked and answers whatever it likes, whenever it likes. */
class AskingFuzz {
  private static final List<DeviceDefinition> DEVICES =
      Target.shipped("query-line-n", "query-line-n-mm", "registers-load");
  private static final long SLICE_NANOS = 100_000_000;
  private static final int LONGEST_PIECE = 1500;

  private long nowNanos;
  private long received;

  @FuzzTest(maxDuration = "3m")
  void talk_deviceThatDoesAnything_isDecodedMarkedOrPassedOver(FuzzedDataProvider data)
      throws IOException {
    nowNanos = 0;
    received = 0;
    DeviceDefinition device = data.pickValue(DEVICES);
    RuleSink sink = new RuleSink();
    FrameDecoder decoder = device.newDecoder();
    long handed = 0;
    try (Port port =
        device
            .asking()
            .orElseThrow()
            .opener(
                () -> new Anything(data),
                () -> nowNanos,
                (nanos, closing) -> {
                  nowNanos += nanos;
                  return false;
                })
            .open()) {
      while (data.remainingBytes() > 0 || port.hasBytes()) {
        Optional<Chunk> chunk = port.read();
        handed += chunk.map(c -> c.bytes().length).orElse(0);
        chunk.ifPresent(c -> Decoding.accept(decoder, c, sink));
        if (handed > received) {
          throw new AssertionError(handed + " bytes handed on of " + received);
        }
      }
    }
    decoder.cut(sink);
    sink.assertAtMost(received);
  }

  /** A line on which anything may come at any time. */
  private final class Anything implements Port {
    private final FuzzedDataProvider data;

    Anything(FuzzedDataProvider data) {
      this.data = data;
    }

    @Override
    public String address() {
      return "anything";
    }

    @Override
    public Optional<Chunk> read() {
      byte[] bytes = data.consumeBytes(data.consumeInt(0, LONGEST_PIECE));
      nowNanos += bytes.length == 0 ? SLICE_NANOS : data.consumeInt(1, 50_000_000);
      received += bytes.length;
      return bytes.length == 0 ? Optional.empty() : Optional.of(new Chunk(bytes, nowNanos));
    }

    @Override
    public boolean hasBytes() {
      return data.consumeBoolean();
    }

    @Override
    public void write(byte[] bytes) {
      nowNanos += 1_000_000;
    }

    @Override
    public void close() {}
  }
}
