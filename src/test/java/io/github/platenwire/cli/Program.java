package io.github.platenwire.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;

/**
 * The program in a process of its own, as a person starts it: what it prints is followed line by
 * line.
 */
final class Program implements AutoCloseable {
  private static final Duration LIMIT = Duration.ofSeconds(60);

  private final Process process;
  private final List<String> out = new CopyOnWriteArrayList<>();
  private final List<String> err = new CopyOnWriteArrayList<>();
  private final Thread outReader;
  private final Thread errReader;

  private Program(Process process) {
    this.process = process;
    this.outReader = follow(process.inputReader(StandardCharsets.UTF_8), out);
    this.errReader = follow(process.errorReader(StandardCharsets.UTF_8), err);
  }

  static Program start(Object... args) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(
        List.of(
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-cp",
            System.getProperty("java.class.path")));
    command.add(Platenwire.class.getName());
    for (Object arg : args) {
      command.add(arg.toString());
    }
    return new Program(new ProcessBuilder(command).start());
  }

  /** Runs to the end. */
  static Program run(Object... args) throws IOException, InterruptedException {
    Program program = start(args);
    program.awaitExit();
    return program;
  }

  private Thread follow(BufferedReader reader, List<String> lines) {
    Thread thread =
        new Thread(
            () -> {
              try (reader) {
                for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                  synchronized (this) {
                    lines.add(line);
                    notifyAll();
                  }
                }
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              } finally {
                synchronized (this) {
                  notifyAll();
                }
              }
            });
    thread.setDaemon(true);
    thread.start();
    return thread;
  }

  /** Waits for a line on standard output or standard error. */
  synchronized void awaitLine(Predicate<String> wanted) throws InterruptedException {
    long deadline = System.nanoTime() + LIMIT.toNanos();
    while (out.stream().noneMatch(wanted) && err.stream().noneMatch(wanted)) {
      long left = deadline - System.nanoTime();
      if (left <= 0 || (!outReader.isAlive() && !errReader.isAlive())) {
        throw new AssertionError("the line never came.\nout: " + out + "\nerr: " + err);
      }
      TimeUnit.NANOSECONDS.timedWait(this, Math.min(left, TimeUnit.SECONDS.toNanos(1)));
    }
  }

  int awaitExit() throws InterruptedException {
    if (!process.waitFor(LIMIT.toSeconds(), TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new AssertionError("the program did not end.\nout: " + out + "\nerr: " + err);
    }
    outReader.join();
    errReader.join();
    return process.exitValue();
  }

  Process process() {
    return process;
  }

  String out() {
    return String.join("\n", out);
  }

  String err() {
    return String.join("\n", err);
  }

  List<String> outLines() {
    return out;
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }
}
