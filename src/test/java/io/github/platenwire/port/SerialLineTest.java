package io.github.platenwire.port;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.emulate.PseudoTerminal;
import io.github.platenwire.reading.MonotonicClock;
import io.github.platenwire.reading.SystemClocks;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A real serial port of the system, without hardware behind it. */
@Timeout(20)
@EnabledOnOs({OS.LINUX, OS.MAC})
class SerialLineTest {
  private static final MonotonicClock CLOCK = SystemClocks.monotonic();

  private static Port open(PseudoTerminal line) throws IOException {
    return Ports.opener(PortAddress.parse(line.path()), LineSettings.COMMON, CLOCK).open();
  }

  private static byte[] read(Port port, int count) throws IOException {
    ByteArrayOutputStream got = new ByteArrayOutputStream();
    while (got.size() < count) {
      port.read().ifPresent(chunk -> got.writeBytes(chunk.bytes()));
    }
    return got.toByteArray();
  }

  private static byte[] everyByteTwice() {
    byte[] bytes = new byte[512];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = (byte) i;
    }
    return bytes;
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 7, 64, 512})
  void read_bytesWrittenInPieces_comeWholeAndUnchanged(int piece) throws IOException {
    byte[] sent = everyByteTwice();
    try (PseudoTerminal line = PseudoTerminal.open();
        Port port = open(line)) {
      for (int from = 0; from < sent.length; from += piece) {
        line.write(sent, from, Math.min(piece, sent.length - from));
      }

      assertThat(read(port, sent.length)).isEqualTo(sent);
    }
  }

  @Test
  void hasBytes_beforeAndAfterReading_tellsWhetherAnyWait() throws IOException {
    try (PseudoTerminal line = PseudoTerminal.open();
        Port port = open(line)) {
      assertThat(port.hasBytes()).isFalse();
      line.write(new byte[] {1, 2, 3}, 0, 3);
      while (!port.hasBytes()) {
        Thread.onSpinWait();
      }
      assertThat(read(port, 3)).containsExactly(1, 2, 3);
      assertThat(port.hasBytes()).isFalse();
    }
  }

  @Test
  void write_bytesOfEveryValue_arriveAtTheDevice() throws IOException {
    byte[] sent = everyByteTwice();
    try (PseudoTerminal line = PseudoTerminal.open();
        Port port = open(line)) {
      port.write(sent);
      ByteArrayOutputStream got = new ByteArrayOutputStream();
      byte[] buffer = new byte[100];
      while (got.size() < sent.length) {
        got.write(buffer, 0, Math.max(0, line.read(buffer)));
      }
      assertThat(got.toByteArray()).isEqualTo(sent);
    }
  }

  @Test
  void hasBytes_afterClosing_isRefused() throws IOException {
    try (PseudoTerminal line = PseudoTerminal.open()) {
      Port port = open(line);
      port.close();
      assertThatThrownBy(port::hasBytes).isInstanceOf(LinkLostException.class);
    }
  }

  @Test
  void read_eachByteOnItsOwn_givesAChunkEach() throws IOException {
    try (PseudoTerminal line = PseudoTerminal.open();
        Port port = open(line)) {
      for (byte b : "3.14\r\n".getBytes(StandardCharsets.US_ASCII)) {
        long before = CLOCK.nanos();
        line.write(new byte[] {b}, 0, 1);

        Chunk chunk = port.read().orElseThrow();

        assertThat(chunk.bytes()).containsExactly(b);
        assertThat(chunk.arrivalNanos()).isBetween(before, CLOCK.nanos());
      }
    }
  }

  @ParameterizedTest
  @EnumSource(LineSettings.Flow.class)
  void open_anySettings_bytesFlowBothWays(LineSettings.Flow flow) throws IOException {
    LineSettings settings = new LineSettings(115_200, 8, LineSettings.Parity.EVEN, 2, flow);
    try (PseudoTerminal line = PseudoTerminal.open();
        Port port = Ports.opener(PortAddress.parse(line.path()), settings, CLOCK).open()) {
      port.write(new byte[] {'R', '?'});
      byte[] heard = new byte[10];
      int count = line.read(heard);
      line.write(heard, 0, count);

      assertThat(Arrays.copyOf(heard, count)).containsExactly('R', '?');
      assertThat(read(port, 2)).containsExactly('R', '?');
    }
  }

  @Test
  void read_silence_returnsEmptyWithinATenthOfASecondOrSo() throws IOException {
    try (PseudoTerminal line = PseudoTerminal.open();
        Port port = open(line)) {
      long before = CLOCK.nanos();

      assertThat(port.read()).isEmpty();

      assertThat(CLOCK.nanos() - before).isLessThan(TimeUnit.SECONDS.toNanos(2));
    }
  }

  @Test
  void read_lineHungUp_linkLost() throws IOException {
    PseudoTerminal line = PseudoTerminal.open();
    try (Port port = open(line)) {
      line.write(new byte[] {'1', '2'}, 0, 2);
      assertThat(read(port, 2)).containsExactly('1', '2');
      assertThat(line.awaitRead(Duration.ofSeconds(5))).isTrue();

      line.close();

      assertThatThrownBy(() -> read(port, 1))
          .isInstanceOf(LinkLostException.class)
          .hasMessageContaining(line.path())
          .hasMessageContaining("hung up");
    }
  }

  @Test
  void write_lineHungUp_linkLost() throws IOException {
    PseudoTerminal line = PseudoTerminal.open();
    try (Port port = open(line)) {
      line.close();

      assertThatThrownBy(() -> port.write(new byte[] {1, 2, 3}))
          .isInstanceOf(LinkLostException.class)
          .hasMessageContaining("only 0 of 3 bytes");
    }
  }

  @Test
  void close_whileAnotherThreadReads_readEndsAndPortIsFree() throws Exception {
    try (PseudoTerminal line = PseudoTerminal.open()) {
      Port port = open(line);
      CompletableFuture<Throwable> ended = new CompletableFuture<>();
      Thread reader = new Thread(() -> ended.complete(readUntilLost(port)), "reader");
      reader.start();

      port.close();
      port.close();

      assertThat(ended.get(10, TimeUnit.SECONDS))
          .isInstanceOf(LinkLostException.class)
          .hasMessageContaining("closed by this program");
      open(line).close();
    }
  }

  private static Throwable readUntilLost(Port port) {
    try {
      read(port, Integer.MAX_VALUE);
      return new AssertionError("not lost");
    } catch (IOException e) {
      return e;
    }
  }
}
