package io.github.platenwire.recorder;

import io.github.platenwire.lab.Calibration;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.toml.TomlException;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A channel's calibration on a day. Immutable.
 *
 * @param inOrder whether there is one, and it is not out of date
 * @param words for the summary and the checklist
 */
public record CalibrationState(boolean inOrder, String words) {
  private static final long SOON_DAYS = 30;

  /**
   * The states of a record's channels on its own day, from what its head keeps.
   *
   * @return in the order of the head
   * @throws TomlException if a calibration kept there cannot be read
   */
  static List<CalibrationState> of(RawHeader header) throws TomlException {
    LocalDate day = header.start().atZone(header.zone()).toLocalDate();
    List<CalibrationState> states = new ArrayList<>();
    for (RawHeader.HeaderChannel channel : header.channels()) {
      Optional<Calibration> calibration = Optional.empty();
      if (channel.calibration().isPresent()) {
        RawHeader.KeptFile kept = channel.calibration().get();
        calibration = Optional.of(Definitions.calibration(kept.text(), kept.name()));
      }
      states.add(on(calibration, day));
    }
    return states;
  }

  /** A word in time, so that nobody learns of it on the day of a test. */
  private static String soon(LocalDate today, LocalDate due) {
    long days = ChronoUnit.DAYS.between(today, due);
    return days > SOON_DAYS ? "" : days == 1 ? ", 1 day left" : ", " + days + " days left";
  }

  /**
   * The state on a day.
   *
   * @param calibration the channel's calibration, if it names one
   * @param today the day in the lab's zone
   */
  public static CalibrationState on(Optional<Calibration> calibration, LocalDate today) {
    if (calibration.isEmpty()) {
      return new CalibrationState(false, "no calibration is named in the rig file");
    }
    Calibration known = calibration.get();
    String certificate =
        "certificate " + known.certificate() + " of " + known.laboratory() + ", " + known.date();
    if (known.date().isAfter(today)) {
      return new CalibrationState(false, certificate + ": dated after the test");
    }
    if (known.due().isEmpty()) {
      return new CalibrationState(true, certificate + ", no due date given");
    }
    LocalDate due = known.due().get();
    return today.isAfter(due)
        ? new CalibrationState(false, certificate + ", was due " + due + ": out of date")
        : new CalibrationState(true, certificate + ", due " + due + ": in date" + soon(today, due));
  }
}
