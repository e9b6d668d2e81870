package io.github.platenwire.cli;

import io.github.platenwire.emulate.ByteOutlet;
import io.github.platenwire.emulate.ClockedPort;
import io.github.platenwire.emulate.EmulatedClock;
import io.github.platenwire.emulate.InMemoryOutlet;
import io.github.platenwire.emulate.Pacer;
import io.github.platenwire.emulate.PseudoTerminal;
import io.github.platenwire.emulate.PseudoTerminalOutlet;
import io.github.platenwire.emulate.TcpOutlet;
import io.github.platenwire.emulate.TimedBytes;
import io.github.platenwire.emulate.Waiter;
import io.github.platenwire.port.InMemoryPort;
import io.github.platenwire.port.PortAddress;
import io.github.platenwire.port.Ports;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.recorder.OpenerFactory;
import io.github.platenwire.recorder.RecorderClocks;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.Iterator;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What stands on the demo's bench in place of a load frame's cable: at true pace a pseudo-terminal
 * (TCP where there are none), on an emulated clock a port in memory. Confined to the command's
 * thread.
 */
abstract sealed class DemoBench implements AutoCloseable {
  /** From the start of one test to the start of the next, on the emulated clock. */
  static final Duration BETWEEN_TESTS = Duration.ofMinutes(6);

  private static final Logger LOG = LoggerFactory.getLogger(DemoBench.class);

  /** The port as the rig file names it. */
  abstract String port();

  /** How the recorder opens it, for the next test. */
  abstract OpenerFactory openers();

  /** The clocks of the test that {@link #openers} was asked for. */
  abstract RecorderClocks clocks();

  /** Sends one test's bytes; returns when all are sent or the pacer is stopped. */
  abstract Pacer send(Iterator<TimedBytes> stream);

  /** Ends the sending of one test. */
  abstract void endTest();

  @Override
  public abstract void close() throws IOException;

  /** A bench at true pace. */
  static DemoBench realPace() throws IOException {
    return new RealPace();
  }

  /** A bench on an emulated clock that starts at a moment. */
  static DemoBench fast(Instant start) {
    return new Fast(start);
  }

  /** Starts a thread that sends. */
  final Pacer start(ByteOutlet outlet, Sending sending) {
    Pacer pacer = new Pacer(outlet);
    Thread thread =
        new Thread(
            () -> {
              try {
                sending.send(pacer);
              } catch (IOException e) {
                LOG.info("the emulated device ended: {}", e.getMessage());
              }
            },
            "emulated-device");
    thread.setDaemon(true);
    thread.start();
    return pacer;
  }

  /** Sends through a pacer. */
  @FunctionalInterface
  interface Sending {
    /** Sends everything. */
    void send(Pacer pacer) throws IOException;
  }

  private static final class RealPace extends DemoBench {
    private final String port;
    private final ByteOutlet outlet;

    RealPace() throws IOException {
      ByteOutlet made;
      String address;
      try {
        PseudoTerminal line = PseudoTerminal.open();
        made = new PseudoTerminalOutlet(line);
        address = line.path();
      } catch (IOException e) {
        LOG.info("no pseudo-terminal here, so TCP is used: {}", e.getMessage());
        TcpOutlet tcp = TcpOutlet.listen(0);
        made = tcp;
        address = "tcp://" + tcp.address();
      }
      this.outlet = made;
      this.port = address;
    }

    @Override
    String port() {
      return port;
    }

    @Override
    OpenerFactory openers() {
      return (address, settings) ->
          Ports.opener(PortAddress.parse(address), settings, SystemClocks.monotonic());
    }

    @Override
    RecorderClocks clocks() {
      return RecorderClocks.system();
    }

    @Override
    Pacer send(Iterator<TimedBytes> stream) {
      return start(
          outlet, pacer -> pacer.atTruePace(stream, SystemClocks.monotonic(), Waiter.parking()));
    }

    @Override
    void endTest() {}

    @Override
    public void close() throws IOException {
      outlet.close();
    }
  }

  private static final class Fast extends DemoBench {
    private static final int WAITING_CHUNKS = 256;

    private final Instant start;
    private int tests;
    private InMemoryPort port = new InMemoryPort("memory", WAITING_CHUNKS);
    private EmulatedClock clock;

    Fast(Instant start) {
      this.start = start;
      this.clock = new EmulatedClock(start);
    }

    @Override
    String port() {
      return "memory:frame-1";
    }

    @Override
    OpenerFactory openers() {
      clock = new EmulatedClock(start.plus(BETWEEN_TESTS.multipliedBy(tests++)));
      port = new InMemoryPort(port(), WAITING_CHUNKS);
      ClockedPort opened = new ClockedPort(port, clock);
      return (address, settings) -> () -> opened;
    }

    @Override
    RecorderClocks clocks() {
      return new RecorderClocks(clock, clock, SystemClocks.monotonic());
    }

    @Override
    Pacer send(Iterator<TimedBytes> stream) {
      EmulatedClock sending = new EmulatedClock(clock.now());
      return start(new InMemoryOutlet(port), pacer -> pacer.asFastAsTaken(stream, sending));
    }

    @Override
    void endTest() {
      port.end();
    }

    @Override
    public void close() {
      port.end();
    }
  }
}
