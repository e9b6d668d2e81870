package io.github.platenwire.cli;

import io.github.platenwire.emulate.PseudoTerminal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** Writes lines into a pseudo-terminal at a rate, as any other program may. */
final class Feeder {
  private Feeder() {}

  /**
   * A test of a cylinder as an indicator in pounds tells it: quiet, up to a peak at about 35 psi/s,
   * a sudden break, a tail.
   */
  static List<Integer> cylinder(int peakPounds, int risingReadings, int tailReadings) {
    List<Integer> pounds = new ArrayList<>();
    for (int i = 0; i < 150; i++) {
      pounds.add(i % 2);
    }
    for (int i = 1; i <= risingReadings; i++) {
      pounds.add((int) Math.round((double) peakPounds * i / risingReadings));
    }
    for (int i = 0; i < tailReadings; i++) {
      pounds.add(Math.max(200, peakPounds / 5 - 40 * i));
    }
    return pounds;
  }

  static void feed(PseudoTerminal line, List<Integer> pounds, double hertz) throws IOException {
    long start = System.nanoTime();
    for (int i = 0; i < pounds.size(); i++) {
      long due = start + (long) (i * 1e9 / hertz);
      while (System.nanoTime() < due) {
        LockSupport.parkNanos(due - System.nanoTime());
      }
      byte[] bytes =
          String.format(Locale.ROOT, "%+08d lbf\r\n", pounds.get(i))
              .getBytes(StandardCharsets.US_ASCII);
      line.write(bytes, 0, bytes.length);
    }
  }

  /** Feeds on a thread of its own until the list ends or the line closes. */
  static Thread start(PseudoTerminal line, List<Integer> pounds, double hertz) {
    Thread thread =
        new Thread(
            () -> {
              try {
                feed(line, pounds, hertz);
              } catch (IOException e) {
                LockSupport.parkNanos(
                    TimeUnit.MICROSECONDS.toNanos(1)); // the line was closed: done
              }
            });
    thread.setDaemon(true);
    thread.start();
    return thread;
  }
}
