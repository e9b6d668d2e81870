package io.github.platenwire.terminal;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.method.ChordPart;
import io.github.platenwire.method.ChordPart.Next;
import io.github.platenwire.method.LiveView;
import io.github.platenwire.method.LiveView.Phase;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ChordLayoutTest {
  private static final double AREA = Math.PI * 75 * 75;

  private static LiveFrame frame(Next next, Optional<Double> across) {
    ChordPart chord =
        new ChordPart(
            next == Next.FIRST_MARK ? 38e-6 : 312.4e-6,
            across,
            next == Next.DONE ? 4 : 2,
            3,
            next,
            50e-6,
            12 * AREA,
            24_980,
            next == Next.DONE ? 3 : 1);
    LiveView view =
        new LiveView(
            next == Next.DONE ? Phase.ENDED : Phase.LOADING,
            9_876,
            142_350_000,
            166_700,
            214_300,
            166_700 / AREA,
            214_300 / AREA,
            0.248,
            Samples.BAND,
            next == Next.SECOND_MARK,
            Optional.of(chord));
    return new LiveFrame(
        view, Optional.of(new LiveEvent(4, "mark first cycle=2 strain=50.0 unit=um/m")), 9_876, 0);
  }

  private static List<String> lines(LiveFrame frame, int columns, int lines, Look look) {
    TestFacts facts = new TestFacts("NA-28-4", "NA-T", "frame-modulus", "x.raw.csv");
    return LiveLayout.lines(frame, facts, new TerminalSize(columns, lines), look);
  }

  @Test
  void lines_chord_looksAsKept() throws IOException {
    LiveFrame between = frame(Next.SECOND_MARK, Optional.of(61.5e-6));
    Golden.compare("chord-80x24", lines(between, 80, 24, Samples.PLAIN));
    Golden.compare("chord-120x40", lines(between, 120, 40, Samples.PLAIN));
    Golden.compare(
        "chord-ascii-60x20",
        lines(frame(Next.FIRST_MARK, Optional.empty()), 60, 20, Samples.ASCII_INCH_POUND));
    Golden.compare(
        "chord-done-80x24", lines(frame(Next.DONE, Optional.empty()), 80, 24, Samples.PLAIN));
  }

  @Test
  void lines_anySize_fits() {
    for (int columns = 1; columns <= 200; columns += 3) {
      for (int rows = 1; rows <= 60; rows += 4) {
        List<String> lines =
            lines(frame(Next.UNLOAD, Optional.of(1e-5)), columns, rows, Samples.PLAIN);
        int room = Math.max(1, columns - 1);
        assertThat(lines.size()).isLessThanOrEqualTo(rows);
        assertThat(lines).allMatch(line -> TextWidth.columns(line) <= room);
      }
    }
  }

  @Test
  void line_chord_saysStrainCycleNextMarkAndModulus() {
    assertThat(PlainLines.line(frame(Next.SECOND_MARK, Optional.empty()), Samples.PLAIN))
        .contains(
            "strain   312.4 µm/m  cycle 2 of 3  next 212.06 kN (47672 lbf), 45.36 kN to go",
            "modulus 24980 MPa (3623043 psi)");
    assertThat(PlainLines.line(frame(Next.UNLOAD, Optional.empty()), Samples.PLAIN))
        .contains("next take the load off");
  }
}
