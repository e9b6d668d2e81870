package io.github.platenwire.port;

import io.github.platenwire.reading.MonotonicClock;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/**
 * Lines that a person types, as a port: what is offered on one side comes out of the port on the
 * other as bytes with their arrival time, like those of a machine. Safe for any thread.
 */
public final class TypedLines {
  private static final int WAIT_MILLIS = 100;

  /**
   * An empty line comes first. It is no reading, and after its end a decoder knows where the next
   * line begins.
   */
  private static final String FIRST = "";

  private final BlockingQueue<String> lines = new LinkedBlockingQueue<>();
  private final MonotonicClock clock;

  /**
   * Nothing typed yet.
   *
   * @param clock stamps each line when it is handed over
   */
  public TypedLines(MonotonicClock clock) {
    this.clock = clock;
    lines.add(FIRST);
  }

  /**
   * Hands a line over.
   *
   * @param line without its end
   */
  public void offer(String line) {
    lines.add(line);
  }

  /** Opens the port that the lines come out of. */
  public PortOpener opener() {
    return TypedPort::new;
  }

  /** The port. Each line is a chunk of its own, so that each has its own time. */
  private final class TypedPort implements Port {
    private volatile boolean closed;

    @Override
    public String address() {
      return PortAddress.TYPED;
    }

    @Override
    public Optional<Chunk> read() throws IOException {
      if (closed) {
        throw new LinkLostException("the entries were closed");
      }
      try {
        return Optional.ofNullable(lines.poll(WAIT_MILLIS, TimeUnit.MILLISECONDS))
            .map(line -> (line + "\n").getBytes(StandardCharsets.UTF_8))
            .map(bytes -> new Chunk(bytes, clock.nanos()));
      } catch (InterruptedException e) {
        throw new LinkLostException("the wait for an entry was cut short");
      }
    }

    @Override
    public boolean hasBytes() {
      return !lines.isEmpty();
    }

    @Override
    public void write(byte[] bytes) throws IOException {
      throw new IOException("nothing can be sent to a person who types");
    }

    @Override
    public void close() {
      closed = true;
    }
  }
}
