package io.github.platenwire.port;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.reading.SystemClocks;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(20)
class TcpPortTest {
  private ServerSocket server;
  private Port port;
  private Socket line;

  @BeforeEach
  void connect() throws IOException {
    server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
    port = opener(server.getLocalPort()).open();
    line = server.accept();
  }

  @AfterEach
  void disconnect() throws IOException {
    port.close();
    line.close();
    server.close();
  }

  private static PortOpener opener(int number) {
    String host = InetAddress.getLoopbackAddress().getHostAddress();
    return Ports.opener(
        PortAddress.parse("tcp://" + host + ":" + number),
        LineSettings.COMMON,
        SystemClocks.monotonic());
  }

  private String readText() throws IOException {
    Optional<Chunk> chunk;
    do {
      chunk = port.read();
    } while (chunk.isEmpty());
    return new String(chunk.get().bytes(), StandardCharsets.US_ASCII);
  }

  @Test
  void hasBytes_beforeAndAfterReading_tellsWhetherAnyWait() throws IOException {
    assertThat(port.hasBytes()).isFalse();
    line.getOutputStream().write(new byte[] {'1', '2'});
    while (!port.hasBytes()) {
      Thread.onSpinWait();
    }
    assertThat(readText()).isEqualTo("12");
    assertThat(port.hasBytes()).isFalse();
  }

  @Test
  void read_serverSends_givesBytesWithStamp() throws IOException {
    long before = SystemClocks.monotonic().nanos();
    line.getOutputStream().write("12.5 kN\r\n".getBytes(StandardCharsets.US_ASCII));

    Chunk chunk = null;
    while (chunk == null) {
      chunk = port.read().orElse(null);
    }

    assertThat(chunk.bytes()).asString(StandardCharsets.US_ASCII).isEqualTo("12.5 kN\r\n");
    assertThat(chunk.arrivalNanos()).isBetween(before, SystemClocks.monotonic().nanos());
  }

  @Test
  void read_serverSilent_returnsEmpty() throws IOException {
    assertThat(port.read()).isEmpty();
    assertThat(port.address()).startsWith("tcp://");
  }

  @Test
  void write_serverListens_getsTheBytes() throws IOException {
    port.write(new byte[] {1, 2, 3});

    assertThat(line.getInputStream().readNBytes(3)).containsExactly(1, 2, 3);
  }

  @Test
  void read_serverCloses_restIsReadThenLinkLost() throws IOException {
    line.getOutputStream().write('x');
    line.close();

    assertThat(readText()).isEqualTo("x");
    assertThatThrownBy(this::readText)
        .isInstanceOf(LinkLostException.class)
        .hasMessageContaining("the server ended the connection");
  }

  @Test
  void read_serverResets_linkLost() throws IOException {
    line.setSoLinger(true, 0);
    line.close();

    assertThatThrownBy(this::readText)
        .isInstanceOf(LinkLostException.class)
        .hasMessageContaining(port.address());
  }

  @Test
  void close_ownSide_readSaysWhoClosed() {
    port.close();
    port.close();

    assertThatThrownBy(port::read)
        .isInstanceOf(LinkLostException.class)
        .hasMessageContaining("closed by this program");
  }

  @Test
  void open_nobodyListens_saysWhatToCheck() throws IOException {
    int number = server.getLocalPort();
    server.close();

    assertThatThrownBy(() -> opener(number).open())
        .isInstanceOfSatisfying(
            PortException.class,
            e -> assertThat(e.reason()).isEqualTo(PortException.Reason.MISSING))
        .hasMessageContaining("nothing answers at port " + number)
        .hasMessageContaining("Check the port number");
  }

  /** RFC 6761 section 6.4: names under invalid never resolve. */
  @Test
  void open_unknownHost_saysWhatToCheck() {
    PortOpener opener =
        Ports.opener(
            PortAddress.parse("tcp://gauges.invalid:4001"),
            LineSettings.COMMON,
            SystemClocks.monotonic());

    assertThatThrownBy(opener::open)
        .isInstanceOfSatisfying(
            PortException.class,
            e -> assertThat(e.reason()).isEqualTo(PortException.Reason.MISSING))
        .hasMessageContaining("no host is known by the name gauges.invalid");
  }
}
