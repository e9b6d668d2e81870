package io.github.platenwire.emulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.emulate.EmulatedCylinder.BreakKind;
import io.github.platenwire.reading.MonotonicClock;
import io.github.platenwire.reading.SystemClocks;
import java.io.IOException;
import java.math.BigDecimal;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class TcpOutletTest {
  private static final Duration LIMIT = Duration.ofSeconds(20);

  private static Socket connect(TcpOutlet outlet) throws IOException {
    Socket client = new Socket(InetAddress.getLoopbackAddress(), outlet.port());
    client.setSoTimeout(20_000);
    return client;
  }

  private static void send(TcpOutlet outlet, String text) throws IOException {
    byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
    outlet.send(bytes, 0, bytes.length, 0);
  }

  private static String read(Socket client, int length) throws IOException {
    return new String(client.getInputStream().readNBytes(length), StandardCharsets.US_ASCII);
  }

  @Test
  void listen_anyFreePort_reportsItAndItsAddress() throws IOException {
    try (TcpOutlet outlet = TcpOutlet.listen(0)) {
      assertThat(outlet.port()).isPositive();
      assertThat(outlet.address()).endsWith(":" + outlet.port());
    }
  }

  @Test
  void listen_portTaken_saysWhereAndWhatToDo() throws IOException {
    try (TcpOutlet first = TcpOutlet.listen(0)) {
      assertThatThrownBy(() -> TcpOutlet.listen(first.port()))
          .isInstanceOf(IOException.class)
          .hasMessageStartingWith("cannot listen on ")
          .hasMessageContaining(":" + first.port())
          .hasMessageEndingWith("choose another port, or 0 for any free one");
    }
  }

  @Test
  void send_client_getsTheBytes() throws Exception {
    try (TcpOutlet outlet = TcpOutlet.listen(0);
        Socket client = connect(outlet)) {
      assertThat(outlet.awaitClient(LIMIT)).isTrue();
      byte[] bytes = "..+0001 kN\n..".getBytes(StandardCharsets.US_ASCII);
      outlet.send(bytes, 2, 9, 0);

      assertThat(read(client, 9)).isEqualTo("+0001 kN\n");
      assertThat(outlet.bytesUnheard()).isZero();
    }
  }

  @Test
  void awaitClient_nobodyComes_endsAtItsLimit() throws Exception {
    try (TcpOutlet outlet = TcpOutlet.listen(0)) {
      assertThat(outlet.awaitClient(Duration.ofMillis(20))).isFalse();
    }
  }

  @Test
  void send_nobodyListens_countsWhatIsLost() throws Exception {
    try (TcpOutlet outlet = TcpOutlet.listen(0)) {
      send(outlet, "lost");
      assertThat(outlet.bytesUnheard()).isEqualTo(4);
    }
  }

  @Test
  void client_leavesAndComesBack_isServedAgain() throws Exception {
    try (TcpOutlet outlet = TcpOutlet.listen(0)) {
      try (Socket first = connect(outlet)) {
        assertThat(outlet.awaitClient(LIMIT)).isTrue();
        first.getOutputStream().write("hello?".getBytes(StandardCharsets.US_ASCII));
        send(outlet, "one");
        assertThat(read(first, 3)).isEqualTo("one");
      }
      assertThat(outlet.awaitNoClient(LIMIT)).isTrue();
      send(outlet, "unheard");
      try (Socket second = connect(outlet)) {
        assertThat(outlet.awaitClient(LIMIT)).isTrue();
        send(outlet, "two");
        assertThat(read(second, 3)).isEqualTo("two");
      }
      assertThat(outlet.bytesUnheard()).isEqualTo(7);
    }
  }

  @Test
  void client_secondWaits_isServedOnlyAfterTheFirstLeft() throws Exception {
    try (TcpOutlet outlet = TcpOutlet.listen(0);
        Socket first = connect(outlet)) {
      assertThat(outlet.awaitClient(LIMIT)).isTrue();
      try (Socket second = connect(outlet)) {
        send(outlet, "for the first");
        assertThat(read(first, 13)).isEqualTo("for the first");
        first.shutdownOutput();
        sendUntilHeard(outlet, second);
        assertThat(read(second, 1)).isEqualTo("2");
      }
    }
  }

  /** Sends single bytes until the client has one. */
  private static void sendUntilHeard(TcpOutlet outlet, Socket client) throws IOException {
    MonotonicClock clock = SystemClocks.monotonic();
    long start = clock.nanos();
    while (client.getInputStream().available() == 0) {
      assertThat(clock.nanos() - start).isLessThan(LIMIT.toNanos());
      send(outlet, "2");
    }
  }

  @Test
  void close_clientStillReading_getsEverythingAndThenTheEnd() throws Exception {
    EmulatedFrame frame =
        new EmulatedFrame(
            new CylinderTruth(
                EmulatedCylinder.ofNormalConcrete(100, 200, 25, BreakKind.BRITTLE),
                FrameProgram.cylinderAtCommonRate(25),
                1),
            EmulatedIndicator.perfect(LineLayout.KILONEWTONS, new BigDecimal("0.01"), 1.5e6, 1000),
            1);
    CompletableFuture<byte[]> received;
    TcpOutlet outlet = TcpOutlet.listen(0);
    try (Socket client = connect(outlet)) {
      received = CompletableFuture.supplyAsync(() -> readAll(client));
      assertThat(outlet.awaitClient(LIMIT)).isTrue();
      new Pacer(outlet).asFastAsTaken(frame, new EmulatedClock(Instant.EPOCH));
      outlet.close();
      byte[] bytes = received.get(20, TimeUnit.SECONDS);

      assertThat(bytes.length).isEqualTo((int) frame.sent().bytesSent());
      byte[] end = Arrays.copyOfRange(bytes, bytes.length - 4, bytes.length);
      assertThat(new String(end, StandardCharsets.US_ASCII)).isEqualTo("kN\r\n");
    }
    assertThatThrownBy(() -> send(outlet, "x"))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("closed");
  }

  private static byte[] readAll(Socket client) {
    try {
      byte[] all = client.getInputStream().readAllBytes();
      client.close();
      return all;
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
