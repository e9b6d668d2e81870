package io.github.platenwire.bench;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.recorder.RecordingListener;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;

/**
 * How long it takes from sending a reading, at the other end of the line, until it is in the file
 * and shown: three devices at 1000 readings a second each.
 */
final class Delay {
  private static final int HERTZ = 1000;

  private final ThreeDevices devices;
  private final long[] delayNanos;
  private int seen;

  Delay(ScratchLab lab, int seconds) {
    devices = new ThreeDevices(lab, HERTZ, seconds);
    delayNanos = new long[devices.readings()];
  }

  List<BenchFigure> run() throws IOException, LabException, BenchException, InterruptedException {
    devices.run(
        new ThreeDevices.Watch() {
          @Override
          public RecordingListener listener() {
            return progress -> shown(progress.readings() - ThreeDevices.restingReadings());
          }

          @Override
          public void begins(Sender sender) {}

          @Override
          public void ends() {}
        });
    Arrays.sort(delayNanos);
    return List.of(
        BenchFigure.of("delay_p50_ms", "Sent to shown, half", millis(0.5), "ms")
            .atMost(1, 0.15, "0.15 ms"),
        BenchFigure.of("delay_p99_ms", "Sent to shown, 99 %", millis(0.99), "ms")
            .atMost(1, 1, "1 ms"));
  }

  /** On the recorder thread: so many of those sent at pace are shown now. */
  private void shown(long readings) {
    long now = SystemClocks.monotonic().nanos();
    for (; seen < readings; seen++) {
      delayNanos[seen] = now - devices.sentNanos(seen);
    }
  }

  private double millis(double share) {
    return delayNanos[(int) Math.min(delayNanos.length - 1, delayNanos.length * share)] / 1e6;
  }
}
