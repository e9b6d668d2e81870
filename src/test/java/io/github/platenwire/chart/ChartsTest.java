package io.github.platenwire.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.calibration.CalibrationCheck;
import io.github.platenwire.calibration.CalibrationPoint;
import io.github.platenwire.calibration.CalibrationRun;
import io.github.platenwire.calibration.CalibrationRuns;
import io.github.platenwire.calibration.Correction;
import io.github.platenwire.calibration.LimitTable;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.jfree.chart.JFreeChart;
import org.jfree.data.xy.XYSeries;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;

class ChartsTest {
  private static List<Theme> themes() {
    return List.of(Theme.LIGHT, Theme.DARK, Theme.LIGHT.withFirst(UnitSystem.INCH_POUND));
  }

  @TempDir Path folder;

  private static JFreeChart calibration(Theme theme) {
    CalibrationRuns runs =
        new CalibrationRuns(
            Unit.KILONEWTON,
            OptionalDouble.of(0.1),
            List.of(
                new CalibrationRun(
                    true,
                    List.of(new CalibrationPoint(100, 100.3), new CalibrationPoint(200, 200.5)),
                    OptionalDouble.of(0))));
    LimitTable limits = LimitTable.shipped("iso-7500-1");
    return CalibrationChart.of(
        CalibrationCheck.of(runs, Correction.NONE, limits),
        "cell-1",
        "certificate C-0001",
        limits.ofClass("1"),
        theme);
  }

  @ParameterizedTest
  @MethodSource("themes")
  void write_png_isAPictureOfTheHousesSizeOnItsGround(Theme theme) throws Exception {
    Path file = folder.resolve("a.png");
    ChartWriter.write(calibration(theme), file);
    BufferedImage image = ImageIO.read(file.toFile());
    assertThat(image.getWidth()).isEqualTo(1280);
    assertThat(image.getHeight()).isEqualTo(720);
    assertThat(image.getRGB(2, 2)).isEqualTo(theme.background().getRGB());
    assertThat(shareOf(image, theme.background().getRGB())).isBetween(0.5, 0.99);
  }

  private static double shareOf(BufferedImage image, int rgb) {
    int same = 0;
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        same += image.getRGB(x, y) == rgb ? 1 : 0;
      }
    }
    return (double) same / image.getWidth() / image.getHeight();
  }

  @Test
  void write_svg_isWellFormedWithItsWords() throws Exception {
    Path file = folder.resolve("a.svg");
    ChartWriter.write(calibration(Theme.LIGHT), file);
    Element root =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(Files.newInputStream(file))
            .getDocumentElement();
    assertThat(root.getTagName()).isEqualTo("svg");
    assertThat(root.getAttribute("width")).isEqualTo("1280");
    assertThat(root.getTextContent())
        .contains("Applied, kN", "Applied, lbf", "class 1, stated", "certificate C-0001")
        // no comma as decimal mark although the tests run with a German locale
        .doesNotContain("0,5");
  }

  @Test
  void write_olderChart_isReplacedAndNothingElseLeft() throws Exception {
    Path file = folder.resolve("a.png");
    Files.writeString(file, "old");
    ChartWriter.write(calibration(Theme.LIGHT), file);
    assertThat(Files.size(file)).isGreaterThan(1000);
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files).containsExactly(file);
    }
  }

  @Test
  void write_otherEnding_isRefused() {
    assertThat(ChartWriter.canWrite(Path.of("a.PNG"))).isTrue();
    assertThat(ChartWriter.canWrite(Path.of("a.jpg"))).isFalse();
    assertThatThrownBy(() -> ChartWriter.write(calibration(Theme.LIGHT), folder.resolve("a.jpg")))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Property(tries = 200)
  void decimation_anyTrace_keepsEndsAndExtremesInFewPoints(
      @ForAll double[] y, @ForAll @IntRange(min = 1, max = 50) int columns) {
    double[] x = new double[y.length];
    double least = Double.POSITIVE_INFINITY;
    double greatest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < y.length; i++) {
      x[i] = i;
      least = Double.isNaN(y[i]) ? least : Math.min(least, y[i]);
      greatest = Double.isNaN(y[i]) ? greatest : Math.max(greatest, y[i]);
    }
    XYSeries series = Decimation.series("a", x, y, columns);
    assertThat(series.getItemCount()).isLessThanOrEqualTo(Math.min(y.length, 4 * columns));
    if (least <= greatest) {
      double[] shown = series.toArray()[1];
      assertThat(shown).contains(least, greatest);
    }
  }

  @Test
  void decimation_millionPoints_keepsTheLonePeak() {
    int count = 1_000_000;
    double[] x = new double[count];
    double[] y = new double[count];
    for (int i = 0; i < count; i++) {
      x[i] = i * 1e-3;
    }
    y[777_777] = 42;
    XYSeries series = Decimation.series("a", x, y, 1280);
    assertThat(series.getItemCount()).isLessThan(4 * 1280);
    assertThat(series.getMaxY()).isEqualTo(42);
  }
}
