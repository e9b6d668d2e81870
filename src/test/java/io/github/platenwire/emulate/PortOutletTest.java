package io.github.platenwire.emulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.LinkLostException;
import io.github.platenwire.port.Port;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PortOutletTest {
  private static final class WrittenPort implements Port {
    private final ByteArrayOutputStream written = new ByteArrayOutputStream();
    private boolean closed;

    @Override
    public String address() {
      return "written";
    }

    @Override
    public Optional<Chunk> read() {
      return Optional.empty();
    }

    @Override
    public void write(byte[] bytes) throws IOException {
      if (closed) {
        throw new LinkLostException("closed");
      }
      written.writeBytes(bytes);
    }

    @Override
    public void close() {
      closed = true;
    }
  }

  @Test
  void send_partOfAnArray_writesJustThat() throws IOException {
    WrittenPort port = new WrittenPort();
    PortOutlet outlet = new PortOutlet(port);
    outlet.send("xx+0001 kN\nyy".getBytes(StandardCharsets.US_ASCII), 2, 9, 0);

    assertThat(port.written.toString(StandardCharsets.US_ASCII)).isEqualTo("+0001 kN\n");
  }

  @Test
  void close_thenSend_closesThePortAndFails() {
    WrittenPort port = new WrittenPort();
    PortOutlet outlet = new PortOutlet(port);
    outlet.close();

    assertThat(port.closed).isTrue();
    assertThatThrownBy(() -> outlet.send(new byte[1], 0, 1, 0))
        .isInstanceOf(LinkLostException.class);
  }
}
