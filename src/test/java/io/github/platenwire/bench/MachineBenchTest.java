package io.github.platenwire.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.record.RawFileReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** That each part measures what it says and leaves nothing behind; no figure is judged here. */
@Timeout(60)
@DisabledOnOs(OS.WINDOWS)
class MachineBenchTest {
  private static final BenchSize TINY = new BenchSize(3000, 1, 1, 0.01, 1);

  @TempDir Path folder;

  private MachineBench bench() throws Exception {
    return MachineBench.in(folder, "test", Nothing.class.getName(), TINY);
  }

  @ParameterizedTest
  @EnumSource(BenchPart.class)
  void run_anyPart_givesFiguresAndTakesItsFolderAway(BenchPart part) throws Exception {
    List<BenchFigure> figures;
    try (MachineBench bench = bench()) {
      figures = bench.run(part);
      assertThat(folder).isNotEmptyDirectory();
    }
    assertThat(figures).isNotEmpty();
    for (BenchFigure figure : figures) {
      assertThat(figure.value()).as(figure.key()).isFinite().isPositive();
      figure
          .ratio()
          .ifPresent(ratio -> assertThat(ratio.times()).as(figure.key()).isFinite().isPositive());
    }
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void flatOut_everyReading_isInTheRecordAndEveryReaderTookTheSame() throws Exception {
    try (ScratchLab lab = ScratchLab.make(folder, "test")) {
      new FlatOut(lab, 3000, 1).run();
      assertThat(lab.lab().records()).hasSize(1);
      try (RawFileReader reader = RawFileReader.open(lab.lab().records().get(0))) {
        long[] readings = {0};
        reader.readRows(row -> readings[0] += row.isEvent() ? 0 : 1);
        assertThat(readings[0]).isGreaterThanOrEqualTo(3000);
      }
      try (Stream<String> bare = Files.lines(lab.file("bare-0"));
          Stream<String> simple = Files.lines(lab.file("simple-0"))) {
        assertThat(bare)
            .hasSize(3000)
            .allMatch(line -> line.matches("\\d+,\\d+,\\+\\d{4}\\.\\d\\d kN"));
        assertThat(simple).hasSize(3000);
      }
    }
  }

  @Test
  void loadLines_anySeed_areAllOfOneFormAndRise() {
    String[] lines =
        new String(LoadLines.of(2000, 5), java.nio.charset.StandardCharsets.US_ASCII).split("\r\n");
    assertThat(lines).hasSize(2000).allMatch(line -> line.matches("\\+\\d{4}\\.\\d\\d kN"));
    assertThat(lines[0]).startsWith("+0000.0");
    assertThat(lines[1999]).matches("\\+000(7\\.99|8\\.0\\d) kN");
  }

  @Test
  void ratio_targetOnEitherSide_isReachedOrNot() {
    BenchFigure figure = BenchFigure.of("k", "w", 3, "s");
    assertThat(figure.atLeast(1.5, 2, "x").ratio().orElseThrow().isReached()).isTrue();
    assertThat(figure.atLeast(1.6, 2, "x").ratio().orElseThrow().isReached()).isFalse();
    assertThat(figure.atMost(1.5, 2, "x").ratio().orElseThrow().isReached()).isTrue();
    assertThat(figure.atMost(1.4, 2, "x").ratio().orElseThrow().isReached()).isFalse();
  }

  @Test
  void median_oddAndEven_isTheMiddle() {
    assertThat(Medians.of(List.of(9.0, 1.0, 4.0))).isEqualTo(4);
    assertThat(Medians.of(List.of(9.0, 1.0, 4.0, 5.0))).isEqualTo(4.5);
  }

  @Test
  void size_nothingToMeasure_isRefused() {
    assertThatThrownBy(() -> new BenchSize(0, 1, 1, 1, 1))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
