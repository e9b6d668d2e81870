package io.github.platenwire.emulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.reading.MonotonicClock;
import io.github.platenwire.reading.SystemClocks;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

class PacerTest {
  private static final long MILLISECOND = 1_000_000;

  /** Time that passes only when something waits or works. */
  private static final class FakeTime implements MonotonicClock, Waiter {
    private long now = 1_000_000_000_000L;
    private long tooEarlyEvery;
    private long waits;
    private long overshootNanos;

    @Override
    public long nanos() {
      return now;
    }

    @Override
    public void waitNanos(long nanos) {
      waits++;
      boolean early = tooEarlyEvery > 0 && waits % tooEarlyEvery != 0;
      now += early ? Math.max(1, nanos / 2) : nanos + overshootNanos;
    }
  }

  private static Iterator<TimedBytes> stream(int pieces, long everyNanos) {
    return LongStream.range(0, pieces)
        .mapToObj(i -> new TimedBytes(i * everyNanos, new byte[] {(byte) ('a' + i % 26)}))
        .iterator();
  }

  @Test
  void truePace_waiterOvershootsAndOutletIsSlow_keepsTheScheduleWithoutDrift() throws IOException {
    FakeTime time = new FakeTime();
    time.overshootNanos = 300_000;
    long start = time.now;
    List<Long> sentAt = new ArrayList<>();
    List<Long> stamps = new ArrayList<>();
    ByteOutlet slow =
        new ByteOutlet() {
          @Override
          public void send(byte[] bytes, int from, int length, long emulatedNanos) {
            sentAt.add(time.now - start);
            stamps.add(emulatedNanos - start);
            time.now += 2 * MILLISECOND;
          }

          @Override
          public void close() {}
        };

    Pacer.Outcome outcome =
        new Pacer(slow).atTruePace(stream(10_000, 10 * MILLISECOND), time, time);

    assertThat(outcome).isEqualTo(new Pacer.Outcome(10_000, 10_000, 300_000, true));
    assertThat(sentAt.get(9_999)).isEqualTo(9_999 * 10 * MILLISECOND + 300_000);
    assertThat(stamps.get(9_999)).isEqualTo(9_999 * 10 * MILLISECOND);
  }

  @Test
  void truePace_waiterReturnsEarly_neverSendsBeforeItsTime() throws IOException {
    FakeTime time = new FakeTime();
    time.tooEarlyEvery = 4;
    CollectingOutlet outlet = new CollectingOutlet();
    long start = time.now;

    Pacer.Outcome outcome = new Pacer(outlet).atTruePace(stream(100, 10 * MILLISECOND), time, time);

    assertThat(outcome.greatestLatenessNanos()).isZero();
    assertThat(time.now - start).isEqualTo(99 * 10 * MILLISECOND);
    assertThat(outlet.stamps()).hasSize(100);
  }

  @Test
  void truePace_oneLongStall_catchesUpAndSaysHowLate() throws IOException {
    FakeTime time = new FakeTime();
    long start = time.now;
    ByteOutlet stallsOnce =
        new ByteOutlet() {
          @Override
          public void send(byte[] bytes, int from, int length, long emulatedNanos) {
            time.now += bytes[0] == 'c' ? 55 * MILLISECOND : 0;
          }

          @Override
          public void close() {}
        };

    Pacer.Outcome outcome =
        new Pacer(stallsOnce).atTruePace(stream(20, 10 * MILLISECOND), time, time);

    assertThat(outcome.greatestLatenessNanos()).isEqualTo(45 * MILLISECOND);
    assertThat(time.now - start).isEqualTo(190 * MILLISECOND);
  }

  @Test
  void truePace_stoppedWhileWaiting_endsWithinFiftyMilliseconds() throws IOException {
    FakeTime time = new FakeTime();
    CollectingOutlet outlet = new CollectingOutlet();
    Pacer pacer = new Pacer(outlet);
    long start = time.now;
    Waiter stopsAtThird =
        nanos -> {
          time.waitNanos(nanos);
          if (time.waits == 3) {
            pacer.stop();
          }
        };

    Pacer.Outcome outcome = pacer.atTruePace(stream(5, 60_000 * MILLISECOND), time, stopsAtThird);

    assertThat(outcome).isEqualTo(new Pacer.Outcome(1, 1, 0, false));
    assertThat(time.now - start).isEqualTo(150 * MILLISECOND);
  }

  @Test
  void truePace_threadInterrupted_endsAndKeepsTheFlag() throws IOException {
    FakeTime time = new FakeTime();
    Thread.currentThread().interrupt();

    Pacer.Outcome outcome =
        new Pacer(new CollectingOutlet()).atTruePace(stream(5, MILLISECOND), time, time);

    assertThat(Thread.interrupted()).isTrue();
    assertThat(outcome.finished()).isFalse();
  }

  @Test
  void truePace_realClockAndParking_takesTheTimeItShould() throws IOException {
    MonotonicClock clock = SystemClocks.monotonic();
    long start = clock.nanos();

    Pacer.Outcome outcome =
        new Pacer(new CollectingOutlet())
            .atTruePace(stream(4, 5 * MILLISECOND), clock, Waiter.parking());

    assertThat(clock.nanos() - start).isGreaterThanOrEqualTo(15 * MILLISECOND);
    assertThat(outcome.finished()).isTrue();
  }

  @Test
  void fast_eachPiece_isHandedOverBeforeTheClockReachesIt() throws IOException {
    EmulatedClock clock = new EmulatedClock(Instant.EPOCH);
    clock.advanceTo(7);
    List<Long> clockAtSending = new ArrayList<>();
    StringBuilder sent = new StringBuilder();
    ByteOutlet outlet =
        new ByteOutlet() {
          @Override
          public void send(byte[] bytes, int from, int length, long emulatedNanos) {
            assertThat(clock.nanos()).isLessThanOrEqualTo(emulatedNanos);
            clockAtSending.add(clock.nanos());
            sent.append(new String(bytes, from, length, StandardCharsets.US_ASCII));
          }

          @Override
          public void close() {}
        };

    Pacer.Outcome outcome = new Pacer(outlet).asFastAsTaken(stream(4, 100), clock);

    assertThat(clockAtSending).containsExactly(7L, 7L, 107L, 207L);
    assertThat(clock.nanos()).isEqualTo(307);
    assertThat(sent).hasToString("abcd");
    assertThat(outcome).isEqualTo(new Pacer.Outcome(4, 4, 0, true));
  }

  @Test
  void fast_stopped_sendsNothingMore() throws IOException {
    CollectingOutlet outlet = new CollectingOutlet();
    Pacer pacer = new Pacer(outlet);
    pacer.stop();

    Pacer.Outcome outcome = pacer.asFastAsTaken(stream(4, 100), new EmulatedClock(Instant.EPOCH));

    assertThat(outcome.finished()).isFalse();
    assertThat(outlet.bytes()).isEmpty();
    assertThat(outlet.closed()).isFalse();
  }

  @Test
  void fast_outletFails_saysSoAndLeavesTheClock() {
    EmulatedClock clock = new EmulatedClock(Instant.EPOCH);
    ByteOutlet broken =
        new ByteOutlet() {
          @Override
          public void send(byte[] bytes, int from, int length, long emulatedNanos)
              throws IOException {
            throw new IOException("gone");
          }

          @Override
          public void close() {}
        };

    assertThatThrownBy(() -> new Pacer(broken).asFastAsTaken(stream(4, 100), clock))
        .isInstanceOf(IOException.class)
        .hasMessage("gone");
    assertThat(clock.nanos()).isZero();
  }
}
