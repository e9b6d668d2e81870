package io.github.platenwire.cli;

import io.github.platenwire.emulate.PortOutlet;
import io.github.platenwire.emulate.PseudoTerminal;
import io.github.platenwire.emulate.PseudoTerminalOutlet;
import io.github.platenwire.emulate.TcpOutlet;
import io.github.platenwire.emulate.TwoWayOutlet;
import io.github.platenwire.port.LineSettings;
import io.github.platenwire.port.PortAddress;
import io.github.platenwire.port.Ports;
import io.github.platenwire.reading.MonotonicClock;
import java.io.IOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Duration;
import java.util.function.LongSupplier;

/**
 * Where an emulated device answers: a pseudo-terminal, a TCP port or a serial port. Confined to one
 * thread.
 */
final class EmulationPlace implements AutoCloseable {
  private static final Duration LOOK_AGAIN = Duration.ofMillis(500);

  private final String address;
  private final TwoWayOutlet outlet;
  private final Waiting waiting;
  private final LongSupplier bytesUnheard;

  /** Waits until somebody reads. */
  @FunctionalInterface
  private interface Waiting {
    void await(byte[] nudge) throws IOException, InterruptedException;
  }

  private EmulationPlace(
      String address, TwoWayOutlet outlet, Waiting waiting, LongSupplier bytesUnheard) {
    this.address = address;
    this.outlet = outlet;
    this.waiting = waiting;
    this.bytesUnheard = bytesUnheard;
  }

  /**
   * Opens a place.
   *
   * @param settings of a serial port
   */
  static EmulationPlace open(String where, LineSettings settings, MonotonicClock clock)
      throws IOException, CommandException {
    if (where.equals("pty")) {
      return onPseudoTerminal();
    }
    PortAddress address = PortAddress.parse(where);
    if (address instanceof PortAddress.Server server) {
      return onTcp(server);
    }
    if (address instanceof PortAddress.ByteLog) {
      throw new CommandException(
          ExitCode.USAGE,
          "--on takes pty, tcp://host:port or a serial port; a byte log cannot be answered on");
    }
    PortOutlet outlet = new PortOutlet(Ports.opener(address, settings, clock).open());
    return new EmulationPlace(where, outlet, nudge -> {}, () -> 0);
  }

  private static EmulationPlace onPseudoTerminal() throws IOException {
    PseudoTerminal line = PseudoTerminal.open();
    PseudoTerminalOutlet outlet = new PseudoTerminalOutlet(line);
    return new EmulationPlace(
        line.path(), outlet, nudge -> awaitReader(outlet, nudge), outlet::bytesUnheard);
  }

  private static void awaitReader(PseudoTerminalOutlet outlet, byte[] nudge) throws IOException {
    outlet.send(nudge, 0, nudge.length, 0);
    boolean read = false;
    while (!read) {
      read = outlet.awaitReader(LOOK_AGAIN);
    }
  }

  private static EmulationPlace onTcp(PortAddress.Server server)
      throws IOException, CommandException {
    try {
      TcpOutlet outlet = TcpOutlet.listen(InetAddress.getByName(server.host()), server.port());
      return new EmulationPlace(
          outlet.address(), outlet, nudge -> awaitClient(outlet), outlet::bytesUnheard);
    } catch (UnknownHostException e) {
      throw new CommandException(ExitCode.USAGE, "there is no host '" + server.host() + "'", e);
    }
  }

  private static void awaitClient(TcpOutlet outlet) throws InterruptedException {
    boolean there = false;
    while (!there) {
      there = outlet.awaitClient(LOOK_AGAIN);
    }
  }

  String address() {
    return address;
  }

  TwoWayOutlet outlet() {
    return outlet;
  }

  /**
   * Waits until somebody reads.
   *
   * @param nudge lies in the port until then, where nothing else shows whether it is read
   */
  void awaitReader(byte[] nudge) throws IOException, InterruptedException {
    waiting.await(nudge);
  }

  String unheardWords() {
    long unheard = bytesUnheard.getAsLong();
    return unheard == 0 ? "Every byte was taken." : unheard + " bytes found nobody to read them.";
  }

  @Override
  public void close() throws IOException {
    outlet.close();
  }
}
