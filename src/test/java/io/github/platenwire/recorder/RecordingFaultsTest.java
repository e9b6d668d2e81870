package io.github.platenwire.recorder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.emulate.EmulatedClock;
import io.github.platenwire.faults.FaultyDisk;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.CloseReason;
import io.github.platenwire.record.DiskFolder;
import io.github.platenwire.record.RawRow;
import io.github.platenwire.record.RecordFile;
import io.github.platenwire.record.RecordFolder;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** One test on a disk or a clock that misbehaves without failing outright. */
@Timeout(60)
class RecordingFaultsTest {
  private static final Optional<Duration> FOR_EVER = Optional.empty();

  /** So many readings may be under way: with more, a busy machine looks like a silent device. */
  private static final int AHEAD = 5;

  @TempDir private Path folder;

  /** A disk on which one write takes some time by a given clock. */
  private static class SlowDisk implements RecordFolder {
    private final DiskFolder real = new DiskFolder();
    private final EmulatedClock stopwatch;
    private final long slowNanos;
    private final int slowWrite;
    private int writes;

    SlowDisk(EmulatedClock stopwatch, Duration slow, int slowWrite) {
      this.stopwatch = stopwatch;
      this.slowNanos = slow.toNanos();
      this.slowWrite = slowWrite;
    }

    @Override
    public RecordFile create(Path path) throws IOException {
      RecordFile file = real.create(path);
      return new RecordFile() {
        @Override
        public int write(ByteBuffer bytes) throws IOException {
          writes++;
          if (writes == slowWrite) {
            stopwatch.advanceTo(stopwatch.nanos() + slowNanos);
          }
          return file.write(bytes);
        }

        @Override
        public void force() throws IOException {
          file.force();
        }

        @Override
        public void truncate(long length) throws IOException {
          file.truncate(length);
        }

        @Override
        public void close() throws IOException {
          file.close();
        }
      };
    }

    @Override
    public RecordFile reopen(Path path, long length) throws IOException {
      return real.reopen(path, length);
    }

    @Override
    public boolean freeReserve(Path beside) {
      return real.freeReserve(beside);
    }
  }

  @Test
  void record_writeTakesTwoSeconds_saysSoAndLosesNothing() throws Exception {
    Path file = folder.resolve("a.raw.csv");
    EmulatedClock stopwatch = new EmulatedClock(Instant.EPOCH);
    SlowDisk disk = new SlowDisk(stopwatch, Duration.ofSeconds(2), /* slowWrite= */ 4);
    CountingMethod method = new CountingMethod(200);
    try (Bench bench = new Bench(Duration.ZERO, stopwatch)) {
      Recording recording = bench.record(disk, file, method, FOR_EVER);
      bench.send(10, "+0000000 lbf");
      awaitTrue(() -> readings(recording) == 1);
      for (int i = 1; i < 199; i++) {
        bench.send(10, String.format(java.util.Locale.ROOT, "+%07d lbf", i));
        int sent = i;
        awaitTrue(() -> readings(recording) > sent - AHEAD);
      }
      awaitTrue(() -> readings(recording) == 199);
      assertThat(recording.progress().orElseThrow().lastEvent())
          .as("what the operator sees")
          .isEqualTo("storage slow 2.0 s");
      bench.send(10, "+0000199 lbf");
      RecordedTest test = recording.await();
      assertThat(test.failure()).isEmpty();
      assertThat(test.closing().orElseThrow().reason()).isEqualTo(CloseReason.BREAK);
      assertThat(test.closing().orElseThrow().lost()).isZero();
    }
    assertThat(Bench.events(file)).containsOnlyOnce("storage slow 2.0 s");
    List<Double> values =
        Bench.rows(file).stream().filter(row -> !row.isEvent()).map(RawRow::value).toList();
    assertThat(values).hasSize(200).isSorted().doesNotHaveDuplicates();
  }

