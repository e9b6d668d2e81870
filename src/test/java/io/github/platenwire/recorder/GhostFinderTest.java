package io.github.platenwire.recorder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.method.GhostCurve;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.quantity.UnitSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GhostFinderTest {
  private static final String STUDY =
      """
      format = "platenwire-study 1"
      title = "Bars"
      reference = "NA-PB"
      [[series]]
      name = "NA-PB"
      [[series]]
      name = "NA-CB"
      [[series]]
      name = "NA-DB"
      """;

  @TempDir Path folder;
  private LabFolder lab;
  private int hour = 8;

  @BeforeEach
  void makeLab() throws Exception {
    lab =
        LabFolder.create(
            folder.resolve("lab"),
            LabTemplate.example("Weir lab", ZoneId.of("UTC"), UnitSystem.SI).withStudy(STUDY));
  }

  /** A closed test, an hour after the one before it, with a curve of so much at 10 kN. */
  private void closed(String specimen, String series, String method, double width)
      throws Exception {
    summary(
        specimen,
        """
        {"format": "platenwire-summary 1", "test": "t",
         "specimen": {"name": "%s", "series": "%s"}, "method": {"name": "%s"},
         "virgin_curve": {"gauges": ["a"], "load_n": [0, 10000], "width_mm": [0, %s],
          "gauge_mask": [1, 1], "row": [5, 9]}}
        """
            .formatted(specimen, series, method, Double.toString(width)));
  }

  private void summary(String specimen, String text) throws Exception {
    Path month = Files.createDirectories(lab.root().resolve("records").resolve("2026-11"));
    String name = "20261125T%02d0000Z_%s".formatted(hour++, specimen);
    Files.createFile(month.resolve(name + ".raw.csv"));
    Files.writeString(month.resolve(name + ".summary.json"), text);
  }

  private Optional<GhostCurve> find(String specimen, String series) throws Exception {
    Specimen beam =
        new Specimen(
            specimen,
            series,
            "beam",
            List.of(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Map.of());
    return GhostFinder.of(lab, beam, "split-beam");
  }

  @Test
  void of_companionsAndReference_takesTheLastCompanion() throws Exception {
    closed("NA-CB-1", "NA-CB", "split-beam", 0.2);
    closed("NA-CB-2", "NA-CB", "split-beam", 0.3);
    closed("NA-PB-1", "NA-PB", "split-beam", 0.02);
    GhostCurve ghost = find("NA-CB-3", "NA-CB").orElseThrow();
    assertThat(ghost.specimen()).isEqualTo("NA-CB-2");
    assertThat(ghost.widthAt(5_000)).isCloseTo(0.15, within(1e-12));
  }

  @Test
  void of_noCompanion_takesTheLastOfTheReferenceSeries() throws Exception {
    closed("NA-PB-1", "NA-PB", "split-beam", 0.02);
    closed("NA-DB-1", "NA-DB", "split-beam", 0.1);
    assertThat(find("NA-CB-1", "NA-CB").orElseThrow().specimen()).isEqualTo("NA-PB-1");
  }

  @Test
  void of_neitherCompanionNorReference_takesTheLastOfAnyOther() throws Exception {
    closed("NA-DB-1", "NA-DB", "split-beam", 0.1);
    assertThat(find("NA-CB-1", "NA-CB").orElseThrow().specimen()).isEqualTo("NA-DB-1");
  }

  @Test
  void of_otherMethodSameSpecimenOrNoCurve_findsNothing() throws Exception {
    closed("NA-CB-1", "NA-CB", "split-beam", 0.2);
    closed("NA-CB-2", "NA-CB", "notched-beam-en14651", 0.2);
    summary(
        "NA-CB-3",
        "{\"format\": \"platenwire-summary 1\", \"method\": {\"name\": \"split-beam\"},"
            + " \"specimen\": {\"name\": \"NA-CB-3\", \"series\": \"NA-CB\"}}");
    assertThat(find("NA-CB-1", "NA-CB")).isEmpty();
  }

  @Test
  void of_lastSummaryDamaged_takesTheOneBefore() throws Exception {
    closed("NA-CB-1", "NA-CB", "split-beam", 0.2);
    summary("NA-CB-2", "{ torn");
    assertThat(find("NA-CB-3", "NA-CB").orElseThrow().specimen()).isEqualTo("NA-CB-1");
  }
}
