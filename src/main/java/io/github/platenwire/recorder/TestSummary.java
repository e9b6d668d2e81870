package io.github.platenwire.recorder;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.method.BreakPosition;
import io.github.platenwire.method.MethodResult;
import io.github.platenwire.record.Observations;
import io.github.platenwire.record.Summary;
import io.github.platenwire.record.SummaryFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Makes and writes the summary of a test that is over. Stateless. */
public final class TestSummary {
  private TestSummary() {}

  /**
   * Makes the summary and writes it beside the raw file.
   *
   * @param test the test in its lab
   * @param recorded what was recorded; its raw file must have been closed
   * @param observations what a person saw
   * @param position where along its span a beam broke; methods that do not ask take no notice
   * @return the summary as it was written
   * @throws IllegalArgumentException if the raw file was not closed
   * @throws IOException if it cannot be written
   */
  public static Summary write(
      LabTest test, RecordedTest recorded, Observations observations, BreakPosition position)
      throws LabException, IOException {
    Summary summary = of(test, withBreakPosition(test, recorded, position), observations);
    SummaryFile.write(LabFolder.summaryOf(recorded.file()), summary);
    return summary;
  }

  private static RecordedTest withBreakPosition(
      LabTest test, RecordedTest recorded, BreakPosition position) {
    return new RecordedTest(
        recorded.file(),
        recorded.header(),
        test.method().withBreakPosition(test.specimen(), recorded.result(), position),
        recorded.closing(),
        recorded.channels(),
        recorded.failure());
  }

  private static Summary of(LabTest test, RecordedTest recorded, Observations observations)
      throws LabException, IOException {
    List<CalibrationState> calibrations = test.calibrationStates(recorded.header().start());
    MethodResult result = withDepartures(test, recorded, calibrations);
    Path name = recorded.file().getFileName();
    return new Summary(
        recorded.header(),
        test.method().title(),
        test.method().standard(),
        name == null ? "" : name.toString(),
        recorded
            .closing()
            .orElseThrow(() -> new IllegalArgumentException("the raw file was not closed")),
        result,
        recorded.channels(),
        observations,
        calibrations.stream().map(CalibrationState::words).toList(),
        CompanionSet.of(test, recorded).map(CompanionSet::words),
        recorded.failure().map(RecordedTest.Failure::words));
  }

  /** The method's departures, and those that only the lab folder knows of. */
  private static MethodResult withDepartures(
      LabTest test, RecordedTest recorded, List<CalibrationState> calibrations) {
    MethodResult result = recorded.result();
    List<String> departures = new ArrayList<>(result.departures());
    for (int i = 0; i < calibrations.size(); i++) {
      if (!calibrations.get(i).inOrder()) {
        String channel = test.rig().channels().get(i).name();
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
