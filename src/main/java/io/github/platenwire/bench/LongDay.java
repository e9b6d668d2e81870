package io.github.platenwire.bench;

import io.github.platenwire.emulate.EmulatedClock;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.Port;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.recorder.LabTest;
import io.github.platenwire.recorder.RecordedTest;
import io.github.platenwire.recorder.RecorderClocks;
import io.github.platenwire.recorder.Recording;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * A test of many hours at 300 readings a second, on an emulated clock as fast as it can be written:
 * how much memory is in use at its quarters, after a collection, and how long its close takes.
 */
final class LongDay {
  private static final int HERTZ = 300;
  private static final int LINES_A_CHUNK = 100;
  private static final int QUARTERS = 4;
  private static final double MEBIBYTE = 1 << 20;
  private static final int WAITING_CHUNKS = 10;
  private static final long PATIENCE_NANOS = TimeUnit.MILLISECONDS.toNanos(50);

  private final ScratchLab lab;
  private final long readings;

  LongDay(ScratchLab lab, double hours) {
    this.lab = lab;
    this.readings = Math.round(hours * 3600 * HERTZ / LINES_A_CHUNK) * LINES_A_CHUNK;
  }

  List<BenchFigure> run()
      throws IOException, LabException, TomlException, BenchException, InterruptedException {
    EmulatedClock clock = new EmulatedClock(SystemClocks.wall().now());
    Device device = new Device(clock);
    RecorderClocks clocks = new RecorderClocks(clock, clock, SystemClocks.monotonic());
    try (LabTest test = lab.openFrame((address, settings) -> () -> device, clocks)) {
      Arrival arrival = new Arrival();
      Recording recording = lab.start(test, arrival);
      List<Double> mebibytes = new ArrayList<>();
      for (int quarter = 1; quarter <= QUARTERS; quarter++) {
        long until = readings * quarter / QUARTERS;
        device.allow(until);
        arrival.await(until);
        mebibytes.add(heapMebibytes());
      }
      long start = SystemClocks.monotonic().nanos();
      recording.stop();
      RecordedTest recorded = recording.await();
      lab.close(test, recorded);
      double seconds = (SystemClocks.monotonic().nanos() - start) / 1e9;
      return figures(mebibytes, seconds);
    }
  }

  private List<BenchFigure> figures(List<Double> mebibytes, double closeSeconds) {
    double first = mebibytes.get(0);
    double last = mebibytes.get(mebibytes.size() - 1);
    double most = mebibytes.stream().mapToDouble(Double::doubleValue).max().orElse(last);
    String of = readings / 1_000_000 > 0 ? readings / 1_000_000 + " million" : readings + "";
    return List.of(
        BenchFigure.of("heap_mib", "Memory, " + of + " rows", most, "MiB").atMost(1, 64, "64 MiB"),
        BenchFigure.of("heap_last_mib", "Memory at the end", last, "MiB")
            .atMost(1.1, first, "first quarter"),
        BenchFigure.of("close_seconds", "Close of that record", closeSeconds, "s")
            .atMost(1, 2, "2 s"));
  }

  private static double heapMebibytes() {
    System.gc();
    return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed() / MEBIBYTE;
  }

  /** Sends as many readings as it is allowed to, and moves the clock along with them. */
  private static final class Device implements Port {
    private final EmulatedClock clock;
    private final byte[] lines = LoadLines.of(LINES_A_CHUNK, 1);
    private long allowed = WAITING_CHUNKS * (long) LINES_A_CHUNK;
    private long sent;

    Device(EmulatedClock clock) {
      this.clock = clock;
    }

    synchronized void allow(long until) {
      allowed = Math.max(allowed, until);
      notifyAll();
    }

    @Override
    public String address() {
      return "memory:bench";
    }

    @Override
    public synchronized Optional<Chunk> read() throws IOException {
      if (!isAllowed()) {
        return Optional.empty();
      }
      sent += LINES_A_CHUNK;
      long nanos = clock.nanos() + LINES_A_CHUNK * 1_000_000_000L / HERTZ;
      clock.advanceTo(nanos);
      return Optional.of(new Chunk(lines, nanos));
    }

    /** Waits a little, so that the reader looks now and then whether it is to end. */
    private boolean isAllowed() throws IOException {
      long endNanos = SystemClocks.monotonic().nanos() + PATIENCE_NANOS;
      try {
        for (long left = PATIENCE_NANOS;
            sent >= allowed && left > 0;
            left = endNanos - SystemClocks.monotonic().nanos()) {
          TimeUnit.NANOSECONDS.timedWait(this, left);
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new IOException("interrupted while the device waits", e);
      }
      return sent < allowed;
    }

    @Override
    public void write(byte[] bytes) {}

    @Override
    public void close() {}
  }
}
