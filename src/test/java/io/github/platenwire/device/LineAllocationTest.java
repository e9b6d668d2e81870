package io.github.platenwire.device;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import com.sun.management.ThreadMXBean;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.lang.management.ManagementFactory;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LineAllocationTest {
  private static final int LINES = 100_000;

  /** Counts, and allocates nothing itself. */
  private static final class Counter implements FrameSink {
    int values;
    int garbled;

    @Override
    public void value(
        byte[] frame, int from, int length, long at, int field, double value, Unit u, Quality q) {
      values++;
    }

    @Override
    public void garbled(byte[] frame, int from, int length, long arrivalNanos) {
      garbled++;
    }
  }

  private static long allocatedBy(FrameDecoder decoder, byte[] chunk, int times, FrameSink sink) {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    assumeThat(threads.isThreadAllocatedMemorySupported()).isTrue();
    long id = Thread.currentThread().getId();
    long before = threads.getThreadAllocatedBytes(id);
    for (int i = 0; i < times; i++) {
      decoder.accept(chunk, 0, chunk.length, i, sink);
    }
    return threads.getThreadAllocatedBytes(id) - before;
  }

  /** Allocation by the two calls of the bean themselves is far below one byte a line. */
  private static void assertNothingAllocated(DeviceDefinition definition, byte[] chunk, int times) {
    FrameDecoder decoder = definition.newDecoder();
    Counter counter = new Counter();
    allocatedBy(decoder, chunk, times, counter);
    assertThat(allocatedBy(decoder, chunk, times, counter)).isLessThan(LINES / 10);
    assertThat(counter.values + counter.garbled).isGreaterThanOrEqualTo(2 * times);
  }

  @Test
  void accept_goodLines_allocatesNothing() {
    byte[] line = Frames.bytes("ST,+00123.4,kN\r\n");
    assertNothingAllocated(Definitions.shipped("status-line-kn"), line, LINES);
    assertNothingAllocated(
        Definitions.shipped("two-gauges-line-mm"), Frames.bytes("+0.1234;-0.1187\r\n"), LINES);
  }

  @Test
  void accept_garbledAndOverlongLines_allocatesNothing() {
    assertNothingAllocated(
        Definitions.shipped("status-line-kn"), Frames.bytes("ST,+00x23.4,kN\r\n"), LINES);
    assertNothingAllocated(
        Definitions.shipped("status-line-kn"), Frames.bytes("x".repeat(90) + "\r\n"), LINES);
  }

  @Test
  void accept_endlessNoiseWithoutTerminator_neverGrows() {
    byte[] noise = new byte[4096];
    new Random(42).nextBytes(noise);
    for (int i = 0; i < noise.length; i++) {
      noise[i] = noise[i] == '\n' ? 0 : noise[i];
    }
    Counter counter = new Counter();
    FrameDecoder decoder = Definitions.shipped("status-line-kn").newDecoder();
    allocatedBy(decoder, noise, 1_000, counter);
    assertThat(allocatedBy(decoder, noise, 1_000, counter)).isLessThan(4096);
    assertThat(counter.garbled).isEqualTo(1);
  }
}
