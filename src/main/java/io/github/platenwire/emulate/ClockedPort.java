package io.github.platenwire.emulate;

import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.Port;
import java.io.IOException;
import java.util.Optional;

/**
 * A port that moves an emulated clock along with what is read from it. The clock reaches a chunk's
 * time only when the reader comes back for more, so that whoever looks at the clock and then at
 * what the reader has handed on misses nothing up to that time. Confined to the thread that reads
 * it.
 */
public final class ClockedPort implements Port {
  private final Port port;
  private final EmulatedClock clock;
  private long handedOnNanos;

  /**
   * Wraps a port.
   *
   * @param port whose chunks carry emulated times
   * @param clock moved along
   */
  public ClockedPort(Port port, EmulatedClock clock) {
    this.port = port;
    this.clock = clock;
    this.handedOnNanos = clock.nanos();
  }

  @Override
  public String address() {
    return port.address();
  }

  @Override
  public Optional<Chunk> read() throws IOException {
    clock.advanceTo(Math.max(clock.nanos(), handedOnNanos));
    Optional<Chunk> chunk = port.read();
    chunk.ifPresent(read -> handedOnNanos = read.arrivalNanos());
    return chunk;
  }

  @Override
  public void write(byte[] bytes) throws IOException {
    port.write(bytes);
  }

  @Override
  public void close() {
    port.close();
  }
}
