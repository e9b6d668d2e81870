package io.github.platenwire.audit;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Reads many records at once, the largest first, so that no core waits for a long one at the end.
 * Its threads are never interrupted: they end with their records.
 */
final class ParallelRecords {
  private final AuditContext context;
  private final int threads;
  private final Audit.Progress progress;
  private long readBytes;
  private long ofBytes;

  ParallelRecords(AuditContext context, int threads, Audit.Progress progress) {
    this.context = context;
    this.threads = threads;
    this.progress = progress;
  }

  private record Sized(Path raw, long bytes) {}

  /** Those that are in the scope, in the order of the files. */
  List<RecordFacts> run(List<Path> raws) throws InterruptedException {
    List<Sized> largestFirst =
        raws.stream()
            .map(raw -> new Sized(raw, size(raw)))
            .sorted(Comparator.comparingLong(Sized::bytes).reversed())
            .toList();
    ofBytes = largestFirst.stream().mapToLong(Sized::bytes).sum();
    ExecutorService readers = Executors.newFixedThreadPool(threads, threadsNamed());
    try {
      Map<Path, Future<Optional<RecordFacts>>> running = new LinkedHashMap<>();
      for (Sized sized : largestFirst) {
        running.put(
            sized.raw(),
            readers.submit(() -> new RecordAudit(context, sized.raw(), this::read).run()));
      }
      List<RecordFacts> records = new ArrayList<>();
      for (Path raw : raws) {
        Future<Optional<RecordFacts>> future = running.get(raw);
        if (future != null) {
          get(future).ifPresent(records::add);
        }
      }
      return records;
    } finally {
      readers.shutdown();
    }
  }

  private synchronized void read(long bytes) {
    readBytes += bytes;
    progress.read(Math.min(readBytes, ofBytes), ofBytes);
  }

  private static Optional<RecordFacts> get(Future<Optional<RecordFacts>> future)
      throws InterruptedException {
    try {
      return future.get();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException fault) {
        throw fault;
      }
      if (e.getCause() instanceof Error error) {
        throw error;
      }
      throw new IllegalStateException("reading a record failed", e);
    }
  }

  private static long size(Path raw) {
    try {
      return Files.size(raw);
    } catch (IOException | UncheckedIOException e) {
      return 0;
    }
  }

  private static ThreadFactory threadsNamed() {
    AtomicInteger number = new AtomicInteger();
    return task -> {
      Thread thread = new Thread(task, "platenwire-audit-" + number.incrementAndGet());
      thread.setDaemon(true);
      return thread;
    };
  }
}
