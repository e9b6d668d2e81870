package io.github.platenwire.port;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortThreadFactory;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Loads the library for serial ports, once, and no sooner than a serial port is wanted: the class
 * loads native code when it is first touched, and would end the program on a system that it does
 * not know. Safe for use by any thread.
 */
final class SerialLibrary {
  private static final Logger LOG = LoggerFactory.getLogger(SerialLibrary.class);
  private static final String TEMPORARY = "java.io.tmpdir";
  private static final String HOME = "user.home";
  private static boolean ready;
  private static @Nullable String failure;

  private SerialLibrary() {}

  /**
   * Must be called before anything else of the library.
   *
   * @throws PortException if it cannot be loaded, with what to do; then also at each later call
   */
  static synchronized void need() throws PortException {
    if (ready) {
      return;
    }
    if (failure == null) {
      failure = load();
    }
    if (failure != null) {
      throw new PortException(PortException.Reason.UNUSABLE, failure);
    }
    ready = true;
  }

  /** The serial ports that the system lists, sorted. */
  static List<String> portNames() throws PortException {
    need();
    return Arrays.stream(SerialPort.getCommPorts())
        .map(SerialPort::getSystemPortPath)
        .sorted()
        .toList();
  }

  /** The serial ports that the system lists, with what it knows of them, sorted by path. */
  static List<ListedPort> ports() throws PortException {
    need();
    return Arrays.stream(SerialPort.getCommPorts())
        .map(
            port ->
                new ListedPort(
                    port.getSystemPortPath(),
                    port.getDescriptivePortName(),
                    port.getPortLocation().equals("0-0") ? "" : port.getPortLocation()))
        .sorted(Comparator.comparing(ListedPort::path))
        .toList();
  }

  private static @Nullable String load() {
    if (NativeLibraries.serialResources().isEmpty()) {
      return "serial ports are not supported on this system, "
          + System.getProperty("os.name")
          + "; use a serial server, tcp://host:port";
    }
    Path folder;
    try {
      folder = NativeLibraries.unpackSerial();
    } catch (IOException e) {
      return "the library for serial ports cannot be unpacked where nobody else can write: "
          + e.getMessage()
          + ". Set the environment variable XDG_CACHE_HOME to a folder of your own";
    }
    try {
      initialise(folder);
      return null;
    } catch (LinkageError e) {
      LOG.debug("the library for serial ports", e);
      return "the library for serial ports cannot be loaded from "
          + folder
          + ". If that folder is on a file system mounted noexec, set the environment variable"
          + " XDG_CACHE_HOME to a folder of your own on another one. The system said: "
          + firstReason(String.valueOf(e.getMessage()));
    }
  }

  /** The library tells of each file it tried, one a line with a number; the first is ours. */
  private static String firstReason(String message) {
    return message
        .lines()
        .map(String::strip)
        .filter(line -> line.startsWith("[1]: "))
        .map(line -> line.substring("[1]: ".length()))
        .findFirst()
        .orElse(message);
  }

  /**
   * Touches the class. Meanwhile the temporary folder and the home folder are the private one:
   * should the library fail to load from the path it is given, it unpacks a copy for itself into
   * each of them, open to everybody, and loads that; and it removes what older versions left there.
   */
  private static void initialise(Path folder) {
    SerialPortThreadFactory.set(
        work -> {
          Thread thread = new Thread(work, "serial-library");
          thread.setDaemon(true);
          return thread;
        });
    if (System.getProperty(NativeLibraries.SERIAL_PATH) == null) {
      System.setProperty(NativeLibraries.SERIAL_PATH, folder.toString());
    }
    String temporary = System.setProperty(TEMPORARY, folder.toString());
    String home = System.setProperty(HOME, folder.toString());
    try {
      SerialPort.addShutdownHook(ClosingOrder.beforePorts());
    } finally {
      restore(TEMPORARY, temporary);
      restore(HOME, home);
    }
  }

  private static void restore(String property, @Nullable String value) {
    if (value != null) {
      System.setProperty(property, value);
    } else {
      System.clearProperty(property);
    }
  }
}
