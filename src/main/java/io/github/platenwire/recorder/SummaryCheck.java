package io.github.platenwire.recorder;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.record.Provenance.Change;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.record.SummaryDifferences;
import io.github.platenwire.record.SummaryDifferences.Difference;
import io.github.platenwire.record.SummaryFile;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Every version of a record's summary, held against what its raw file alone gives. Immutable.
 *
 * @param rowDifferences rows whose bytes do not give what stands beside them
 * @param versions each version of the summary, the oldest first
 */
public record SummaryCheck(List<String> rowDifferences, List<Version> versions) {
  /** Makes the lists immutable. */
  public SummaryCheck {
    rowDifferences = List.copyOf(rowDifferences);
    versions = List.copyOf(versions);
  }

  /**
   * One version.
   *
   * @param file the summary
   * @param differences where it says something else than the raw file gives
   */
  public record Version(Path file, List<Difference> differences) {}

  /**
   * Computes everything again.
   *
   * @param raw the raw file
   * @throws RawFileException if the raw file is not as the format says, or was not closed
   * @throws TomlException if a calibration in its head cannot be read
   * @throws IOException if a file cannot be read, or a summary is none
   */
  public static SummaryCheck of(Path raw) throws RawFileException, TomlException, IOException {
    Reduction first = Reduction.of(raw);
    if (first.test().closing().isEmpty()) {
      throw new RawFileException(
          String.valueOf(raw.getFileName()),
          1,
          "the record was never closed; 'platenwire recover' does that");
    }
    List<Version> versions = new ArrayList<>();
    for (Path file : LabFolder.summariesOf(raw)) {
      List<Change> changes = SummaryFile.changes(file);
      Reduction reduction =
          changes.isEmpty()
              ? first
              : Reduction.of(raw, specimen -> SpecimenCorrection.apply(specimen, changes));
      versions.add(
          new Version(
              file,
              SummaryDifferences.of(file, reduction.summary(SummaryFile.observations(file)))));
    }
    return new SummaryCheck(first.rowDifferences(), versions);
  }

  /** Whether there is a summary, and nothing differs. */
  public boolean isEqual() {
    return rowDifferences.isEmpty()
        && !versions.isEmpty()
        && versions.stream().allMatch(version -> version.differences().isEmpty());
  }
}
