package io.github.platenwire.terminal;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.method.LiveView;
import io.github.platenwire.method.LiveView.Phase;
import io.github.platenwire.quantity.UnitSystem;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class LiveLayoutTest {
  private static List<String> lines(LiveFrame frame, int columns, int lines, Look look) {
    return LiveLayout.lines(frame, Samples.FACTS, new TerminalSize(columns, lines), look);
  }

  @ParameterizedTest
  @EnumSource(Phase.class)
  void lines_eachPhaseAndUsualSize_looksAsKept(Phase phase) throws IOException {
    String name = "live-" + phase.name().toLowerCase(Locale.ROOT);
    Golden.compare(name + "-80x24", lines(Samples.at(phase), 80, 24, Samples.PLAIN));
    Golden.compare(name + "-120x40", lines(Samples.at(phase), 120, 40, Samples.PLAIN));
    Golden.compare(name + "-50x15", lines(Samples.at(phase), 50, 15, Samples.PLAIN));
  }

  @Test
  void lines_poundsFirstInAscii_looksAsKept() throws IOException {
    LiveFrame frame = Samples.at(Phase.LOADING);
    Golden.compare("live-ascii-80x24", lines(frame, 80, 24, Samples.ASCII_INCH_POUND));
    Golden.compare("live-ascii-40x10", lines(frame, 40, 10, Samples.ASCII_INCH_POUND));
    Golden.compare("live-40x24", lines(frame, 40, 24, Samples.PLAIN));
    Golden.compare("live-200x60", lines(frame, 200, 60, Samples.PLAIN));
  }

  @Test
  void lines_anySize_fitsAndStaysPrintable() {
    for (Phase phase : Phase.values()) {
      for (int columns = 1; columns <= 200; columns += 3) {
        for (int rows = 1; rows <= 60; rows += 4) {
          List<String> lines = lines(Samples.at(phase), columns, rows, Samples.PLAIN);
          int room = Math.max(1, columns - 1);
          boolean fits =
              lines.size() <= rows
                  && lines.stream().allMatch(line -> TextWidth.columns(line) <= room);
          assertThat(fits).as("%s at %dx%d", phase, columns, rows).isTrue();
        }
      }
    }
  }

  @Test
  void lines_smallestPromisedSize_keepsEveryFigureWhole() {
    for (UnitSystem first : UnitSystem.values()) {
      Look look = new Look(Palette.PLAIN, Glyphs.UNICODE, first);
      List<String> lines = lines(Samples.at(Phase.LOADING), 40, 10, look);
      assertThat(lines).hasSize(10);
      assertThat(String.join("\n", lines))
          .contains("123.45 kN", "27753 lbf", "15.72 MPa", "2280 psi", "0.262 MPa/s", "38.0 psi/s")
          .contains("within", "loading", "1:02.3", "RA-07-2");
    }
  }

  @Test
  void lines_noBand_showsNoBarAndNoWord() {
    LiveView with = Samples.at(Phase.LOADING).view();
    LiveView without =
        new LiveView(
            with.phase(),
            with.seq(),
            with.elapsedMicros(),
            with.loadNewtons(),
            with.peakNewtons(),
            with.stressMegapascals(),
            with.peakStressMegapascals(),
            with.rateMegapascalsPerSecond(),
            Optional.empty(),
            false);
    LiveFrame frame = new LiveFrame(without, Optional.empty(), 5, 0);
    assertThat(String.join("\n", lines(frame, 80, 24, Samples.PLAIN)))
        .contains("0.262 MPa/s")
        .contains("none yet")
        .doesNotContain("slow", "band", "judged", "within");
  }

  @Test
  void lines_hostileNames_cannotTakeHoldOfTheTerminal() {
    TestFacts facts = new TestFacts("a\u001b[2Jb", "c\u009bd", "e\u202ef", "g\r\nh");
    List<String> lines =
        LiveLayout.lines(Samples.at(Phase.READY), facts, new TerminalSize(80, 24), Samples.PLAIN);
    assertThat(String.join("", lines))
        .contains("a?[2Jb", "c?d", "e?f", "g??h")
        .doesNotContain("\u001b", "\u009b", "\u202e", "\r", "\n");
  }

  @Test
  void lines_colours_sameWordsAndNoBackground() {
    Look colours = new Look(Palette.COLOURS, Glyphs.UNICODE, UnitSystem.SI);
    for (Phase phase : Phase.values()) {
      String painted = String.join("\n", lines(Samples.at(phase), 80, 24, colours));
      String bare = String.join("\n", lines(Samples.at(phase), 80, 24, Samples.PLAIN));
      assertThat(painted).contains("\u001b[").doesNotContainPattern("\u001b\\[[0-9;]*4[0-9]m");
      assertThat(painted.replaceAll("\u001b\\[[0-9;]*m", "").replaceAll(" +\n", "\n"))
          .isEqualTo(bare);
    }
  }

  /** 0.25 ± 0.05 MPa/s: ASTM C39, from memory. */
  @ParameterizedTest
  @CsvSource({
    "0.25, true, within",
    "0.20, true, within",
    "0.30, true, within",
    "0.1999, true, slow",
    "0.3001, true, fast",
    "-4, true, slow",
    "NaN, true, not judged",
    "0.25, false, not judged",
    "0.90, false, not judged"
  })
  void lines_rate_wordSaysWhereItIs(double rate, boolean applies, String word) {
    String rateLine =
        lines(Samples.loadingAt(rate, applies), 80, 24, Samples.PLAIN).stream()
            .filter(line -> line.startsWith(" rate"))
            .findFirst()
            .orElseThrow();
    assertThat(rateLine).endsWith(word);
  }

  @Test
  void draw_rateSweep_markAgreesWithTheWord() {
    LiveView.RateBand band = Samples.BAND.orElseThrow();
    for (int columns = 9; columns <= 60; columns++) {
      int before = -1;
      for (int step = -100; step <= 700; step++) {
        double rate = step / 1000.0;
        String bar = RateBar.draw(rate, band, columns, Glyphs.ASCII);
        assertThat(bar).hasSize(columns).contains("]", "[");
        int mark = bar.indexOf('O');
        assertThat(mark).isGreaterThanOrEqualTo(before);
        assertThat(mark > bar.indexOf('[') && mark < bar.indexOf(']'))
            .isEqualTo(rate >= 0.20 && rate <= 0.30);
        before = mark;
      }
    }
    assertThat(RateBar.draw(Double.NaN, band, 30, Glyphs.ASCII)).doesNotContain("O");
    assertThat(RateBar.draw(Double.POSITIVE_INFINITY, band, 30, Glyphs.ASCII)).doesNotContain("O");
    assertThat(RateBar.draw(1e300, band, 30, Glyphs.ASCII)).endsWith("O");
    assertThat(RateBar.draw(-1e300, band, 30, Glyphs.ASCII)).startsWith("O");
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0:00.0",
    "99999, 0:00.0",
    "59999999, 0:59.9",
    "60000000, 1:00.0",
    "3599900000, 59:59.9",
    "3662300000, 1:01:02.3"
  })
  void clock_micros_minutesAndTenths(long micros, String text) {
    assertThat(LiveLayout.clock(micros)).isEqualTo(text);
  }
}
