package io.github.platenwire.cli;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Says who holds a rig, for whoever asks for it next. Stateless. */
final class Holder {
  private static final DateTimeFormatter SINCE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss VV", Locale.ROOT);

  private Holder() {}

  /** Such as {@code specimen RA-S-07-1 by anna on bench-2 (process 4711) since …}. */
  static String words(String purpose, Instant now, ZoneId zone) {
    return purpose
        + " by "
        + System.getProperty("user.name", "somebody")
        + " on "
        + machine()
        + " (process "
        + ProcessHandle.current().pid()
        + ") since "
        + SINCE.format(now.atZone(zone));
  }

  private static String machine() {
    for (String variable : new String[] {"HOSTNAME", "COMPUTERNAME"}) {
      String name = System.getenv(variable);
      if (name != null && !name.isBlank()) {
        return name;
      }
    }
    try {
      return InetAddress.getLocalHost().getHostName();
    } catch (UnknownHostException e) {
      return "this machine";
    }
  }
}
