package io.github.platenwire.port;

import io.github.platenwire.reading.MonotonicClock;
import java.util.List;

/** The ports of this machine and how they are opened. Stateless; safe for use by any thread. */
public final class Ports {
  private Ports() {}

  /**
   * What opens the port at an address; nothing is opened yet.
   *
   * @param address where
   * @param settings how a serial line is set; other ports take no notice of it
   * @param clock stamps each chunk and paces a byte log
   */
  public static PortOpener opener(
      PortAddress address, LineSettings settings, MonotonicClock clock) {
    if (address instanceof PortAddress.Server server) {
      return () -> TcpPort.open(server, clock);
    }
    if (address instanceof PortAddress.ByteLog log) {
      return ReplayPort.onceOnly(log.file(), log.text(), ReplayPort.Pace.AS_RECORDED, clock);
    }
    if (address instanceof PortAddress.Typed typed) {
      return () -> {
        throw new PortException(
            PortException.Reason.UNUSABLE,
            typed.text() + ": nobody types here; entries are typed into 'record'");
      };
    }
    return new SerialOpener(address.text(), settings, clock);
  }

  /**
   * The serial ports that the system lists, sorted. Pseudo-terminals are never listed but can be
   * opened by their path.
   *
   * @throws PortException if the library for serial ports cannot be loaded
   */
  public static List<String> serialNames() throws PortException {
    return SerialLibrary.portNames();
  }

  /**
   * The serial ports that the system lists, with what it knows of them, sorted by path.
   *
   * @throws PortException if the library for serial ports cannot be loaded
   */
  public static List<ListedPort> listed() throws PortException {
    return SerialLibrary.ports();
  }

  /**
   * Has work done when the program is told to end, before its serial ports are closed: there a
   * recorder closes its record. Several are started together, each is waited for, all of them no
   * longer than 10 s.
   *
   * @param closing not started yet; started once, at the end of the program
   * @throws IllegalStateException if the program is ending already
   */
  public static void beforeSerialShutdown(Thread closing) {
    ClosingOrder.add(closing);
  }

  /**
   * Takes back what {@link #beforeSerialShutdown} was told.
   *
   * @return whether it stood there
   */
  public static boolean forgetSerialShutdown(Thread closing) {
    return ClosingOrder.remove(closing);
  }
}
