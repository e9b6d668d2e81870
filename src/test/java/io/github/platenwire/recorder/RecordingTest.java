package io.github.platenwire.recorder;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.CloseReason;
import io.github.platenwire.record.DiskFolder;
import io.github.platenwire.record.FailingDisk;
import io.github.platenwire.record.RawRow;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(60)
class RecordingTest {
  private static final Optional<Duration> FOR_EVER = Optional.empty();

  @TempDir Path folder;

  @Test
  void record_readingsBeforeTheStart_beginTheRecord() throws Exception {
    Path file = folder.resolve("a.raw.csv");
    CountingMethod method = new CountingMethod(8);
    try (Bench bench = new Bench()) {
      for (int i = 0; i < 5; i++) {
        bench.send(100, "+000001" + i + " lbf");
      }
      bench.connection.awaitPreview(
          p -> p.channels().get(0).readings() == 5, TimeUnit.SECONDS.toNanos(10));
      Recording recording = bench.record(new DiskFolder(), file, method, FOR_EVER);
      for (int i = 5; i < 8; i++) {
        bench.send(100, "+000001" + i + " lbf");
      }
      RecordedTest test = recording.await();
      assertThat(test.closing().orElseThrow().reason()).isEqualTo(CloseReason.BREAK);
      assertThat(test.failure()).isEmpty();
    }
    List<RawRow> readings = Bench.rows(file).stream().filter(row -> !row.isEvent()).toList();
    assertThat(readings)
        .extracting(RawRow::value)
        .containsExactly(10.0, 11.0, 12.0, 13.0, 14.0, 15.0, 16.0, 17.0);
    assertThat(readings)
        .extracting(RawRow::elapsedMicros)
        .containsExactly(0L, 100_000L, 200_000L, 300_000L, 400_000L, 500_000L, 600_000L, 700_000L);
    assertThat(readings.get(0).quality()).isEqualTo(Quality.SUSPECT);
    assertThat(readings.subList(1, 8)).extracting(RawRow::quality).containsOnly(Quality.OK);
    assertThat(method.seqs).isEqualTo(readings.stream().map(RawRow::seq).toList());
    assertThat(Bench.events(file)).containsExactly("start", "stop break");
  }

  @Test
  void record_happening_isTheRowAfterItsReading() throws Exception {
    Path file = folder.resolve("a.raw.csv");
    try (Bench bench = new Bench()) {
      Recording recording = bench.record(new DiskFolder(), file, new CountingMethod(3), FOR_EVER);
      bench.send(10, "+0000001 lbf");
      bench.send(10, "+0002000 lbf");
      awaitTrue(
          () -> recording.progress().map(p -> p.lastEvent().startsWith("high")).orElse(false));
      bench.send(10, "+0000003 lbf");
      recording.await();
    }
    assertThat(Bench.events(file)).containsExactly("start", "high seq=3", "stop break");
  }

  @Test
  void record_silence_writesOneLateRow() throws Exception {
    Path file = folder.resolve("a.raw.csv");
    try (Bench bench = new Bench()) {
      Recording recording = bench.record(new DiskFolder(), file, new CountingMethod(4), FOR_EVER);
      bench.send(10, "+0000001 lbf");
      bench.send(10, "+0000002 lbf");
      awaitTrue(() -> readings(recording) == 2);
      bench.silence(2500);
      awaitTrue(() -> recording.progress().map(Progress::marked).orElse(0L) == 2);
      bench.send(10, "+0000003 lbf");
      recording.await();
    }
    assertThat(Bench.rows(file))
        .filteredOn(r -> !r.isEvent())
        .extracting(RawRow::quality)
        .containsExactly(Quality.SUSPECT, Quality.OK, Quality.LATE, Quality.OK);
  }

  @Test
  void record_cablePulledAndBack_keepsBothSidesAndSaysSo() throws Exception {
    Path file = folder.resolve("a.raw.csv");
    try (Bench bench = new Bench()) {
      Recording recording = bench.record(new DiskFolder(), file, new CountingMethod(4), FOR_EVER);
      bench.send(10, "+0000001 lbf");
      bench.send(10, "+0000002 lbf");
      awaitTrue(() -> readings(recording) == 2);
      bench.replug();
      awaitTrue(
          () ->
              recording.progress().map(p -> p.lastEvent().equals("link back load")).orElse(false));
      bench.send(10, "+0000003 lbf");
      bench.send(10, "+0000004 lbf");
      RecordedTest test = recording.await();
      assertThat(test.result().departures())
          .anyMatch(words -> words.startsWith("The link of load was lost"));
      assertThat(test.closing().orElseThrow().lost()).isZero();
    }
    assertThat(Bench.events(file))
        .hasSize(4)
        .startsWith("start")
        .endsWith("link back load", "stop break")
        .anyMatch(event -> event.matches("link lost load \\(.+\\)"));
    assertThat(Bench.rows(file))
        .filteredOn(r -> !r.isEvent())
        .extracting(RawRow::quality)
        .containsExactly(Quality.SUSPECT, Quality.OK, Quality.SUSPECT, Quality.OK);
  }

