package io.github.platenwire.emulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.Port;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(20)
class ClockedPortsTest {
  private final EmulatedClock clock = new EmulatedClock(Instant.parse("2026-11-25T07:15:02Z"));
  private final long start = clock.nanos();
  private final ClockedPorts bench =
      new ClockedPorts(clock, List.of(stream(10, 30), stream(20, 40)));
  private final List<Port> ports = bench.ports(List.of("memory:a", "memory:b"));

  private static Iterator<TimedBytes> stream(long... nanos) {
    return LongStream.of(nanos)
        .mapToObj(at -> new TimedBytes(at, Long.toString(at).getBytes(StandardCharsets.US_ASCII)))
        .iterator();
  }

  private Optional<String> read(int port) throws IOException {
    Optional<Chunk> chunk = ports.get(port).read();
    return chunk.map(it -> new String(it.bytes(), StandardCharsets.US_ASCII));
  }

  @Test
  void read_severalPorts_handsOnInOrderOfTimeWhoeverAsks() throws Exception {
    assertThat(read(1)).isEmpty();
    assertThat(read(0)).contains("10");
    assertThat(read(1)).isEmpty();
    assertThat(read(0)).isEmpty();
    assertThat(read(1)).contains("20");
    assertThat(read(1)).isEmpty();
    assertThat(read(0)).contains("30");
    assertThat(read(0)).isEmpty();
    assertThat(read(1)).contains("40");
  }

  @Test
  void read_again_movesTheClockToWhatWasHandedOnBeforeAndNoFurther() throws Exception {
    assertThat(read(0)).contains("10");
    assertThat(clock.nanos()).isEqualTo(start);
    assertThat(read(0)).isEmpty();
    assertThat(clock.nanos()).isEqualTo(start + 10);
  }

  @Test
  void holdAt_aMoment_keepsWhatIsLaterUntilReleased() throws Exception {
    List<String> over = new ArrayList<>();
    bench.holdAt(20);
    assertThat(read(0)).contains("10");
    assertThat(read(0)).isEmpty();
    assertThat(read(1)).isEmpty();
    bench.release(() -> over.add("over"));
    assertThat(read(1)).contains("20");
    assertThat(read(1)).isEmpty();
    assertThat(read(0)).contains("30");
    assertThat(read(0)).isEmpty();
    assertThat(over).isEmpty();
    assertThat(read(1)).contains("40");
    assertThat(read(1)).isEmpty();
    assertThat(read(0)).isEmpty();
    assertThat(over).containsExactly("over");
  }

  @Test
  void close_onePort_letsTheOtherGoOnWithoutIt() throws Exception {
    assertThat(read(0)).contains("10");
    ports.get(0).close();
    assertThat(read(1)).contains("20");
    assertThat(read(1)).contains("40");
    assertThat(read(0)).isEmpty();
  }

  @Test
  void write_anything_isRefusedWithTheAddress() {
    assertThatThrownBy(() -> ports.get(0).write(new byte[] {1}))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("memory:a");
  }
}
