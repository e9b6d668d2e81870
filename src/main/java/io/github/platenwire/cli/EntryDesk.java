package io.github.platenwire.cli;

import io.github.platenwire.cli.EntryLine.NotAnEntry;
import io.github.platenwire.lab.EntryTable.Entry;
import io.github.platenwire.port.TypedLines;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.recorder.Progress;
import io.github.platenwire.recorder.RecorderClocks;
import io.github.platenwire.recorder.Recording;
import io.github.platenwire.terminal.Questions;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * Where a person types readings while a test runs: hands each line on as bytes, and ends the test
 * when told to, once everything typed is in the file. {@link #shown} is called by the recorder
 * thread, the rest by one thread of its own.
 */
final class EntryDesk {
  private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(10);

  private final TypedLines lines;
  private final Unit usual;
  private final ZoneId zone;
  private final RecorderClocks clocks;
  private final Face face;
  private long offered;
  private long taken;

  /**
   * Prepares.
   *
   * @param lines takes the lines to the recorder
   * @param usual the unit that is meant where none is typed
   * @param zone in which times of day are typed
   * @param clocks the recorder's
   */
  EntryDesk(TypedLines lines, Unit usual, ZoneId zone, RecorderClocks clocks, Face face) {
    this.lines = lines;
    this.usual = usual;
    this.zone = zone;
    this.clocks = clocks;
    this.face = face;
  }

  /** Something was written: entries among it are in the file now. */
  synchronized void shown(Progress progress) {
    taken = progress.view().front().map(front -> front.seen()).orElseGet(() -> progress.readings());
    notifyAll();
  }

  /** Gives the rows of a table to the recorder, then ends the test. */
  void feed(List<Entry> table, Recording recording) {
    start(
        () -> {
          table.forEach(row -> offer(EntryLine.ofTable(row.value(), row.unit(), row.seconds())));
          awaitTaken();
          recording.stop();
        });
  }

  /** Reads what is typed until {@code end}, or until there is no more. */
  void serve(Questions questions, Recording recording) {
    face.line(EntryLine.HELP);
    start(
        () -> {
          boolean more = true;
          while (more) {
            Optional<String> typed = questions.line();
            more = typed.isPresent() && take(typed.get().strip(), recording);
          }
          awaitTaken();
          recording.stop();
        });
  }

  private static void start(Runnable work) {
    Thread thread = new Thread(work, "platenwire-entries");
    thread.setDaemon(true);
    thread.start();
  }

  /** Whether more may come. */
  private boolean take(String typed, Recording recording) {
    String word = typed.toLowerCase(Locale.ROOT);
    if (word.equals("end")) {
      return false;
    }
    if (word.startsWith("note ")) {
      recording.note(typed.substring("note ".length()).strip());
    } else if (word.equals("help") || word.equals("?")) {
      face.line(EntryLine.HELP);
    } else if (!typed.isEmpty()) {
      try {
        offer(EntryLine.canonical(typed, usual, zone, clocks.wall().now()));
      } catch (NotAnEntry e) {
        face.line(String.valueOf(e.getMessage()));
      }
    }
    return true;
  }

  private synchronized void offer(String line) {
    offered++;
    lines.offer(line);
  }

  /** Until everything offered is in the file; no longer than the recorder can take for that. */
  private synchronized void awaitTaken() {
    long left = PATIENCE_NANOS;
    long until = clocks.stopwatch().nanos() + left;
    while (taken < offered && left > 0) {
      try {
        TimeUnit.NANOSECONDS.timedWait(this, left);
      } catch (InterruptedException e) {
        return;
      }
      left = until - clocks.stopwatch().nanos();
    }
  }
}
