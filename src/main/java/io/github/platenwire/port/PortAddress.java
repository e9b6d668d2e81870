package io.github.platenwire.port;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Where bytes come from, as a rig file or a command line names it. Immutable; safe for use by any
 * thread.
 *
 * <p>One of: a serial port by path or name ({@code /dev/ttyUSB0}, {@code ttyUSB0}, {@code COM3}, a
 * symbolic link), a serial server ({@code tcp://host:port}), a byte log played again ({@code
 * replay:FILE}), a person who types what was read ({@code typed}).
 */
public sealed interface PortAddress {
  /** The address as the person wrote it. */
  String text();

  /**
   * A serial port of this machine.
   *
   * @param text its path, or its name in the device folder
   */
  record Serial(String text) implements PortAddress {}

  /**
   * A serial server that hands over a line's bytes through TCP.
   *
   * @param text as written
   * @param host name or numeric address, without brackets
   * @param port 1 to 65535
   */
  record Server(String text, String host, int port) implements PortAddress {}

  /**
   * A byte log, played again at the pace at which it was written.
   *
   * @param text as written
   * @param file the log
   */
  record ByteLog(String text, Path file) implements PortAddress {}

  /**
   * A person who types what was read; see {@link TypedLines}.
   *
   * @param text as written
   */
  record Typed(String text) implements PortAddress {}

  /** How a rig file names a person as a port. */
  String TYPED = "typed";

  /** Whether a port as a rig file names it is a person who types. */
  static boolean isTyped(String text) {
    return text.equals(TYPED);
  }

  /**
   * Reads an address.
   *
   * @throws IllegalArgumentException if it can be none; the message says what would be right
   */
  static PortAddress parse(String text) {
    if (text.isBlank() || !text.equals(text.strip())) {
      throw wrong(text, "it is empty or has spaces around it");
    }
    if (text.chars().anyMatch(Character::isISOControl)) {
      throw wrong(text, "it has a control character in it");
    }
    if (isTyped(text)) {
      return new Typed(text);
    }
    String lower = text.toLowerCase(Locale.ROOT);
    if (lower.startsWith("tcp:")) {
      return server(text);
    }
    if (lower.startsWith("replay:")) {
      return byteLog(text);
    }
    if (text.contains("://")) {
      throw wrong(text, text.substring(0, text.indexOf("://")) + ":// is no kind of port");
    }
    return new Serial(text);
  }

  private static Server server(String text) {
    if (!text.startsWith("//", "tcp:".length())) {
      throw wrong(text, "two slashes must follow tcp:");
    }
    String place = text.substring("tcp://".length());
    int colon = place.lastIndexOf(':');
    if (colon < 0 || place.endsWith("]")) {
      throw wrong(text, "the port number is missing");
    }
    return new Server(text, host(text, place.substring(0, colon)), number(text, place, colon));
  }

  private static String host(String text, String written) {
    boolean bracketed = written.startsWith("[") && written.endsWith("]");
    String host = bracketed ? written.substring(1, written.length() - 1) : written;
    if (host.isEmpty()) {
      throw wrong(text, "the host is missing");
    }
    if (!bracketed && host.contains(":")) {
      throw wrong(text, "a host with colons stands in brackets, as in tcp://[::1]:4001");
    }
    if (host.matches(".*[\\s/@\\[\\]?#].*")) {
      throw wrong(text, "'" + host + "' is no host");
    }
    return host;
  }

  private static int number(String text, String place, int colon) {
    String digits = place.substring(colon + 1);
    int port = digits.matches("[0-9]{1,5}") ? Integer.parseInt(digits) : 0;
    if (port < 1 || port > 65_535) {
      throw wrong(text, "the port number must be 1 to 65535, not '" + digits + "'");
    }
    return port;
  }

  private static ByteLog byteLog(String text) {
    String file = text.substring("replay:".length());
    if (file.isBlank()) {
      throw wrong(text, "the file is missing");
    }
    try {
      return new ByteLog(text, Path.of(file));
    } catch (InvalidPathException e) {
      throw wrong(text, "'" + file + "' is no file name: " + e.getReason());
    }
  }

  private static IllegalArgumentException wrong(String text, String why) {
    return new IllegalArgumentException(
        "'"
            + text
            + "' is no port: "
            + why
            + ". Right would be /dev/ttyUSB0, COM3, tcp://host:4001, replay:FILE or typed");
  }
}
