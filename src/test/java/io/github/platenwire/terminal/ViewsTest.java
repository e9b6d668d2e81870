package io.github.platenwire.terminal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.method.MethodResult;
import io.github.platenwire.method.MethodResult.Check;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.UncertaintyBudget;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.recorder.ChecklistItem;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ViewsTest {
  private static final List<ChecklistItem> ITEMS =
      List.of(
          new ChecklistItem(
              "rig",
              ChecklistItem.State.PASSED,
              "frame-north, 3 channels: load, gauge-a, gauge-b",
              Optional.of("never shown")),
          new ChecklistItem(
              "load calibration",
              ChecklistItem.State.WARNING,
              "certificate AW-114, due 2026-12-01, in 6 days",
              Optional.of("Have it verified before the 28-day breaks.")),
          new ChecklistItem(
              "room in the lab folder",
              ChecklistItem.State.FAILED,
              "12 MB free on the disk of records, a test of 10 min needs about 40 MB",
              Optional.of(
                  "Free some room, or point --lab at another disk; then start this command again.")));

  private static final MethodResult RESULT =
      new MethodResult(
          List.of(
              new Figure(
                  "strength",
                  "Compressive strength",
                  30.1591,
                  Unit.MEGAPASCAL,
                  "30.2",
                  Unit.PSI,
                  "4370",
                  Optional.of(
                      new UncertaintyBudget(
                          List.of(
                              new UncertaintyBudget.Line(
                                  "calibration", 0.15, Double.POSITIVE_INFINITY)))),
                  Optional.of(0.0125),
                  List.of(2387L)),
              new Figure(
                  "ratio",
                  "Length to diameter",
                  2.0,
                  Unit.ONE,
                  "2.00",
                  Unit.ONE,
                  "2.00",
                  Optional.empty(),
                  Optional.empty(),
                  List.of())),
          List.of(
              new Check(
                  "rate",
                  true,
                  "0.24 to 0.27 MPa/s (35 to 39 psi/s) over the latter half of the loading"),
              new Check("age", false, "28 d 21 h, allowed 28 d ± 20 h")),
          List.of("The specimen was tested 1 h after the time allowed for an age of 28 days."),
          List.of(401L, 402L));

  private static final List<Place> PLACES =
      List.of(
          new Place("raw file", "records/2026-11/20261125T071502Z_RA-07-2.raw.csv"),
          new Place("summary", "records/2026-11/20261125T071502Z_RA-07-2.summary.json"));

  private static TextTable table() {
    return TextTable.empty()
        .words("figure")
        .numbers("truth")
        .numbers("measured")
        .words("remark")
        .row("peak load", "236.87 kN", "236.91 kN", "within the sampling bound of the reading")
        .row("first crack", "9.4 kN", "9.38 kN", "");
  }

  @Test
  void lines_eachView_looksAsKept() throws IOException {
    Golden.compare("checklist-80", ChecklistView.lines(ITEMS, 80, Samples.PLAIN));
    Golden.compare("checklist-40", ChecklistView.lines(ITEMS, 40, Samples.ASCII_INCH_POUND));
    Golden.compare("result-80", ResultView.lines(RESULT, PLACES, 80, Samples.PLAIN));
    Golden.compare("result-45", ResultView.lines(RESULT, PLACES, 45, Samples.ASCII_INCH_POUND));
    Golden.compare("cautions-80", Cautions.lines("ASTM C39/C39M", 80, Samples.PLAIN));
    Golden.compare("cautions-40", Cautions.lines("ASTM C39/C39M", 40, Samples.PLAIN));
    Golden.compare("table-80", table().lines(80, Samples.PLAIN));
    Golden.compare("table-60", table().lines(60, Samples.PLAIN));
    Golden.compare("table-40", table().lines(40, Samples.ASCII_INCH_POUND));
  }

  @Test
  void lines_anyWidth_fitAndLoseNothing() {
    for (int columns = 40; columns <= 200; columns++) {
      for (Look look : List.of(Samples.PLAIN, Samples.ASCII_INCH_POUND)) {
        assertFits(ChecklistView.lines(ITEMS, columns, look), columns, "again.", "AW-114,");
        assertFits(ResultView.lines(RESULT, PLACES, columns, look), columns, "4370 psi", "402");
        assertFits(Cautions.lines("ASTM C39", columns, look), columns, "platens", "engineer");
        assertFits(table().lines(columns, look), columns, "236.91 kN", "9.38 kN", "reading");
      }
    }
  }

  private static void assertFits(List<String> lines, int columns, String... words) {
    assertThat(lines)
        .allMatch(line -> TextWidth.columns(line) < columns || line.contains("records/2026-11/"));
    assertThat(String.join(" ", lines).replaceAll("\\s+", " ")).contains(words);
  }

  @Test
  void lines_itemPassed_remedyNotShown() {
    assertThat(String.join("\n", ChecklistView.lines(ITEMS, 80, Samples.PLAIN)))
        .doesNotContain("never shown");
    assertThat(ChecklistView.lines(List.of(), 80, Samples.PLAIN)).isEmpty();
  }

  @Test
  void lines_resultWithoutFigures_saysSo() {
    MethodResult none = new MethodResult(List.of(), List.of(), List.of(), List.of());
    assertThat(String.join("\n", ResultView.lines(none, List.of(), 80, Samples.PLAIN)))
        .contains("came to no figure");
  }

  @Test
  void lines_path_staysInOnePieceAtAnyWidth() {
    for (int columns = 20; columns <= 100; columns++) {
      assertThat(ResultView.lines(RESULT, PLACES, columns, Samples.PLAIN))
          .anyMatch(line -> line.endsWith("records/2026-11/20261125T071502Z_RA-07-2.raw.csv"));
    }
  }

  /** Two significant digits at most: JCGM 100:2008 7.2.6, from memory. */
  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "0.3, 0.30",
    "0.301, 0.31",
    "0.999, 1.0",
    "43.2, 44",
    "43.0, 43",
    "412, 420",
    "0.0125, 0.013",
    "9.96, 10",
    "0.00012345, 0.00013",
    "NaN, unknown"
  })
  void twoDigits_value_neverUnderstated(double value, String text) {
    assertThat(ResultView.twoDigits(value)).isEqualTo(text);
  }

  @Test
  void row_wrongNumberOfCells_isRefused() {
    TextTable table = TextTable.empty().words("a").numbers("b");
    assertThatThrownBy(() -> table.row("1"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("cells=1 columns=2");
    table.row("1", "2");
    assertThatThrownBy(() -> table.words("c")).isInstanceOf(IllegalStateException.class);
  }

  @Test
  void hanging_longStep_isBrokenUnderItsOwnBeginning() {
    assertThat(Paragraph.hanging("10.  one two three four five six seven", 30))
        .containsExactly("10.  one two three four five", "     six seven");
    assertThat(Paragraph.hanging("       P / A  =  1", 40)).containsExactly("       P / A  =  1");
    assertThat(Paragraph.hanging("", 40)).containsExactly("");
    assertThat(Paragraph.hanging("one two three four five six", 22))
        .containsExactly("one two three four", "five six");
  }
}
