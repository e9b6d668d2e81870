package io.github.platenwire.port;

import com.fazecast.jSerialComm.SerialPort;
import io.github.platenwire.emulate.PseudoTerminal;
import io.github.platenwire.reading.SystemClocks;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A program of its own that uses serial ports, for what can only be seen from outside it. */
final class SerialChild {
  private static final String SAYS = "child: ";

  private SerialChild() {}

  /** Runs in the child. */
  public static void main(String[] arguments) throws IOException {
    switch (arguments[0]) {
      case "careful" -> {
        Ports.serialNames();
        PseudoTerminal.open().close();
        say("temporary " + System.getProperty("java.io.tmpdir"));
        say("home " + System.getProperty("user.home"));
        sayLoaded();
      }
      case "careless" -> {
        SerialPort.getCommPorts();
        sayLoaded();
      }
      case "unloadable" -> sayWhyNot();
      case "open" -> readUntilTold(arguments[1]);
      default -> throw new IllegalArgumentException(arguments[0]);
    }
  }

  private static void say(String text) {
    System.out.println(SAYS + text);
    System.out.flush();
  }

  /** Names the native libraries in this process, as the system sees them. */
  private static void sayLoaded() throws IOException {
    Files.readAllLines(Path.of("/proc/self/maps")).stream()
        .filter(line -> line.contains("jSerialComm") || line.contains("jnidispatch"))
        .map(line -> line.substring(line.indexOf('/')))
        .distinct()
        .forEach(path -> say("loaded " + path));
  }

  /** Asks twice: the second answer must not come from the broken class. */
  private static void sayWhyNot() {
    for (int i = 0; i < 2; i++) {
      try {
        Ports.serialNames();
      } catch (PortException e) {
        say(e.reason() + " " + e.getMessage());
      }
    }
  }

  private static void readUntilTold(String address) throws IOException {
    Port port =
        Ports.opener(PortAddress.parse(address), LineSettings.COMMON, SystemClocks.monotonic())
            .open();
    Ports.beforeSerialShutdown(new Thread(() -> closeInOrder(port), "closing-record"));
    Thread never = new Thread(() -> say("forgotten work was done"), "forgotten");
    Ports.beforeSerialShutdown(never);
    say("forgot " + Ports.forgetSerialShutdown(never));
    say("ready");
    while (System.in.read() >= 0) {
      say("asked");
    }
  }

  /** What a recorder does at the end: reads a while longer, then closes. */
  private static void closeInOrder(Port port) {
    say("closing");
    try {
      for (int i = 0; i < 5; i++) {
        port.read();
      }
      say("port was open to the end");
      port.close();
    } catch (IOException e) {
      say("port was taken away: " + e.getMessage());
      throw new UncheckedIOException(e);
    }
  }

  static Process start(List<String> options, String... arguments) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(options);
    command.add("-cp");
    command.add(
        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")));
    command.add(SerialChild.class.getName());
    command.addAll(List.of(arguments));
    return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
  }

  /** The next thing the child says, without its log lines; empty at its end. */
  static String heard(BufferedReader out) throws IOException {
    String line = out.readLine();
    while (line != null && !line.startsWith(SAYS)) {
      line = out.readLine();
    }
    return line == null ? "" : line.substring(SAYS.length());
  }

  static List<String> allHeard(Process child) throws IOException {
    List<String> all = new ArrayList<>();
    try (BufferedReader out = child.inputReader(StandardCharsets.UTF_8)) {
      for (String text = heard(out); !text.isEmpty(); text = heard(out)) {
        all.add(text);
      }
    }
    return all;
  }
}
