package io.github.platenwire.recorder;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.Register;
import io.github.platenwire.lab.RegisterLine.Kind;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.Method.Objection;
import io.github.platenwire.method.Method.Weight;
import io.github.platenwire.record.Digests;
import io.github.platenwire.record.Observations;
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
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/**
 * Makes a new version of a summary after a measurement of the specimen was put right, or something
 * more was seen. The raw file and the versions before stay as they are. Stateless.
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
    RawHeader header = header(raw);
    return newVersion(
        lab,
        register,
        raw,
        new Occasion(Kind.CORRECTION, Maker.CORRECT, who, why, now),
        changes ->
            values.forEach(
                (what, to) -> {
                  changes.removeIf(change -> change.what().equals(what));
                  changes.add(SpecimenCorrection.change(header.specimen(), what, to));
                }),
        seen -> seen);
  }

  /**
   * Makes and registers a new version of a summary with observations added; figures change only
   * where an observation decides by which formula they are computed.
   *
   * @param raw the raw file
   * @param added what was seen; see {@link Observations#and}
   * @param who who saw it
   * @param now the time of day
   * @throws LabException if the raw file has no summary yet, or the lab's tables cannot be read
   * @throws RawFileException if the raw file is not as it should be
   * @throws TomlException if a calibration in its head cannot be read
   * @throws IOException if the new version cannot be written
   */
  public static TestClose.Closed observe(
      LabFolder lab, Register register, Path raw, Observations added, String who, Instant now)
      throws LabException, RawFileException, TomlException, IOException {
    return newVersion(
        lab,
        register,
        raw,
        new Occasion(Kind.OBSERVATION, Maker.OBSERVE, who, "observations added", now),
        changes -> {},
        seen -> seen.and(added));
  }

  /** On what occasion a new version is made. */
  private record Occasion(Kind kind, Maker maker, String who, String why, Instant now) {}

  private static TestClose.Closed newVersion(
      LabFolder lab,
      Register register,
      Path raw,
      Occasion occasion,
      Consumer<List<Change>> correct,
      UnaryOperator<Observations> see)
      throws LabException, RawFileException, TomlException, IOException {
    Path replaced =
        LabFolder.newestSummaryOf(raw)
            .orElseThrow(
                () ->
                    new LabException(
                        raw.getFileName() + ": there is no summary yet; 'recover' makes one"));
    List<Change> changes = new ArrayList<>(SummaryFile.changes(replaced));
    correct.accept(changes);
    RawHeader header = header(raw);
    refuse(header.withSpecimen(SpecimenCorrection.apply(header.specimen(), changes)));
    Reduction reduction =
        Reduction.of(raw, specimen -> SpecimenCorrection.apply(specimen, changes));
    RecordedTest test = reduction.test();
    Observations seen = see.apply(SummaryFile.observations(replaced));
    Correction correction =
        new Correction(
            occasion.who(),
            occasion.now(),
            occasion.why(),
            changes,
            String.valueOf(replaced.getFileName()),
            Digests.sha256Hex(Files.readAllBytes(replaced)));
    return new TestClose(lab, register)
        .write(
            occasion.kind(),
            LabFolder.nextSummaryOf(raw),
            witness ->
                TestSummary.of(
                    reduction.method(),
                    test.withFailure(SummaryFile.failure(replaced)),
                    seen,
                    CompanionSet.of(
                            lab,
                            reduction.method(),
                            test.placed(reduction.method(), seen.breakPosition()))
                        .map(CompanionSet::words),
                    new Provenance(occasion.maker(), witness, Optional.of(correction))));
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
