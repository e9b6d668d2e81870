package io.github.platenwire.recorder;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.Port;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.CloseReason;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawHeader.KeptFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A device that never stops sending must not keep the operator from stopping. */
@Timeout(30)
class StopUnderFloodTest {
  private static final String FRAME = "+  1.2345 kN\r\n";

  /** So many frames come at once that the link is always ahead of the recorder. */
  private static final byte[] FRAMES = FRAME.repeat(200).getBytes(StandardCharsets.US_ASCII);

  @TempDir Path folder;

  /** Always has the next frame: the recorder's queue is full all the time. */
  private static final class FloodingPort implements Port {
    @Override
    public String address() {
      return "memory:flood";
    }

    @Override
    public Optional<Chunk> read() {
      return Optional.of(new Chunk(FRAMES, SystemClocks.monotonic().nanos()));
    }

    @Override
    public void write(byte[] bytes) {}

    @Override
    public void close() {}
  }

  @Test
  void stop_queueNeverEmpty_endsTheRecordWithEveryReadingWhole() throws Exception {
    String text = DeviceBench.shipped("signed-line-kn");
    DeviceDefinition device = DeviceDefinition.parse(text, "signed-line-kn.toml");
    HeaderChannel header =
        TestPlans.load(
            Unit.KILONEWTON, -10, 10, "memory:flood", new KeptFile(device.name(), text), 1000);
    Path file = folder.resolve("flood.raw.csv");
    RecordedTest recorded;
    try (RigConnection connection =
        RigConnection.open(
            List.of(new ChannelSetup(header, device)),
            (port, settings) -> FloodingPort::new,
            RecorderClocks.system())) {
      Recording recording =
          connection.record(
              TestPlans.counting(file, List.of(header), Long.MAX_VALUE), progress -> {});
      recording.stop();
      recorded = recording.await();
    }
    assertThat(recorded.failure()).isEmpty();
    assertThat(recorded.closing().orElseThrow().reason()).isEqualTo(CloseReason.OPERATOR);
    assertThat(DeviceBench.rows(file, "load"))
        .isNotEmpty()
        .allMatch(row -> row.received().length == FRAME.length() - 2);
  }
}
