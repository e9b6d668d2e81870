package io.github.platenwire.port;

import io.github.platenwire.port.PortException.Reason;
import io.github.platenwire.toml.Suggestions;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Says why a serial port could not be opened and what to do. Error numbers: {@code errno.h} of
 * Linux and macOS, system error codes of Windows; common practice, from memory. Stateless.
 */
final class SerialFailure {
  private static final int LONGEST_LIST = 8;
  private static final boolean WINDOWS =
      System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("windows");

  private SerialFailure() {}

  static PortException missing(String address, Path device) {
    StringBuilder text = new StringBuilder(address).append(": ");
    if (DeviceFile.isDanglingLink(device)) {
      text.append("is a link to ")
          .append(DeviceFile.target(device))
          .append(", which is not there. ");
    } else {
      text.append("there is no such port. ");
    }
    text.append("Is the adapter plugged in and the device switched on? ");
    return new PortException(Reason.MISSING, text.append(others(address)).toString());
  }

  private static String others(String address) {
    List<String> names;
    try {
      names = SerialLibrary.portNames();
    } catch (PortException e) {
      return "Which ports there are cannot be told: " + e.getMessage();
    }
    if (names.isEmpty()) {
      return "This machine lists no serial port";
    }
    String list = names.stream().limit(LONGEST_LIST).collect(Collectors.joining(", "));
    String more = names.size() > LONGEST_LIST ? ", ..." : "";
    return Suggestions.nearest(address, names).map(near -> "Did you mean " + near + "? ").orElse("")
        + "Ports of this machine: "
        + list
        + more;
  }

  static PortException notAPort(String address, String what) {
    return new PortException(
        Reason.UNUSABLE,
        address
            + ": "
            + what
            + ". Name the device file of a serial port; to play a byte log write replay:FILE");
  }

  /**
   * What an error number of a failed open means.
   *
   * @param address as the person wrote it
   * @param device its real path
   * @param code the system's error number
   */
  static PortException ofCode(String address, Path device, LineSettings settings, int code) {
    if (WINDOWS) {
      return ofWindowsCode(address, device, settings, code);
    }
    return switch (code) {
      case 1, 13 -> notPermitted(address, device);
      case 2 -> missing(address, device);
      case 11, 16, 35 -> busy(address, device);
      case 25 -> notAPort(address, "is no serial line");
      case 5 ->
          new PortException(
              Reason.UNUSABLE,
              address + ": the system knows the port, but there is no working hardware behind it");
      default -> refused(address, settings, code);
    };
  }

  private static PortException ofWindowsCode(
      String address, Path device, LineSettings settings, int code) {
    return switch (code) {
      case 2, 3 -> missing(address, device);
      case 5, 32 -> busy(address, device);
      default -> refused(address, settings, code);
    };
  }

  private static PortException busy(String address, Path device) {
    String who =
        DeviceFile.holders(device).stream()
            .filter(holder -> !holder.isThisProgram())
            .map(DeviceFile.Holder::words)
            .collect(Collectors.joining(", "));
    return busyBy(
        address, who.isEmpty() ? "another program, which the system does not let us see" : who);
  }

  /** The port is open in this program already. */
  static PortException busyHere(String address) {
    return busyBy(address, "this program itself");
  }

  private static PortException busyBy(String address, String holder) {
    return new PortException(
        Reason.BUSY,
        address + ": is in use by " + holder + ". End that use, or give each channel its own port");
  }

  private static PortException notPermitted(String address, Path device) {
    String user = System.getProperty("user.name", "you");
    String remedy =
        DeviceFile.helpfulGroup(device)
            .map(
                group ->
                    "It belongs to the group "
                        + group
                        + ": run  sudo usermod -aG "
                        + group
                        + " "
                        + user
                        + "  and log in anew, or the change has no effect")
            .orElseGet(
                () ->
                    "Its mode, owner and group are "
                        + DeviceFile.ownership(device)
                        + ": ask the machine's administrator to let a group of users open it");
    return new PortException(
        Reason.NOT_PERMITTED, address + ": " + user + " may not open it. " + remedy);
  }

  private static PortException refused(String address, LineSettings settings, int code) {
    return new PortException(
        Reason.UNUSABLE,
        address
            + ": cannot be opened as a serial line with "
            + settings.baud()
            + " baud, "
            + settings.dataBits()
            + " data bits, parity "
            + settings.parity().name().toLowerCase(Locale.ROOT)
            + ", "
            + settings.stopBits()
            + " stop bits (system error "
            + code
            + "). Check that the adapter can do these settings");
  }
}
