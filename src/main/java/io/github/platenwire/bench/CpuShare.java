package io.github.platenwire.bench;

import com.sun.management.OperatingSystemMXBean;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.recorder.Progress;
import io.github.platenwire.recorder.RecordingListener;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.List;

/**
 * How much of one core a test takes: three devices at 100 readings a second each, without a screen.
 * What the emulated devices take is not counted, nor the first half of the time, in which Java
 * still compiles.
 */
final class CpuShare {
  private static final int HERTZ = 100;

  /** So many readings before the last one the devices are sure to be still sending. */
  private static final int STILL_SENDING = 30;

  private final ScratchLab lab;
  private final int seconds;

  CpuShare(ScratchLab lab, int seconds) {
    this.lab = lab;
    this.seconds = seconds;
  }

  List<BenchFigure> run() throws IOException, LabException, BenchException, InterruptedException {
    ThreeDevices devices = new ThreeDevices(lab, HERTZ, 2 * seconds);
    int first = ThreeDevices.restingReadings();
    Meter meter =
        new Meter(first + devices.readings() / 2, first + devices.readings() - STILL_SENDING);
    devices.run(meter);
    return List.of(
        BenchFigure.of("cpu_percent", "Processor at 3 x 100 Hz", 100 * meter.share, "% of a core")
            .atMost(1, 3, "3 %"));
  }

  private static final class Meter implements ThreeDevices.Watch {
    private final ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    private final long fromReading;
    private final long untilReading;
    private volatile long senderId;
    private volatile double share = Double.NaN;
    private long startNanos;
    private long startCpuNanos;

    Meter(long fromReading, long untilReading) {
      this.fromReading = fromReading;
      this.untilReading = untilReading;
    }

    @Override
    public RecordingListener listener() {
      return this::shown;
    }

    @Override
    public void begins(Sender sender) {
      senderId = sender.threadId();
    }

    /** On the recorder thread. */
    private void shown(Progress progress) {
      if (startNanos == 0 && progress.readings() >= fromReading) {
        startNanos = SystemClocks.monotonic().nanos();
        startCpuNanos = cpuNanos();
      } else if (Double.isNaN(share) && progress.readings() >= untilReading) {
        share =
            (double) (cpuNanos() - startCpuNanos) / (SystemClocks.monotonic().nanos() - startNanos);
      }
    }

    @Override
    public void ends() {}

    private long cpuNanos() {
      return processCpuNanos() - Math.max(0, threads.getThreadCpuTime(senderId));
    }

    private static long processCpuNanos() {
      return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
    }
  }
}
