package io.github.platenwire.bench;

import io.github.platenwire.audit.Audit;
import io.github.platenwire.audit.AuditReport;
import io.github.platenwire.audit.Scope;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.record.RawFileReader;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * How fast records are audited: seals and structure alone, then everything with each figure
 * computed again, both beside a program that only takes the SHA-256 of the files and looks at each
 * byte once; and what a second core gives.
 */
final class AuditSpeed {
  private final ScratchLab lab;
  private final String program;
  private final int rounds;
  private long rows;

  AuditSpeed(ScratchLab lab, String program, int rounds) {
    this.lab = lab;
    this.program = program;
    this.rounds = rounds;
  }

  private interface Work {
    long rows() throws IOException, RawFileException, InterruptedException;
  }

  List<BenchFigure> run() throws IOException, RawFileException, InterruptedException {
    List<Double> scan = new ArrayList<>();
    List<Double> seals = new ArrayList<>();
    List<Double> whole = new ArrayList<>();
    List<Double> parallel = new ArrayList<>();
    int cores = Runtime.getRuntime().availableProcessors();
    for (int round = 0; round < rounds; round++) {
      scan.add(timed(this::scan));
      seals.add(timed(this::seals));
      whole.add(timed(() -> audit(1)));
      parallel.add(timed(() -> audit(cores)));
    }
    double scanned = Medians.of(scan);
    String against = "hash and scan";
    double one = Medians.of(whole);
    return List.of(
        BenchFigure.of("scan_rows_per_second", "Hash and scan", scanned, "rows/s"),
        BenchFigure.of("audit_seals_rows_per_second", "Audit, seals", Medians.of(seals), "rows/s")
            .atLeast(0.8, scanned, against),
        BenchFigure.of("audit_rows_per_second", "Audit, every figure", one, "rows/s")
            .atLeast(0.5, scanned, against),
        BenchFigure.of(
                "audit_parallel_rows_per_second",
                "The same, " + cores + " cores",
                Medians.of(parallel),
                "rows/s")
            .atLeast(0.9 * cores, one, "one core"));
  }

  /** Rows a second. */
  private double timed(Work work) throws IOException, RawFileException, InterruptedException {
    long start = SystemClocks.monotonic().nanos();
    long read = work.rows();
    double seconds = (SystemClocks.monotonic().nanos() - start) / 1e9;
    rows = Math.max(rows, read);
    return rows / seconds;
  }

  private long scan() throws IOException {
    long lines = 0;
    byte[] buffer = new byte[1 << 18];
    for (Path raw : lab.lab().records()) {
      MessageDigest digest = BareReader.sha256();
      try (InputStream in = Files.newInputStream(raw)) {
        for (int count = in.read(buffer); count >= 0; count = in.read(buffer)) {
          digest.update(buffer, 0, count);
          for (int i = 0; i < count; i++) {
            lines += buffer[i] == '\n' ? 1 : 0;
          }
        }
      }
      digest.digest();
    }
    return rows == 0 ? lines : rows;
  }

  private long seals() throws IOException, RawFileException {
    long read = 0;
    for (Path raw : lab.lab().records()) {
      try (RawFileReader reader = RawFileReader.open(raw)) {
        reader.readRows(row -> {});
        read += reader.goodRows();
      }
    }
    return read;
  }

  private long audit(int threads) throws IOException, InterruptedException {
    Audit.Settings settings =
        new Audit.Settings(
            Scope.ARCHIVE, threads, Set.of(), List.of(), program, SystemClocks.wall().now());
    AuditReport report = Audit.of(lab.lab(), settings, (read, of) -> {});
    return report.rows();
  }
}
