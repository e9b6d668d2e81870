package io.github.platenwire.terminal;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.method.CrackPart;
import io.github.platenwire.method.LiveView;
import io.github.platenwire.method.LiveView.Phase;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CrackLayoutTest {
  private static LiveFrame frame(int gauges, boolean lost) {
    List<CrackPart.Gauge> all = new ArrayList<>();
    for (int i = 0; i < gauges; i++) {
      Optional<String> fault = i == 0 && lost ? Optional.of("stuck") : Optional.empty();
      all.add(new CrackPart.Gauge("gauge-" + (char) ('a' + i), 0.14 - 0.03 * i, fault));
    }
    CrackPart crack =
        new CrackPart(
            62_100_000,
            all,
            0.1290,
            0.1234,
            0.03,
            Optional.of(9_204.0),
            Optional.of(10_950.0),
            Optional.of(new CrackPart.Next(0.15, "seawater, spray", 0.0266)),
            true,
            "",
            Optional.of(new CrackPart.Beside("NA-PB-1", 0.08)));
    LiveView view =
        new LiveView(
            Phase.LOADING,
            9_876,
            62_350_000,
            13_344,
            13_350,
            Double.NaN,
            Double.NaN,
            Double.NaN,
            Optional.empty(),
            false,
            Optional.of(crack));
    return new LiveFrame(
        view, Optional.of(new LiveEvent(4, "threshold 0.10 mm load=12.1")), 9_876, 0);
  }

  private static List<String> lines(LiveFrame frame, int columns, int lines, Look look) {
    TestFacts facts = new TestFacts("NA-CB-1", "NA-CB", "beam-frame", "x.raw.csv");
    return LiveLayout.lines(frame, facts, new TerminalSize(columns, lines), look);
  }

  @Test
  void lines_crack_looksAsKept() throws IOException {
    Golden.compare("crack-80x24", lines(frame(2, false), 80, 24, Samples.PLAIN));
    Golden.compare("crack-120x40", lines(frame(2, true), 120, 40, Samples.PLAIN));
    Golden.compare("crack-ascii-80x24", lines(frame(2, true), 80, 24, Samples.ASCII_INCH_POUND));
    Golden.compare("crack-eight-80x24", lines(frame(8, false), 80, 24, Samples.PLAIN));
  }

  @Test
  void lines_anySize_fits() {
    for (int columns = 1; columns <= 200; columns += 3) {
      for (int rows = 1; rows <= 60; rows += 4) {
        List<String> lines = lines(frame(8, true), columns, rows, Samples.PLAIN);
        int room = Math.max(1, columns - 1);
        assertThat(lines.size()).isLessThanOrEqualTo(rows);
        assertThat(lines).allMatch(line -> TextWidth.columns(line) <= room);
      }
    }
  }

  @Test
  void lines_besideEarlierBeam_saysHowMuchWiderInBothUnits() {
    assertThat(String.join("\n", lines(frame(2, true), 80, 24, Samples.PLAIN)))
        .contains("0.080 mm (0.0031 in) wider than NA-PB-1 at this load")
        .contains("mean of gauge-b", "left out", "0.027 mm to go");
    assertThat(PlainLines.line(frame(2, true), Samples.PLAIN))
        .contains("width", "0.123 mm", "of gauge-b", "0.080 mm wider than NA-PB-1");
  }
}
