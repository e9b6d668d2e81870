package io.github.platenwire.audit;

import io.github.platenwire.calibration.CalibrationPoint;
import io.github.platenwire.calibration.CalibrationRun;
import io.github.platenwire.calibration.CalibrationRuns;
import io.github.platenwire.lab.Calibration;
import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawHeader.KeptFile;
import io.github.platenwire.recorder.CalibrationState;
import io.github.platenwire.recorder.Definitions;
import io.github.platenwire.toml.TomlException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Audits the calibrations that a test was made with. Confined to one thread. */
final class CalibrationAudit {
  private final LabTables tables;
  private final Location whole;
  private final RawHeader header;
  private final RowWatch watch;
  private final Findings findings;

  CalibrationAudit(
      LabTables tables, Location whole, RawHeader header, RowWatch watch, Findings findings) {
    this.tables = tables;
    this.whole = whole;
    this.header = header;
    this.watch = watch;
    this.findings = findings;
  }

  void run() {
    List<String> missing =
        header.channels().stream()
            .filter(channel -> channel.calibration().isEmpty())
            .map(channel -> channel.facts().name())
            .toList();
    if (!missing.isEmpty()) {
      add(
          TestCheck.CALIBRATION_MISSING,
          "a calibration of " + String.join(", ", missing),
          "none is named in the rig file");
    }
    for (int i = 0; i < header.channels().size(); i++) {
      HeaderChannel channel = header.channels().get(i);
      Optional<KeptFile> kept = channel.calibration();
      if (kept.isPresent()) {
        kept(channel.facts(), kept.get(), i);
      }
    }
  }

  private void add(Check check, String expected, String seen) {
    findings.add(check, whole, header.test(), expected, seen);
  }

  private void kept(ChannelFacts facts, KeptFile kept, int channel) {
    Calibration calibration;
    try {
      calibration = Definitions.calibration(kept.text(), kept.name());
    } catch (TomlException e) {
      add(RawCheck.HEAD_DAMAGED, "a calibration that can be read", String.valueOf(e.getMessage()));
      return;
    }
    LocalDate day = LocalDate.ofInstant(header.start(), header.zone());
    CalibrationState state = CalibrationState.on(Optional.of(calibration), day);
    if (!state.inOrder()) {
      add(
          TestCheck.CALIBRATION_OUT_OF_DATE,
          "a calibration of " + facts.name() + " in date on " + day,
          state.words());
    }
    calibration.runs().ifPresent(runs -> range(facts, calibration, runs, channel));
    asInLab(facts, calibration);
  }

  private void range(
      ChannelFacts facts, Calibration calibration, CalibrationRuns runs, int channel) {
    double greatest = watch.greatest(channel);
    if (!Double.isFinite(greatest)) {
      return;
    }
    double most = 0;
    for (CalibrationRun run : runs.runs()) {
      for (CalibrationPoint point : run.points()) {
        most = Math.max(most, in(facts.unit(), runs.unit(), point.applied()));
      }
    }
    String unit = " " + facts.unit().symbol();
    if (greatest > most + facts.resolution().orElse(0)) {
      add(
          TestCheck.CALIBRATION_RANGE,
          facts.name() + " up to " + most + unit + ", the greatest that was applied",
          greatest + unit);
    } else if (calibration.classFrom().isPresent()) {
      double from = in(facts.unit(), runs.unit(), calibration.classFrom().getAsDouble());
      if (greatest < from) {
        add(
            TestCheck.CALIBRATION_RANGE,
            "a greatest " + facts.name() + " from " + from + unit + ", where the class begins",
            greatest + unit);
      }
    }
  }

  private static double in(Unit to, Unit from, double value) {
    return to.fromBase(from.toBase(value));
  }

  private void asInLab(ChannelFacts facts, Calibration then) {
    List<Calibration> now = tables.certificate(then.certificate());
    String certificate = "certificate " + then.certificate() + " of " + facts.name();
    if (now.isEmpty()) {
      add(
          TestCheck.CALIBRATION_NOT_KEPT,
          certificate + " under calibrations/",
          "no file has its number");
    } else if (now.stream().noneMatch(one -> saysTheSame(then, one))) {
      add(
          TestCheck.CALIBRATION_DIFFERS,
          certificate + " as in the record's head",
          "calibrations/" + now.get(0).name() + ".toml says something else");
    }
  }

  /** Comments, and the name of the file, may change. */
  private static boolean saysTheSame(Calibration a, Calibration b) {
    return a.laboratory().equals(b.laboratory())
        && a.date().equals(b.date())
        && a.due().equals(b.due())
        && a.accuracyClass().equals(b.accuracyClass())
        && a.classFrom().equals(b.classFrom())
        && a.standard().equals(b.standard())
        && a.expandedUncertaintyPercent().equals(b.expandedUncertaintyPercent())
        && a.scale().equals(b.scale())
        && a.correction().equals(b.correction())
        && a.degree() == b.degree()
        && a.runs().equals(b.runs());
  }
}
