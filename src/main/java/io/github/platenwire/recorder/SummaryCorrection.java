package io.github.platenwire.recorder;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.Register;
import io.github.platenwire.lab.RegisterLine.Kind;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.Method.Objection;
import io.github.platenwire.method.Method.Weight;
import io.github.platenwire.record.Digests;
import io.github.platenwire.record.Provenance;
import io.github.platenwire.record.Provenance.Change;
import io.github.platenwire.record.Provenance.Correction;
import io.github.platenwire.record.Provenance.Maker;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.SummaryFile;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Makes a new version of a summary after a measurement of the specimen was put right. The raw file
 * and the versions before stay as they are. Stateless.
 */
public final class SummaryCorrection {
  private SummaryCorrection() {}

  /**
   * Makes and registers the new version.
   *
   * @param raw the raw file
   * @param values the right values by what they measure, see {@link SpecimenCorrection}
   * @param who who corrects
   * @param why why
   * @param now the time of day
   * @throws IllegalArgumentException if a value cannot be, or the method refuses the specimen
   * @throws LabException if the raw file has no summary to be corrected yet, or the lab's tables
   *     cannot be read
   * @throws RawFileException if the raw file is not as it should be
   * @throws TomlException if a calibration in its head cannot be read
   * @throws IOException if the new version cannot be written
   */
  public static TestClose.Closed write(
      LabFolder lab,
      Register register,
      Path raw,
      Map<String, Double> values,
      String who,
      String why,
      Instant now)
      throws LabException, RawFileException, TomlException, IOException {
    Path replaced =
        LabFolder.newestSummaryOf(raw)
            .orElseThrow(
                () ->
                    new LabException(
                        raw.getFileName() + ": there is no summary yet; 'recover' makes one"));
    RawHeader header = header(raw);
    List<Change> changes = new ArrayList<>(SummaryFile.changes(replaced));
    values.forEach(
        (what, to) -> {
          changes.removeIf(change -> change.what().equals(what));
          changes.add(SpecimenCorrection.change(header.specimen(), what, to));
        });
    refuse(header.withSpecimen(SpecimenCorrection.apply(header.specimen(), changes)));
    Reduction reduction =
        Reduction.of(raw, specimen -> SpecimenCorrection.apply(specimen, changes));
    RecordedTest test = reduction.test();
    Correction correction =
        new Correction(
            who,
            now,
            why,
            changes,
            String.valueOf(replaced.getFileName()),
            Digests.sha256Hex(Files.readAllBytes(replaced)));
    return new TestClose(lab, register)
        .write(
            Kind.CORRECTION,
            LabFolder.nextSummaryOf(raw),
            witness ->
                TestSummary.of(
                    reduction.method(),
                    test.withFailure(SummaryFile.failure(replaced)),
                    SummaryFile.observations(replaced),
                    CompanionSet.of(lab, reduction.method(), test).map(CompanionSet::words),
                    new Provenance(Maker.CORRECT, witness, Optional.of(correction))));
  }

  /** The rig that a raw file names. */
  public static String rigOf(Path raw) throws IOException, RawFileException {
    return header(raw).rig().name();
  }

  private static RawHeader header(Path raw) throws IOException, RawFileException {
    try (RawFileReader reader = RawFileReader.open(raw)) {
      return reader.header();
    }
  }

  private static void refuse(RawHeader header) throws TomlException {
    Method method = Method.parse(header.method().text(), header.method().name());
    for (Objection objection : method.examine(header.specimen(), header.setting())) {
      if (objection.weight() == Weight.REFUSED) {
        throw new IllegalArgumentException(
            "with that correction the method refuses the specimen: " + objection.problem());
      }
    }
  }
}
