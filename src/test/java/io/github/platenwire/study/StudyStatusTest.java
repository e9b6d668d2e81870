package io.github.platenwire.study;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.study.StudyStatus.DueBreak;
import io.github.platenwire.study.StudyStatus.Progress;
import io.github.platenwire.study.StudyStatus.Standing;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StudyStatusTest {
  @TempDir private Path folder;

  private StudyLab lab() {
    return new StudyLab(folder, UnitSystem.SI, "NA-T", "[3, 7, 28]")
        .series("NA-T")
        .series("RA-S", "ages-days = [7, 28]");
  }

  private static DueBreak due(StudyStatus status, String specimen) {
    return status.due().stream()
        .filter(one -> one.specimen().equals(specimen))
        .findFirst()
        .orElseThrow();
  }

  /** Permissible tolerances of the age at test of ASTM C39/C39M, from memory. */
  @ParameterizedTest
  @CsvSource({"1, 0.5", "3, 2", "7, 6", "28, 20", "90, 48"})
  void standing_aroundTheTolerance_isThatOfC39(double ageDays, double hours) {
    StudyData data =
        new StudyLab(folder, UnitSystem.SI, "NA-T", "[1, 3, 7, 28, 90]")
            .series("NA-T")
            .waiting("one", "NA-T", ageDays, 0)
            .data();
    Instant exact = StudyLab.DAY.plusSeconds(Math.round(ageDays * 86_400));
    Duration tolerance = Duration.ofMinutes(Math.round(hours * 60));
    assertThat(due(StudyStatus.of(data, exact), "one").tolerance()).contains(tolerance);
    assertThat(standing(data, exact.minus(tolerance).minusSeconds(1))).isEqualTo(Standing.LATER);
    assertThat(standing(data, exact.minus(tolerance))).isEqualTo(Standing.NOW);
    assertThat(standing(data, exact.plus(tolerance))).isEqualTo(Standing.NOW);
    assertThat(standing(data, exact.plus(tolerance).plusSeconds(1))).isEqualTo(Standing.OVERDUE);
  }

  private static Standing standing(StudyData data, Instant now) {
    return due(StudyStatus.of(data, now), "one").standing();
  }

  @Test
  void due_severalAges_isSoonestFirstAndUnknownLast() {
    StudyStatus status =
        StudyStatus.of(
            lab()
                .waiting("late", "NA-T", 3, 24 * 4)
                .waiting("soon", "NA-T", 7, 24 * 6)
                .waiting("far", "NA-T", 28, 24)
                .row("unknown,NA-T,cylinder,100,100,200,,3,ground")
                .data(),
            StudyLab.DAY);
    assertThat(status.due())
        .extracting(DueBreak::specimen)
        .containsExactly("late", "soon", "far", "unknown");
    assertThat(status.due())
        .extracting(DueBreak::standing)
        .containsExactly(Standing.OVERDUE, Standing.LATER, Standing.LATER, Standing.NOT_KNOWN);
    assertThat(status.overdue()).isOne();
  }

  @Test
  void due_ageWithoutPrintedTolerance_isDueAtItsTimeAndOverdueADayAfter() {
    StudyData data =
        new StudyLab(folder, UnitSystem.SI, "NA-T", "[5]")
            .series("NA-T")
            .waiting("one", "NA-T", 5, 24 * 5)
            .data();
    assertThat(due(StudyStatus.of(data, StudyLab.DAY), "one").tolerance()).isEmpty();
    assertThat(standing(data, StudyLab.DAY.minusSeconds(1))).isEqualTo(Standing.LATER);
    assertThat(standing(data, StudyLab.DAY.plusSeconds(86_400))).isEqualTo(Standing.NOW);
    assertThat(standing(data, StudyLab.DAY.plusSeconds(86_401))).isEqualTo(Standing.OVERDUE);
  }

  @Test
  void progress_partlyBroken_countsAgainstThePlan() {
    StudyStatus status =
        StudyStatus.of(
            lab()
                .cylinders("RA-S", 7, 25.0, 25.4)
                .waiting("RA-S-07-3", "RA-S", 7, 24 * 7)
                .cylinder("RA-S-28-1", "RA-S", 28, 28 * 24 + 21, 26, "through", "break")
                .data(),
            StudyLab.DAY);
    assertThat(status.progress())
        .contains(
            new Progress("RA-S", "RA-S", 7, 3, 3, 2, 0),
            new Progress("RA-S", "RA-S", 28, 3, 0, 1, 1));
    assertThat(status.due()).extracting(DueBreak::specimen).containsExactly("RA-S-07-3");
    assertThat(status.remarks())
        .anyMatch(
            remark ->
                remark.startsWith(
                    "RA-S at 28 days: 2 are still to break, but specimens.csv lists none"));
  }

  /** A test that the operator stopped broke nothing. */
  @Test
  void progress_testStoppedBeforeTheBreak_leavesTheSpecimenDue() {
    StudyData data =
        lab()
            .waiting("NA-T-07-1", "NA-T", 7, 24 * 7)
            .cylinder("NA-T-07-1", "NA-T", 7, 24 * 7, 20, "around", "operator")
            .data();
    StudyStatus status = StudyStatus.of(data, StudyLab.DAY);
    assertThat(due(status, "NA-T-07-1").standing()).isEqualTo(Standing.NOW);
    assertThat(data.tests().get(0).figure("strength")).isEmpty();
    assertThat(data.tests().get(0).figure("peak-load")).isPresent();
  }

  @Test
  void unplanned_everyKind_isNamedWithItsReason() {
    StudyStatus status =
        StudyStatus.of(
            lab()
                .cylinders("RA-S", 7, 25.0, 25.4, 24.8)
                .waiting("RA-S-07-4", "RA-S", 7, 24 * 7)
                .waiting("X-1", "RA-T", 7, 24)
                .waiting("X-2", "RA-S", 90, 24)
                .row("X-3,RA-S,cylinder,100,100,200,2026-11-24 08:00,,ground")
                .data(),
            StudyLab.DAY);
    assertThat(status.unplanned())
        .extracting(one -> one.specimen() + ": " + one.reason())
        .containsExactlyInAnyOrder(
            "RA-S-07-4: a spare: as many as the plan asks for at 7 days are broken",
            "X-1: the plan has no series 'RA-T', did you mean 'NA-T'?",
            "X-2: the plan breaks none of RA-S at 90 days",
            "X-3: its age_days is empty, so it has no time in the plan");
    assertThat(status.due()).isEmpty();
  }

  /** Range 3 MPa of mean 25 is 12 %; ASTM C39 prints 10.6 % for three 100 × 200 mm, from memory. */
  @Test
  void outOfRange_companionsTooFarApart_areNamedWithTheLimit() {
    StudyStatus status =
        StudyStatus.of(lab().cylinders("RA-S", 7, 23.5, 25, 26.5).data(), StudyLab.DAY);
    assertThat(status.outOfRange()).hasSize(1);
    assertThat(status.outOfRange().get(0).verdict().words())
        .contains("range 12.0 %", "limit 10.6 %: beyond");
  }

  @Test
  void read_newerVersionUnreadableAndMissing_takesTheNewestAndNamesTheRest() throws Exception {
    LabFolder made = lab().cylinders("RA-S", 7, 25, 25.4, 24.8).make();
    Path month = folder.resolve("records/2026-11");
    List<Path> summaries = made.records().stream().map(LabFolder::summaryOf).toList();
    String first = Files.readString(summaries.get(0));
    Files.writeString(
        month.resolve(
            summaries.get(0).getFileName().toString().replace(".summary.", ".summary-2.")),
        first.replace("\"value\":25.0,\"unit\":\"MPa\"", "\"value\":26.0,\"unit\":\"MPa\""));
    Files.writeString(summaries.get(1), "{\"format\":\"platenwire-summary 1\"}");
    Files.delete(summaries.get(2));
    List<String> before = StudyLab.fingerprint(folder);
    StudyData data = StudyData.read(made);
    assertThat(data.tests()).hasSize(1);
    assertThat(data.tests().get(0).figure("strength").orElseThrow().exact()).isEqualTo(26);
    assertThat(data.tests().get(0).summaryFile()).endsWith(".summary-2.json");
    assertThat(data.remarks())
        .anyMatch(
            remark ->
                remark.contains("cannot be read and is left out")
                    && remark.contains("'test' is missing"))
        .anyMatch(remark -> remark.contains("has no summary"));
    StudyStatus.of(data, StudyLab.DAY);
    assertThat(StudyLab.fingerprint(folder)).isEqualTo(before);
  }
}
