package io.github.platenwire.bench;

import io.github.platenwire.emulate.DemoBeam;
import io.github.platenwire.emulate.PseudoTerminal;
import io.github.platenwire.emulate.Waiter;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.port.PortAddress;
import io.github.platenwire.port.Ports;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.recorder.LabTest;
import io.github.platenwire.recorder.RecordedTest;
import io.github.platenwire.recorder.Recording;
import io.github.platenwire.recorder.RecordingListener;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLongArray;

/**
 * A load indicator and two crack gauges on three pseudo-terminals, recorded as a split beam, at one
 * pace. Tells each sending's moment, to the nanosecond of the machine's own clock, before it is
 * made.
 */
final class ThreeDevices {
  private static final int RESTING_ROUNDS = 20;
  private static final List<byte[]> LINES =
      List.of(line("+000.002 kN\r\n"), line("+0.0001 mm\r\n"), line("+0.0002 mm\r\n"));
  private static final int DEVICES = LINES.size();

  private final ScratchLab lab;
  private final long intervalNanos;
  private final int rounds;
  private final AtomicLongArray sentNanos;

  /**
   * Prepares the devices.
   *
   * @param hertz how often each sends, 1 to 2000
   * @param seconds how long
   */
  ThreeDevices(ScratchLab lab, int hertz, int seconds) {
    this.lab = lab;
    this.intervalNanos = 1_000_000_000L / hertz;
    this.rounds = hertz * seconds;
    this.sentNanos = new AtomicLongArray(rounds * DEVICES);
  }

  /** What is done with the running devices. */
  interface Watch {
    /** A listener for the recording, told before anything is sent at pace. */
    RecordingListener listener();

    /** The devices begin to send at pace. */
    void begins(Sender sender);

    /** All that they sent was shown. */
    void ends();
  }

  /** How many readings are sent at pace. */
  int readings() {
    return rounds * DEVICES;
  }

  /** When a reading was sent, counted from the first at pace. */
  long sentNanos(int reading) {
    return sentNanos.get(reading);
  }

  /** How many readings come before those at pace. */
  static int restingReadings() {
    return RESTING_ROUNDS * DEVICES;
  }

  /** Records. */
  void run(Watch watch) throws IOException, LabException, BenchException, InterruptedException {
    List<PseudoTerminal> lines = new ArrayList<>();
    try {
      for (int i = 0; i < DEVICES; i++) {
        lines.add(PseudoTerminal.open());
      }
      record(lines, watch);
    } finally {
      lines.forEach(PseudoTerminal::close);
    }
  }

  private void record(List<PseudoTerminal> lines, Watch watch)
      throws IOException, LabException, BenchException, InterruptedException {
    try (LabTest test =
        lab.openBeams(
            (address, settings) ->
                Ports.opener(
                    PortAddress.parse(lines.get(DemoBeam.ports().indexOf(address)).path()),
                    settings,
                    SystemClocks.monotonic()))) {
      for (int i = 0; i < RESTING_ROUNDS; i++) {
        sendOnce(lines);
      }
      Arrival arrival = new Arrival();
      RecordingListener watching = watch.listener();
      Recording recording =
          lab.start(
              test,
              progress -> {
                watching.written(progress);
                arrival.written(progress);
              });
      arrival.await(restingReadings());
      Sender sender = new Sender(() -> sendAtPace(lines));
      watch.begins(sender);
      sender.start();
      arrival.await(restingReadings() + (long) readings());
      watch.ends();
      sender.await();
      recording.stop();
      check(recording.await());
    }
  }

  private void check(RecordedTest recorded) throws BenchException {
    long lost = recorded.closing().map(closing -> closing.lost()).orElse(Long.MAX_VALUE);
    if (lost != 0) {
      throw new BenchException(lost + " readings are known to be lost");
    }
  }

  private static void sendOnce(List<PseudoTerminal> lines) throws IOException {
    for (int i = 0; i < DEVICES; i++) {
      lines.get(i).write(LINES.get(i), 0, LINES.get(i).length);
    }
  }

  private void sendAtPace(List<PseudoTerminal> lines) throws IOException {
    Waiter waiter = Waiter.parking();
    long next = SystemClocks.monotonic().nanos();
    for (int round = 0; round < rounds; round++) {
      next += intervalNanos;
      for (long left = next - SystemClocks.monotonic().nanos();
          left > 0;
          left = next - SystemClocks.monotonic().nanos()) {
        waiter.waitNanos(left);
      }
      for (int i = 0; i < DEVICES; i++) {
        sentNanos.set(round * DEVICES + i, SystemClocks.monotonic().nanos());
        lines.get(i).write(LINES.get(i), 0, LINES.get(i).length);
      }
    }
  }

  private static byte[] line(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
