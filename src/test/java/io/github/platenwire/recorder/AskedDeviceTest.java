package io.github.platenwire.recorder;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.InMemoryPort;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawHeader.KeptFile;
import io.github.platenwire.record.RawRow;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A device that is asked, from its port to its rows. */
@Timeout(30)
class AskedDeviceTest {
  @TempDir Path folder;
  private InMemoryPort port;
  private int asked;

  private void answer(byte[] bytes) {
    String command = new String(bytes, StandardCharsets.US_ASCII).strip();
    String answer =
        switch (command) {
          case "*IDN?" -> "bench box,7\n";
          case "READ?" -> "+" + ++asked + ".5E+00\n";
          default -> "";
        };
    if (!answer.isEmpty()) {
      try {
        port.offer(
            new Chunk(
                answer.getBytes(StandardCharsets.US_ASCII), SystemClocks.monotonic().nanos()));
      } catch (InterruptedException e) {
        throw new AssertionError(e);
      }
    }
  }

  @Test
  void record_deviceThatIsAsked_keepsItsIdentityAndItsAnswers() throws Exception {
    port = new InMemoryPort("memory:box", 64, this::answer);
    String text = Files.readString(Path.of("devices", "query-line-n.toml"));
    DeviceDefinition device = DeviceDefinition.parse(text, "query-line-n.toml");
    HeaderChannel header =
        TestPlans.load(
            Unit.NEWTON, -1000, 60_000, "memory:box", new KeptFile(device.name(), text), 2000);
    Path file = folder.resolve("a.raw.csv");
    try (RigConnection connection =
        RigConnection.open(
            List.of(new ChannelSetup(header, device)),
            (name, settings) -> () -> port,
            RecorderClocks.system())) {
      connection.awaitPreview(p -> p.channels().get(0).good() >= 2, TimeUnit.SECONDS.toNanos(10));
      connection.record(TestPlans.counting(file, List.of(header), 6), progress -> {}).await();
    }
    assertThat(Bench.events(file))
        .containsExactly("start", "identity load bench box,7", "stop break");
    List<RawRow> rows = Bench.rows(file).stream().filter(row -> !row.isEvent()).toList();
    assertThat(rows.get(0).value()).isEqualTo(1.5);
    assertThat(new String(rows.get(1).received(), StandardCharsets.US_ASCII)).isEqualTo("+2.5E+00");
    assertThat(rows).extracting(RawRow::quality).doesNotContain(Quality.GARBLED, Quality.LATE);
  }
}
