package io.github.platenwire.recorder;

import io.github.platenwire.method.Method;
import io.github.platenwire.method.MethodResult;
import io.github.platenwire.record.Observations;
import io.github.platenwire.record.Provenance;
import io.github.platenwire.record.Summary;
import io.github.platenwire.toml.TomlException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Makes the summary of a test that is over, from what its raw file holds. Stateless. */
public final class TestSummary {
  private TestSummary() {}

  /**
   * Makes the summary.
   *
   * @param method the method as the raw file's head keeps it
   * @param recorded what was recorded; its raw file must have been closed
   * @param observations what a person saw
   * @param companions how its companions stand, in words, if that can be said
   * @param provenance how the summary comes about
   * @throws IllegalArgumentException if the raw file was not closed
   * @throws TomlException if a calibration in the head cannot be read
   */
  public static Summary of(
      Method method,
      RecordedTest recorded,
      Observations observations,
      Optional<String> companions,
      Provenance provenance)
      throws TomlException {
    List<CalibrationState> calibrations = CalibrationState.of(recorded.header());
    Path name = recorded.file().getFileName();
    return new Summary(
        recorded.header(),
        method.title(),
        method.standard(),
        name == null ? "" : name.toString(),
        recorded
            .closing()
            .orElseThrow(() -> new IllegalArgumentException("the raw file was not closed")),
        withDepartures(recorded.placed(method, observations.breakPosition()), calibrations),
        recorded.channels(),
        observations,
        calibrations.stream().map(CalibrationState::words).toList(),
        companions,
        recorded.failure().map(RecordedTest.Failure::words),
        provenance);
  }

  /** The method's departures, and those that the head tells of. */
  private static MethodResult withDepartures(
      RecordedTest recorded, List<CalibrationState> calibrations) {
    MethodResult result = recorded.result();
    List<String> departures = new ArrayList<>(result.departures());
    for (int i = 0; i < calibrations.size(); i++) {
      if (!calibrations.get(i).inOrder()) {
        String channel = recorded.header().channels().get(i).facts().name();
        departures.add("Calibration of " + channel + ": " + calibrations.get(i).words() + ".");
      }
    }
    for (var check : recorded.header().checklist()) {
      if (check.state().equals(ChecklistItem.State.WARNING.word())
          && check.name().startsWith("zero of ")) {
        departures.add("Before the start the " + check.seen() + ".");
      }
    }
    Optional<String> reason = recorded.header().overrideReason();
    reason.ifPresent(
        words ->
            departures.add(
                "Tested although something spoke against it; reason given: " + words + "."));
    return result.withDepartures(departures);
  }
}
