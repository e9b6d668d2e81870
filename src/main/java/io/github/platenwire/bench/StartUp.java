package io.github.platenwire.bench;

import io.github.platenwire.reading.SystemClocks;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** How long the program takes to say its version, beside a Java program that does nothing. */
final class StartUp {
  private final String mainClass;
  private final int rounds;

  /**
   * Prepares the measurement.
   *
   * @param mainClass the program's own
   * @param rounds how often each is started
   */
  StartUp(String mainClass, int rounds) {
    this.mainClass = mainClass;
    this.rounds = rounds;
  }

  List<BenchFigure> run() throws IOException, InterruptedException, BenchException {
    List<Double> program = new ArrayList<>();
    List<Double> nothing = new ArrayList<>();
    for (int round = 0; round < rounds; round++) {
      program.add(seconds(mainClass, "--version"));
      nothing.add(seconds(Nothing.class.getName()));
    }
    return List.of(
        BenchFigure.of("start_seconds", "Program started", Medians.of(program), "s")
            .atMost(2.5, Medians.of(nothing), "empty Java"));
  }

  private static double seconds(String... words)
      throws IOException, InterruptedException, BenchException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-cp");
    command.add(System.getProperty("java.class.path"));
    command.addAll(List.of(words));
    long start = SystemClocks.monotonic().nanos();
    Process process =
        new ProcessBuilder(command)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    int code = process.waitFor();
    double seconds = (SystemClocks.monotonic().nanos() - start) / 1e9;
    if (code != 0) {
      throw new BenchException("starting " + words[0] + " ended with " + code);
    }
    return seconds;
  }
}
