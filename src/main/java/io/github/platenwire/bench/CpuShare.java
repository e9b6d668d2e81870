package io.github.platenwire.bench;

import com.sun.management.OperatingSystemMXBean;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.recorder.RecordingListener;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.List;

/**
 * How much of one core a test takes: three devices at 100 readings a second each, without a screen.
 * What the emulated devices take is not counted.
 */
final class CpuShare {
  private static final int HERTZ = 100;

  private final ScratchLab lab;
  private final int seconds;

  CpuShare(ScratchLab lab, int seconds) {
    this.lab = lab;
    this.seconds = seconds;
  }

  List<BenchFigure> run() throws IOException, LabException, BenchException, InterruptedException {
    Meter meter = new Meter();
    new ThreeDevices(lab, HERTZ, seconds).run(meter);
    return List.of(
        BenchFigure.of(
                "cpu_percent", "Processor at 3 x 100 readings/s", 100 * meter.share, "% of a core")
            .atMost(1, 3, "3 % of a core"));
  }

  private static final class Meter implements ThreeDevices.Watch {
    private final ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    private long startNanos;
    private long startCpuNanos;
    private long senderId;
    private double share;

    @Override
    public RecordingListener listener() {
      return progress -> {};
    }

    @Override
    public void begins(Sender sender) {
      senderId = sender.threadId();
      startNanos = SystemClocks.monotonic().nanos();
      startCpuNanos = processCpuNanos();
    }

    @Override
    public void ends() {
      // the sender has just sent its last reading and is about to end, so its time is asked first
      long senderNanos = Math.max(0, threads.getThreadCpuTime(senderId));
      long cpuNanos = processCpuNanos() - startCpuNanos - senderNanos;
      share = (double) cpuNanos / (SystemClocks.monotonic().nanos() - startNanos);
    }

    private static long processCpuNanos() {
      return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
    }
  }
}
