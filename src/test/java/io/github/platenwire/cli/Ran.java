package io.github.platenwire.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import picocli.CommandLine;

/**
 * A command that was run to its end in this process, where a process of its own would show nothing
 * more and would take seconds to start.
 *
 * @param exitCode how it ended
 * @param out what it printed
 * @param err what it complained of
 */
record Ran(int exitCode, String out, String err) {
  static Ran of(Object... args) {
    PrintStream console = System.out;
    PrintStream complaints = System.err;
    ByteArrayOutputStream heard = new ByteArrayOutputStream();
    ByteArrayOutputStream complained = new ByteArrayOutputStream();
    StringWriter errors = new StringWriter();
    int exitCode;
    try {
      System.setOut(new PrintStream(heard, true, StandardCharsets.UTF_8));
      System.setErr(new PrintStream(complained, true, StandardCharsets.UTF_8));
      CommandLine command = Platenwire.commandLine();
      command.setErr(new PrintWriter(errors, true));
      exitCode = command.execute(Stream.of(args).map(Object::toString).toArray(String[]::new));
      command.getOut().flush();
    } finally {
      System.setOut(console);
      System.setErr(complaints);
      Logging.stop();
    }
    return new Ran(
        exitCode,
        heard.toString(StandardCharsets.UTF_8),
        errors + complained.toString(StandardCharsets.UTF_8));
  }
}