  @Test
  void record_cablePulledForGood_closesAsInterrupted() throws Exception {
    Path file = folder.resolve("a.raw.csv");
    try (Bench bench = new Bench()) {
      Recording recording =
          bench.record(
              new DiskFolder(), file, new CountingMethod(99), Optional.of(Duration.ofSeconds(30)));
      bench.send(10, "+0000001 lbf");
      bench.unplug();
      awaitTrue(() -> recording.progress().map(p -> p.linksDown().contains("load")).orElse(false));
      bench.silence(31_000);
      RecordedTest test = recording.await();
      assertThat(test.closing().orElseThrow().reason()).isEqualTo(CloseReason.INTERRUPTED);
      assertThat(test.failure().orElseThrow().kind()).isEqualTo(RecordedTest.Kind.LINK);
    }
  }

  @Test
  void record_stopAndNote_areInTheRecord() throws Exception {
    Path file = folder.resolve("a.raw.csv");
    try (Bench bench = new Bench()) {
      Recording recording = bench.record(new DiskFolder(), file, new CountingMethod(99), FOR_EVER);
      bench.send(10, "+0000001 lbf");
      awaitTrue(() -> readings(recording) == 1);
      recording.note("cap slipped");
      awaitTrue(() -> recording.progress().map(p -> p.events() == 2).orElse(false));
      recording.stop();
      assertThat(recording.await().closing().orElseThrow().reason())
          .isEqualTo(CloseReason.OPERATOR);
    }
    assertThat(Bench.events(file)).containsExactly("start", "note cap slipped", "stop operator");
  }

  @Test
  void record_diskFull_keepsWholeRowsAndClosesFromTheReserve() throws Exception {
    Path file = folder.resolve("a.raw.csv");
    FailingDisk disk = FailingDisk.fullAfter(headBytes() + 300, 4096);
    CountingMethod method = new CountingMethod(9999);
    try (Bench bench = new Bench()) {
      Recording recording = bench.record(disk, file, method, FOR_EVER);
      for (int i = 0; i < 100; i++) {
        bench.send(10, "+0000001 lbf");
      }
      RecordedTest test = recording.await();
      assertThat(test.failure().orElseThrow().kind()).isEqualTo(RecordedTest.Kind.STORAGE);
      assertThat(test.failure().orElseThrow().words()).contains("No space left");
      assertThat(test.closing().orElseThrow().reason()).isEqualTo(CloseReason.INTERRUPTED);
    }
    assertThat(Bench.events(file)).containsExactly("start", "stop interrupted storage failed");
    long last =
        Bench.rows(file).stream()
            .filter(r -> !r.isEvent())
            .mapToLong(RawRow::seq)
            .max()
            .orElseThrow();
    assertThat(method.seqs).allMatch(seq -> seq <= last);
  }

  @Test
  void record_diskRefusesToForce_isClosedAndNotAskedAgain() throws Exception {
    Path file = folder.resolve("a.raw.csv");
    try (Bench bench = new Bench()) {
      Recording recording =
          bench.record(FailingDisk.unforcedAfter(1), file, new CountingMethod(9999), FOR_EVER);
      bench.send(10, "+0000001 lbf");
      RecordedTest test = recording.await();
      assertThat(test.failure().orElseThrow().words()).contains("did not confirm");
      assertThat(test.closing().orElseThrow().reason()).isEqualTo(CloseReason.INTERRUPTED);
    }
    assertThat(Bench.events(file)).last().isEqualTo("stop interrupted storage failed");
  }

  /** Length of the head, by recording nothing. */
  private long headBytes() throws Exception {
    Path file = folder.resolve("head.raw.csv");
    try (Bench bench = new Bench()) {
      Recording recording = bench.record(new DiskFolder(), file, new CountingMethod(99), FOR_EVER);
      recording.stop();
      recording.await();
    }
    String text = Files.readString(file);
    return text.indexOf("\nseq,") + 1L + "seq,elapsed_us,channel,received,value,quality\n".length();
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
