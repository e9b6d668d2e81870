package io.github.platenwire.audit;

import io.github.platenwire.audit.RecordFacts.Version;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.record.Digests;
import io.github.platenwire.record.Observations;
import io.github.platenwire.record.Provenance.Change;
import io.github.platenwire.record.Provenance.Correction;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.record.Summary;
import io.github.platenwire.record.SummaryDifferences.Difference;
import io.github.platenwire.record.SummaryDocument;
import io.github.platenwire.recorder.Reduction;
import io.github.platenwire.recorder.SpecimenCorrection;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Audits the versions of one record's summary: what follows from the raw file, and from each other.
 * Confined to one thread; used once.
 */
final class SummaryAudit {
  private static final int MOST_DIFFERENCES = 3;

  private final AuditContext context;
  private final Path raw;
  private final String test;
  private final Findings findings;
  private final List<Version> versions = new ArrayList<>();
  private final EnclosureAudit enclosures;
  private @Nullable SummaryDocument before;
  private @Nullable Summary newest;
  private @Nullable Specimen corrected;
  private long bytes;

  SummaryAudit(AuditContext context, Path raw, String test, Findings findings) {
    this.context = context;
    this.raw = raw;
    this.test = test;
    this.findings = findings;
    this.enclosures = new EnclosureAudit(context.relative(raw), raw, test, findings);
  }

  /**
   * Goes through the versions.
   *
   * @param reduction what follows from the raw file; null if it is damaged
   * @param closed whether the raw file has its last line
   */
  List<Version> run(@Nullable Reduction reduction, boolean closed) {
    Reduction computed = closed ? reduction : null;
    for (Path path : LabFolder.summariesOf(raw)) {
      version(path, computed);
    }
    if (computed != null && newest == null) {
      newest = summary(computed, Observations.NONE);
    }
    return List.copyOf(versions);
  }

  /** The newest summary as computed again; empty if it cannot be computed. */
  Optional<Summary> newest() {
    return Optional.ofNullable(newest);
  }

  /** The specimen with every correction; empty if there was none. */
  Optional<Specimen> corrected() {
    return Optional.ofNullable(corrected);
  }

  /** Length of all versions. */
  long bytes() {
    return bytes;
  }

  private void version(Path path, @Nullable Reduction computed) {
    String file = context.relative(path);
    try {
      SummaryDocument document = SummaryDocument.read(path);
      bytes += document.bytes();
      versions.add(
          new Version(
              file,
              Optional.of(document.sha256()),
              document.witnessBefore(),
              /* readable= */ true,
              enclosures.files(document.observations().enclosures())));
      enclosures.look(document.observations().enclosures());
      follows(document, file);
      if (computed != null) {
        differs(document, file, computed);
      }
      before = document;
    } catch (IOException e) {
      versions.add(
          new Version(file, digest(path), Optional.empty(), /* readable= */ false, List.of()));
      findings.add(
          SummaryVersionCheck.SUMMARY_UNREADABLE,
          Location.of(file),
          test,
          "a summary",
          String.valueOf(e.getMessage()));
    }
  }

  private static Optional<String> digest(Path path) {
    try {
      return Optional.of(Digests.sha256Hex(Files.readAllBytes(path)));
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** A later version names the one that it replaces, which must still be what it was. */
  private void follows(SummaryDocument document, String file) {
    SummaryDocument replaced = before;
    Optional<Correction> correction = document.correction();
    boolean first = versions.size() == 1;
    if (first != correction.isEmpty()) {
      findings.add(
          SummaryVersionCheck.VERSIONS_OUT_OF_ORDER,
          Location.of(file),
          test,
          first ? "a first version, which corrects nothing" : "a correction of the version before",
          first ? "a correction" : "no correction");
      return;
    }
    if (correction.isEmpty()) {
      return;
    }
    boolean ties =
        replaced != null
            && correction.get().replacedSha256().equals(replaced.sha256())
            && correction
                .get()
                .replacedFile()
                .equals(String.valueOf(replaced.file().getFileName()));
    if (!ties) {
      findings.add(
          SummaryVersionCheck.VERSIONS_OUT_OF_ORDER,
          Location.of(file),
          test,
          correction.get().replacedFile() + " with sha256=" + correction.get().replacedSha256(),
          replaced == null
              ? "no readable version before it"
              : replaced.file().getFileName() + " with sha256=" + replaced.sha256());
    }
    if (!correction.get().changes().equals(replaced == null ? List.of() : replaced.changes())) {
      note(correction.get(), file);
    }
  }

  private void note(Correction correction, String file) {
    findings.add(
        SummaryVersionCheck.CORRECTED,
        Location.of(file),
        test,
        "as in the raw file's head: "
            + changes(
                correction, change -> change.from().map(String::valueOf).orElse("not measured")),
        changes(correction, change -> String.valueOf(change.to()))
            + "; by "
            + correction.who()
            + " at "
            + correction.when()
            + ": "
            + correction.why());
  }

  private static String changes(
      Correction correction, java.util.function.Function<Change, String> value) {
    return correction.changes().stream()
        .map(change -> change.what() + " " + value.apply(change))
        .collect(Collectors.joining(", "));
  }

  private void differs(SummaryDocument document, String file, Reduction first) {
    List<Change> changes = document.changes();
    try {
      Reduction reduction = first;
      if (!changes.isEmpty()) {
        corrected = SpecimenCorrection.apply(first.test().header().specimen(), changes);
        reduction = Reduction.of(raw, specimen -> SpecimenCorrection.apply(specimen, changes));
      }
      Summary again = summary(reduction, document.observations());
      newest = again;
      if (again != null) {
        differences(document.differences(again), file);
      }
    } catch (IllegalArgumentException | RawFileException | IOException e) {
      findings.add(
          SummaryVersionCheck.SUMMARY_DIFFERS,
          Location.of(file),
          test,
          "a correction that can be computed",
          String.valueOf(e.getMessage()));
    }
  }

  private void differences(List<Difference> differences, String file) {
    if (differences.isEmpty()) {
      return;
    }
    List<Difference> told = differences.subList(0, Math.min(MOST_DIFFERENCES, differences.size()));
    String more =
        differences.size() > told.size()
            ? "; and " + (differences.size() - told.size()) + " more"
            : "";
    findings.add(
        SummaryVersionCheck.SUMMARY_DIFFERS,
        Location.of(file),
        test,
        told.stream().map(d -> d.where() + " " + d.computed()).collect(Collectors.joining("; ")),
        told.stream().map(Difference::closed).collect(Collectors.joining("; ")) + more);
  }

  /** Null, with a finding, if the head keeps what cannot be read. */
  private @Nullable Summary summary(Reduction reduction, Observations seen) {
    try {
      return reduction.summary(seen);
    } catch (TomlException | IllegalArgumentException e) {
      findings.add(
          RawCheck.HEAD_DAMAGED,
          Location.of(context.relative(raw)),
          test,
          "a head that can be used",
          String.valueOf(e.getMessage()));
      return null;
    }
  }
}
