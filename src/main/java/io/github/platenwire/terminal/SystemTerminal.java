package io.github.platenwire.terminal;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/** The terminal that the program was started from, if any. Stateless. */
public final class SystemTerminal {
  private static final long PATIENCE_MILLIS = 500;

  private SystemTerminal() {}

  /** What standard output can do. Asks the system anew; to be called once. */
  public static TerminalTraits traits() {
    return TerminalTraits.of(outputIsTerminal(), charset(), System.getenv());
  }

  /** Standard output. */
  public static TerminalOut out() {
    return new TerminalOut(System.out, charset());
  }

  /** Standard error, for a command whose standard output a program reads. */
  public static TerminalOut err() {
    return new TerminalOut(System.err, charset());
  }

  /** Standard output for another program to read: UTF-8, whatever the terminal shows. */
  public static TerminalOut forProgram() {
    return new TerminalOut(System.out, StandardCharsets.UTF_8);
  }

  /** What standard error can do. Asks the system anew; to be called once. */
  public static TerminalTraits errTraits() {
    return TerminalTraits.of(errIsTerminal(), charset(), System.getenv());
  }

  /** Plain lines without colour, in whatever characters the system's encoding has. */
  public static TerminalTraits plainTraits() {
    return TerminalTraits.of(/* terminal= */ false, charset(), System.getenv());
  }

  /** Standard input. */
  public static BufferedReader in() {
    return new BufferedReader(new InputStreamReader(System.in, charset()));
  }

  /**
   * How large the terminal is, each time it is asked: as {@code stty} says, else as {@code COLUMNS}
   * and {@code LINES} say, else the usual size.
   */
  public static Supplier<TerminalSize> sizes() {
    return () ->
        askedSize().orElseGet(() -> fromEnvironment(System.getenv()).orElse(TerminalSize.USUAL));
  }

  /** The size in the environment, if there is a possible one. */
  static Optional<TerminalSize> fromEnvironment(Map<String, String> environment) {
    return parse(
        environment.getOrDefault("LINES", "") + " " + environment.getOrDefault("COLUMNS", ""));
  }

  /** Lines and columns as {@code stty size} writes them; a size of zero is no size. */
  static Optional<TerminalSize> parse(String linesAndColumns) {
    String text = linesAndColumns.strip();
    if (!text.matches("[1-9][0-9]{0,3} [1-9][0-9]{0,3}")) {
      return Optional.empty();
    }
    int space = text.indexOf(' ');
    return Optional.of(
        new TerminalSize(
            Integer.parseInt(text.substring(space + 1)),
            Integer.parseInt(text.substring(0, space))));
  }

  private static Optional<TerminalSize> askedSize() {
    File terminal = new File("/dev/tty");
    if (!terminal.exists()) {
      return Optional.empty();
    }
    ProcessBuilder stty = new ProcessBuilder("stty", "size").redirectInput(terminal);
    return run(stty.redirectError(ProcessBuilder.Redirect.DISCARD)).flatMap(SystemTerminal::parse);
  }

  /*
   * System.console() would also ask for a terminal at the input, and from JDK 22 on is there
   * without any terminal. Where there is no shell to ask, plain lines are written.
   */
  private static boolean outputIsTerminal() {
    ProcessBuilder test = new ProcessBuilder("sh", "-c", "test -t 1");
    return run(test.redirectOutput(ProcessBuilder.Redirect.INHERIT)).isPresent();
  }

  private static boolean errIsTerminal() {
    ProcessBuilder test = new ProcessBuilder("sh", "-c", "test -t 2");
    return run(test.redirectError(ProcessBuilder.Redirect.INHERIT)).isPresent();
  }

  /** What a small program writes, if it ends well and soon. */
  private static Optional<String> run(ProcessBuilder builder) {
    try {
      Process process = builder.start();
      if (!process.waitFor(PATIENCE_MILLIS, TimeUnit.MILLISECONDS)) {
        process.destroyForcibly();
        return Optional.empty();
      }
      String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
      return process.exitValue() == 0 ? Optional.of(text) : Optional.empty();
    } catch (IOException | InterruptedException e) {
      return Optional.empty();
    }
  }

  /** The terminal's encoding, by the first of the properties that this Java version sets. */
  private static Charset charset() {
    for (String key : new String[] {"stdout.encoding", "sun.stdout.encoding", "native.encoding"}) {
      String name = System.getProperty(key, "");
      if (!name.isEmpty() && Charset.isSupported(name)) {
        return Charset.forName(name);
      }
    }
    return StandardCharsets.US_ASCII;
  }
}
