package io.github.platenwire.recorder;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.Port;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.CloseReason;
import io.github.platenwire.record.DiskFolder;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawHeader.KeptFile;
import io.github.platenwire.record.Samples;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
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
    ChannelFacts facts =
        new ChannelFacts(
            "load",
            Quantity.FORCE,
            Unit.KILONEWTON,
            -10,
            10,
            OptionalDouble.empty(),
            1,
            OptionalDouble.empty(),
            OptionalDouble.empty());
    HeaderChannel header =
        new HeaderChannel(
            facts,
            "memory:flood",
            0,
            new KeptFile(device.name(), text),
            0,
            1000,
            Optional.empty(),
            1);
    Path file = folder.resolve("flood.raw.csv");
    RecordedTest recorded;
    try (RigConnection connection =
        RigConnection.open(
            List.of(new ChannelSetup(header, device)),
            (port, settings) -> FloodingPort::new,
            RecorderClocks.system())) {
      Recording recording = connection.record(plan(file, header), progress -> {});
      recording.stop();
      recorded = recording.await();
    }
    assertThat(recorded.failure()).isEmpty();
    assertThat(recorded.closing().orElseThrow().reason()).isEqualTo(CloseReason.OPERATOR);
    assertThat(DeviceBench.rows(file, "load"))
        .isNotEmpty()
        .allMatch(row -> row.received().length == FRAME.length() - 2);
  }

  private static RecordingPlan plan(Path file, HeaderChannel channel) {
    RawHeader sample = Samples.header();
    return new RecordingPlan(
        new DiskFolder(),
        start -> file,
        (start, origin, path) ->
            new RawHeader(
                "t",
                start,
                origin,
                sample.zone(),
                "test",
                "lab",
                Optional.empty(),
                Optional.empty(),
                sample.specimen(),
                sample.method(),
                sample.rig(),
                List.of(channel),
                List.of()),
        new CountingMethod(Long.MAX_VALUE),
        Optional.empty());
  }
}