  @Test
  void record_timeOfDaySetBack_isAnEventAndNoTimeGoesBack() throws Exception {
    Path file = folder.resolve("a.raw.csv");
    try (Bench bench = new Bench(Duration.ofSeconds(90), SystemClocks.monotonic())) {
      Recording recording = bench.record(new DiskFolder(), file, new CountingMethod(60), FOR_EVER);
      for (int i = 0; i < 30; i++) {
        bench.send(100, "+0000001 lbf");
        int sent = i;
        awaitTrue(() -> readings(recording) > sent - AHEAD);
      }
      awaitTrue(() -> readings(recording) == 30);
      bench.setTimeOfDayBack();
      for (int i = 30; i < 60; i++) {
        bench.send(100, "+0000002 lbf");
        int sent = i;
        awaitTrue(() -> readings(recording) > sent - AHEAD);
      }
      RecordedTest test = recording.await();
      assertThat(test.failure()).isEmpty();
      assertThat(test.result().departures()).anyMatch(words -> words.contains("clock"));
    }
    assertThat(Bench.events(file)).containsOnlyOnce("clock step -90.0 s");
    List<Long> times =
        Bench.rows(file).stream().filter(row -> !row.isEvent()).map(RawRow::elapsedMicros).toList();
    assertThat(times).hasSize(60).isSorted();
    assertThat(times.get(59) - times.get(0)).isEqualTo(59 * 100_000L);
  }

  @Test
  void record_folderReadOnly_startsNothingAndSaysSo() throws Exception {
    Path file = folder.resolve("a.raw.csv");
    RecordFolder readOnly =
        new SlowDisk(new EmulatedClock(Instant.EPOCH), Duration.ZERO, 0) {
          @Override
          public RecordFile create(Path path) throws IOException {
            throw new java.nio.file.FileSystemException(
                path.toString(), null, "Read-only file system");
          }
        };
    try (Bench bench = new Bench()) {
      assertThatThrownBy(() -> bench.record(readOnly, file, new CountingMethod(9), FOR_EVER))
          .isInstanceOf(IOException.class)
          .hasMessageContaining("Read-only file system");
    }
    assertThat(file).doesNotExist();
  }

  /**
   * What a power cut would take is never more than the readings of the last quarter of a second,
   * and of as much longer as the machine itself overslept meanwhile.
   */
  @Test
  void record_powerCutAtAnyMoment_keepsAllButTheLastQuarterOfASecond() throws Exception {
    FaultyDisk disk = new FaultyDisk(Files.createDirectory(folder.resolve("disk")));
    Path file = disk.root().resolve("a.raw.csv");
    long worstNanos = 0;
    long oversleptNanos = 0;
    try (Bench bench = new Bench()) {
      Recording recording =
          bench.record(new DiskFolder(), file, new CountingMethod(9999), FOR_EVER);
      long fromNanos = System.nanoTime();
      long keptBytes = 0;
      long unkeptSinceNanos = fromNanos;
      while (System.nanoTime() - fromNanos < TimeUnit.SECONDS.toNanos(3)) {
        long before = System.nanoTime();
        bench.send(10, "+0000001 lbf");
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(10));
        long now = System.nanoTime();
        oversleptNanos += Math.max(0, now - before - TimeUnit.MILLISECONDS.toNanos(15));
        long durable = disk.durableLength(file).orElse(0);
        long written = Files.size(disk.real(file));
        if (durable > keptBytes || durable == written) {
          keptBytes = durable;
          unkeptSinceNanos = now;
        }
        worstNanos = Math.max(worstNanos, now - unkeptSinceNanos);
      }
      recording.stop();
      recording.await();
    }
    System.out.printf(
        java.util.Locale.ROOT,
        "unforced for at most %.3f s (the machine overslept %.3f s in all)%n",
        worstNanos / 1e9,
        oversleptNanos / 1e9);
    assertThat(worstNanos).isLessThan(TimeUnit.MILLISECONDS.toNanos(250) + oversleptNanos);
  }

  private static long readings(Recording recording) {
    return recording.progress().map(Progress::readings).orElse(0L);
  }

  private static void awaitTrue(BooleanSupplier condition) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
    while (!condition.getAsBoolean()) {
      assertThat(System.nanoTime()).as("waited too long").isLessThan(deadline);
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(1));
    }
  }
}
