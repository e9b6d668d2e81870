package io.github.platenwire.terminal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.method.LiveView.Phase;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LiveFacesTest {
  private static final long MILLISECOND = 1_000_000;

  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
  private final TerminalOut out = new TerminalOut(bytes, StandardCharsets.UTF_8);
  private long nanos = Long.MAX_VALUE - 50 * MILLISECOND; // the clock overflows during the test
  private TerminalSize size = TerminalSize.USUAL;
  private int sizeAsked;

  private LiveScreen screen() {
    return new LiveScreen(
        out,
        () -> {
          sizeAsked++;
          return size;
        },
        () -> nanos,
        Samples.PLAIN,
        Samples.FACTS);
  }

  private String taken() {
    String text = bytes.toString(StandardCharsets.UTF_8);
    bytes.reset();
    return text;
  }

  /** What a terminal that follows the control sequences would show. */
  private static List<String> shownBy(String written) {
    List<String> rows = new ArrayList<>();
    for (String part : written.split("\u001b\\[(?=[0-9]+;1H)", -1)) {
      int home = part.indexOf(";1H");
      if (home > 0 && part.substring(0, home).matches("[0-9]+")) {
        int row = Integer.parseInt(part.substring(0, home));
        while (rows.size() < row) {
          rows.add("");
        }
        rows.set(row - 1, part.substring(home + 3).replaceAll("\u001b\\[.*", ""));
      }
    }
    return rows;
  }

  @Test
  void show_first_hidesCursorAndDrawsWholeView() {
    screen().show(Samples.at(Phase.LOADING));
    String text = taken();
    assertThat(text).startsWith("\u001b[?25l\u001b[?7l").doesNotContain("\u001b[?1049");
    assertThat(shownBy(text))
        .isEqualTo(
            LiveLayout.lines(
                Samples.at(Phase.LOADING), Samples.FACTS, TerminalSize.USUAL, Samples.PLAIN));
  }

  @Test
  void show_nothingChanged_writesNothing() {
    LiveScreen screen = screen();
    screen.show(Samples.at(Phase.LOADING));
    taken();
    nanos += 200 * MILLISECOND;
    screen.show(Samples.at(Phase.LOADING));
    assertThat(taken()).isEmpty();
  }

  @Test
  void show_oftenerThanTenTimesASecond_isHeldBackUntilDueOrClosed() {
    LiveScreen screen = screen();
    screen.show(Samples.at(Phase.READY));
    taken();
    int writes = 0;
    for (int i = 1; i <= 1000; i++) {
      nanos += MILLISECOND;
      screen.show(i % 2 == 0 ? Samples.at(Phase.READY) : Samples.at(Phase.LOADING));
      writes += taken().isEmpty() ? 0 : 1;
    }
    assertThat(writes).isLessThanOrEqualTo(10);
    nanos += MILLISECOND;
    screen.show(Samples.at(Phase.ENDED));
    assertThat(taken()).isEmpty();
    screen.close();
    assertThat(taken()).contains("ended");
  }

  @Test
  void close_afterDrawing_restoresTerminalBelowTheViewOnce() {
    LiveScreen screen = screen();
    screen.show(Samples.at(Phase.ENDED));
    int rows = shownBy(taken()).size();
    screen.close();
    assertThat(taken()).isEqualTo("\u001b[" + rows + ";1H\r\n\u001b[0m\u001b[?7h\u001b[?25h");
    screen.close();
    screen.show(Samples.at(Phase.LOADING));
    assertThat(taken()).isEmpty();
  }

  @Test
  void close_nothingDrawn_writesNothing() {
    screen().close();
    assertThat(taken()).isEmpty();
  }

  @Test
  void show_terminalResized_redrawsWholeAndAsksRarely() {
    LiveScreen screen = screen();
    screen.show(Samples.at(Phase.LOADING));
    taken();
    size = new TerminalSize(40, 10);
    for (int i = 0; i < 20; i++) {
      nanos += 100 * MILLISECOND;
      screen.show(Samples.at(Phase.LOADING));
    }
    String text = taken();
    assertThat(sizeAsked).isEqualTo(2);
    assertThat(text).startsWith("\u001b[H\u001b[J");
    assertThat(shownBy(text))
        .isEqualTo(LiveLayout.lines(Samples.at(Phase.LOADING), Samples.FACTS, size, Samples.PLAIN));
  }

  @Test
  void show_terminalGone_neverThrows() {
    OutputStream gone =
        new OutputStream() {
          @Override
          public void write(int b) throws IOException {
            throw new IOException("gone");
          }
        };
    TerminalOut broken = new TerminalOut(gone, StandardCharsets.UTF_8);
    LiveScreen screen =
        new LiveScreen(broken, () -> size, () -> nanos, Samples.PLAIN, Samples.FACTS);
    screen.show(Samples.at(Phase.LOADING));
    screen.close();
    assertThat(broken.broken()).isTrue();
  }

  @Test
  void line_loading_hasEveryFigureTwiceAndTheSeq() {
    assertThat(PlainLines.line(Samples.loadingAt(0.25, true), Samples.PLAIN))
        .isEqualTo(
            "    62.4 s  seq 1240     load    54.91 kN (12344 lbf)     peak    54.91 kN (12344 lbf)"
                + "     rate  0.250 MPa/s (36.3 psi/s)   within      stress   6.99 MPa (1014 psi)"
                + "    loading");
  }

  @Test
  void line_whileFiguresGrow_columnsStayInPlace() {
    for (Look look : List.of(Samples.PLAIN, Samples.ASCII_INCH_POUND)) {
      String loading = PlainLines.line(Samples.at(Phase.LOADING), look);
      String zeroing = PlainLines.line(Samples.at(Phase.ZEROING), look);
      for (String label : List.of(" seq ", " load ", " peak ", " rate ", " stress ")) {
        assertThat(loading.indexOf(label)).as(label).isEqualTo(zeroing.indexOf(label));
      }
    }
  }

  @Test
  void show_plain_lineEachIntervalAndAtEachNews() {
    PlainLines lines = new PlainLines(out, () -> nanos, Samples.PLAIN, PlainLines.USUAL);
    lines.show(Samples.at(Phase.READY));
    assertThat(taken()).contains("ready to load").endsWith("   event zero load=12.4\n");
    nanos += 999 * MILLISECOND;
    lines.show(Samples.at(Phase.READY));
    assertThat(taken()).isEmpty();
    nanos += MILLISECOND;
    lines.show(Samples.at(Phase.READY));
    assertThat(taken()).contains("ready to load").doesNotContain("event").hasLineCount(1);
    lines.show(Samples.at(Phase.LOADING));
    assertThat(taken()).contains("loading").doesNotContain("event");
    LiveFrame same = Samples.at(Phase.LOADING);
    LiveFrame marked =
        new LiveFrame(same.view(), Optional.of(new LiveEvent(77, "zero load=12.4")), 1240, 1);
    lines.show(marked);
    assertThat(taken()).contains("event zero load=12.4");
    nanos += MILLISECOND;
    lines.show(new LiveFrame(same.view(), marked.lastEvent(), 1241, 1));
    assertThat(taken()).isEmpty();
    lines.close();
    assertThat(taken()).hasLineCount(1);
    lines.close();
    lines.show(Samples.at(Phase.ENDED));
    assertThat(taken()).isEmpty();
  }

  @Test
  void new_intervalTooShort_saysWhatIsPossible() {
    assertThatThrownBy(() -> new PlainLines(out, () -> nanos, Samples.PLAIN, Duration.ofMillis(9)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("0.01 s");
  }
}
