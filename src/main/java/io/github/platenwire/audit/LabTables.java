package io.github.platenwire.audit;

import io.github.platenwire.lab.Calibration;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.method.Specimen;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What people keep in the lab folder today, read once: specimens and calibrations. Immutable; safe
 * for any threads.
 */
final class LabTables {
  private final Optional<Map<String, Specimen>> specimens;
  private final List<Calibration> calibrations;
  private final List<Finding> findings;

  private LabTables(
      Optional<Map<String, Specimen>> specimens,
      List<Calibration> calibrations,
      List<Finding> findings) {
    this.specimens = specimens;
    this.calibrations = List.copyOf(calibrations);
    this.findings = List.copyOf(findings);
  }

  static LabTables read(LabFolder lab) {
    Findings findings = new Findings();
    return new LabTables(specimens(lab, findings), calibrations(lab, findings), findings.list());
  }

  private static Optional<Map<String, Specimen>> specimens(LabFolder lab, Findings findings) {
    try {
      Map<String, Specimen> byName = new HashMap<>();
      lab.specimens().forEach(specimen -> byName.put(specimen.name(), specimen));
      return Optional.of(byName);
    } catch (LabException e) {
      unreadable(findings, "specimens.csv", e);
      return Optional.empty();
    }
  }

  private static List<Calibration> calibrations(LabFolder lab, Findings findings) {
    List<Calibration> calibrations = new ArrayList<>();
    try {
      for (String name : lab.calibrationNames()) {
        try {
          calibrations.add(lab.calibration(name));
        } catch (LabException e) {
          unreadable(findings, "calibrations/" + name + ".toml", e);
        }
      }
    } catch (UncheckedIOException e) {
      unreadable(findings, "calibrations", e);
    }
    return calibrations;
  }

  private static void unreadable(Findings findings, String file, Exception e) {
    findings.add(
        TestCheck.TABLE_UNREADABLE,
        Location.of(file),
        "a file as the lab folder has it",
        String.valueOf(e.getMessage()));
  }

  /** Whether the table of specimens could be read. */
  boolean hasSpecimens() {
    return specimens.isPresent();
  }

  /** The row of a specimen today. */
  Optional<Specimen> specimen(String name) {
    return specimens.map(byName -> byName.get(name));
  }

  /** The lab's calibrations with a certificate's number. */
  List<Calibration> certificate(String number) {
    return calibrations.stream()
        .filter(calibration -> calibration.certificate().equals(number))
        .toList();
  }

  /** What could not be read. */
  List<Finding> findings() {
    return findings;
  }
}
