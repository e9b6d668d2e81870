package io.github.platenwire.cli;

import io.github.platenwire.port.LineSettings;
import io.github.platenwire.port.LineSettings.Parity;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How a serial line is set, said on the command line. */
final class LineOption {
  @Option(names = "--baud", paramLabel = "N", description = "Speed of the line.")
  private @Nullable Integer baud;

  @Option(
      names = "--format",
      paramLabel = "8N1",
      description = "Data bits, parity (N, E or O) and stop bits of the line.")
  private @Nullable String format;

  boolean isSet() {
    return baud != null || format != null;
  }

  /** The usual settings with what was said put in their place. */
  LineSettings over(LineSettings usual) throws CommandException {
    int speed = baud == null ? usual.baud() : baud;
    if (format == null) {
      return new LineSettings(
          speed, usual.dataBits(), usual.parity(), usual.stopBits(), usual.flow());
    }
    String wanted = format.toUpperCase(Locale.ROOT);
    if (!wanted.matches("[78][NEO][12]")) {
      throw new CommandException(
          ExitCode.USAGE,
          "--format " + format + " cannot be: data bits, parity and stop bits, such as 8N1 or 7E1");
    }
    Parity parity =
        switch (wanted.charAt(1)) {
          case 'E' -> Parity.EVEN;
          case 'O' -> Parity.ODD;
          default -> Parity.NONE;
        };
    return new LineSettings(
        speed, wanted.charAt(0) - '0', parity, wanted.charAt(2) - '0', usual.flow());
  }
}
