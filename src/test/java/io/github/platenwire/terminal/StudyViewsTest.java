package io.github.platenwire.terminal;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.study.StudyComparison;
import io.github.platenwire.study.StudyData;
import io.github.platenwire.study.StudyLab;
import io.github.platenwire.study.StudyQuestion;
import io.github.platenwire.study.StudyStatus;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Screens of a study, kept as files for people to look at. */
class StudyViewsTest {
  @TempDir private Path folder;

  private StudyData data(UnitSystem first) {
    StudyLab lab =
        new StudyLab(folder, first, "NA-T", "[3, 7, 28]")
            .series("NA-T", "label = \"natural aggregate, tank\"", "ages-days = [7, 28]")
            .series("RA-T", "ages-days = [7]")
            .series("RA-S", "ages-days = [3, 7, 28]")
            .series("PB", "method = \"split-beam\"", "ages-days = [7]")
            .series("CB", "method = \"split-beam\"", "ages-days = [7]", "reference = \"PB\"")
            .cylinders("NA-T", 7, 34.1, 33.9, 35.2)
            .cylinders("NA-T", 28, 41.3, 42.4, 44.6)
            .cylinders("RA-T", 7, "through", 28.3, 27.9, 29.5)
            .cylinders("RA-S", 7, "through", 23.1, 24.5, 26.2)
            .cylinders("RA-S", 28, "through", 25.3, 26.0, 24.8)
            .waiting("RA-S-03-1", "RA-S", 3, 75)
            .waiting("RA-S-03-2", "RA-S", 3, 73)
            .waiting("RA-S-03-3", "RA-S", 3, 50)
            .waiting("RA-S-07-4", "RA-S", 7, 168)
            .row("X-1,RA-X,cylinder,100,100,200,2026-11-20 08:00,7,ground");
    double[] plain = {0.0045, 0.005, 0.0055};
    double[] coated = {0.041, 0.05, 0.055};
    for (int i = 0; i < 3; i++) {
      lab.beam("PB-" + i, "PB", 7, plain[i], 22_000).beam("CB-" + i, "CB", 7, coated[i], 18_000);
    }
    return lab.data();
  }

  @Test
  void status_overdueAndOutOfRange_isSaidInWords() throws IOException {
    StudyStatus status = StudyStatus.of(data(UnitSystem.SI), StudyLab.DAY);
    Golden.compare("study-status-80", StudyStatusView.lines(status, 80, Samples.PLAIN));
    Golden.compare(
        "study-status-ascii-44", StudyStatusView.lines(status, 44, Samples.ASCII_INCH_POUND));
  }

  @Test
  void comparison_wholeStudy_showsPointsMeansAndIntervals() throws IOException, LabException {
    StudyData data = data(UnitSystem.SI);
    StudyComparison comparison = StudyComparison.of(data, StudyQuestion.WHOLE);
    String title = data.study().title();
    Golden.compare("comparison-80", ComparisonView.lines(title, comparison, 80, Samples.PLAIN));
    for (int columns : new int[] {30, 44, 80, 200}) {
      List<String> lines = ComparisonView.lines(title, comparison, columns, Samples.PLAIN);
      assertThat(lines).allMatch(line -> TextWidth.columns(line) <= columns);
    }
  }

  @Test
  void comparison_inchPoundLabWithoutUnicode_isAllAscii() throws IOException, LabException {
    StudyData data = data(UnitSystem.INCH_POUND);
    StudyComparison comparison = StudyComparison.of(data, StudyQuestion.WHOLE);
    List<String> lines =
        ComparisonView.lines(data.study().title(), comparison, 80, Samples.ASCII_INCH_POUND);
    Golden.compare("comparison-ascii-80", lines);
    assertThat(String.join("", lines)).matches("\\p{ASCII}*");
  }
}
