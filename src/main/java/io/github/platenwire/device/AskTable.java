package io.github.platenwire.device;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;

/** Reads how a device is asked. Stateless. */
final class AskTable {
  private static final double INTERVAL_MILLIS = 100;
  private static final double TIMEOUT_MILLIS = 500;
  private static final double LONGEST_MILLIS = 60_000;
  private static final int LONGEST_COMMAND = 256;

  /** An answer to "who are you" has at most this many bytes; IEEE 488.2 says nothing of it. */
  private static final int LONGEST_IDENTITY = 256;

  private AskTable() {}

  /**
   * Reads the table {@code [ask]} of a line definition.
   *
   * @param terminator ends an answer, and a command where the table says nothing else
   * @param longest most bytes of an answer before its terminator
   */
  static Asking parse(TomlSection root, Terminator terminator, int longest) throws TomlException {
    TomlSection ask = root.section("ask");
    ask.allow("opening", "identity", "command", "terminator", "interval-ms", "timeout-ms");
    byte[] end = ask.has("terminator") ? Terminator.parse(ask).bytes() : terminator.bytes();
    List<byte[]> opening = new ArrayList<>();
    for (String command : ask.strings("opening")) {
      opening.add(command(ask, "opening", command, end));
    }
    Optional<String> identity = ask.optionalString("identity");
    Optional<byte[]> identityQuery =
        identity.isPresent()
            ? Optional.of(command(ask, "identity", identity.get(), end))
            : Optional.empty();
    int most = Math.max(longest, identity.isPresent() ? LONGEST_IDENTITY : 0) + Terminator.LONGEST;
    return new Asking(
        opening,
        identityQuery,
        command(ask, "command", ask.string("command"), end),
        intervalNanos(ask),
        timeoutNanos(ask),
        most,
        terminator::firstLine,
        terminator::firstLine);
  }

  private static byte[] command(TomlSection ask, String key, String text, byte[] end)
      throws TomlException {
    byte[] command;
    try {
      command = ByteText.parse(text);
    } catch (IllegalArgumentException e) {
      throw ask.error(key, String.valueOf(e.getMessage()));
    }
    if (command.length == 0 || command.length > LONGEST_COMMAND) {
      throw ask.error(key, "a command has 1 to " + LONGEST_COMMAND + " bytes");
    }
    byte[] sent = Arrays.copyOf(command, command.length + end.length);
    System.arraycopy(end, 0, sent, command.length, end.length);
    return sent;
  }

  /** A time in milliseconds as nanoseconds. */
  private static long nanos(TomlSection section, String key, double absent, double least)
      throws TomlException {
    OptionalDouble stated = section.optionalNumber(key);
    double millis = stated.orElse(absent);
    if (millis < least || millis > LONGEST_MILLIS) {
      throw section.error(key, key + " must be " + (long) least + " to 60000, but it is " + millis);
    }
    return (long) (millis * TimeUnit.MILLISECONDS.toNanos(1));
  }

  static long intervalNanos(TomlSection section) throws TomlException {
    return nanos(section, "interval-ms", INTERVAL_MILLIS, 1);
  }

  static long timeoutNanos(TomlSection section) throws TomlException {
    return nanos(section, "timeout-ms", TIMEOUT_MILLIS, 10);
  }
}
