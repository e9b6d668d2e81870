package io.github.platenwire.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.emulate.BeamReadings;
import io.github.platenwire.emulate.BeamTruth;
import io.github.platenwire.emulate.DemoBeam;
import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.method.Methods;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.CloseReason;
import io.github.platenwire.record.DiskFolder;
import io.github.platenwire.record.RawFileWriter;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawHeader.KeptFile;
import io.github.platenwire.record.Samples;
import java.awt.image.BufferedImage;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XYSeries;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The poorly bonded beam of the demo: cracks at 9.2 kN, 0.33 mm at 3000 lbf. */
class CrackChartTest {
  private static final DemoBeam BEAM =
      DemoBeam.ALL.stream().filter(beam -> beam.name().equals("NA-CB-1")).findFirst().orElseThrow();

  private static final Specimen SPECIMEN =
      new Specimen(
          BEAM.name(),
          BEAM.series(),
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

  @TempDir Path folder;

  /** One frame of a channel. */
  @SuppressWarnings("ArrayRecordComponent") // handed over whole, never compared
  private record Sent(long micros, int channel, double value, byte[] frame) {}

  private static HeaderChannel channel(String name, boolean load) {
    HeaderChannel sample = Samples.header().channels().get(0);
    ChannelFacts facts =
        new ChannelFacts(
            name,
            load ? Quantity.FORCE : Quantity.LENGTH,
            load ? Unit.KILONEWTON : Unit.MILLIMETRE,
            -5,
            load ? 200 : 5,
            OptionalDouble.of(load ? 0.001 : 0.0001),
            4,
            OptionalDouble.empty(),
            OptionalDouble.of(0.5));
    return new HeaderChannel(
        facts, name, 0, sample.device(), 0, 1000, sample.calibration(), sample.correction());
  }

  private static RawHeader header() {
    RawHeader sample = Samples.header();
    String method = "split-beam";
    return new RawHeader(
        sample.test(),
        sample.start(),
        sample.originNanos(),
        sample.zone(),
        sample.program(),
        sample.lab(),
        sample.operator(),
        sample.overrideReason(),
        SPECIMEN,
        new KeptFile(method, Methods.shipped(method).orElseThrow().text()),
        sample.rig(),
        List.of(channel("load", true), channel("gauge-a", false), channel("gauge-b", false)),
        sample.checklist());
  }

  private LoadTrace trace() throws Exception {
    List<Sent> all = new ArrayList<>();
    List<BeamReadings> streams = BEAM.readings(3);
    for (int i = 0; i < streams.size(); i++) {
      BeamReadings stream = streams.get(i);
      while (stream.hasNext()) {
        BeamReadings.Reading reading = stream.next();
        String text = new String(stream.line(reading), StandardCharsets.US_ASCII).strip();
        double value = Double.parseDouble(text.substring(0, text.indexOf(' ')));
        byte[] frame = text.getBytes(StandardCharsets.US_ASCII);
        all.add(new Sent(reading.sentNanos() / 1000, i, value, frame));
      }
    }
    all.sort(Comparator.comparingLong(Sent::micros));
    Path file = folder.resolve("beam.raw.csv");
    try (RawFileWriter writer = RawFileWriter.create(new DiskFolder(), file, header())) {
      for (Sent each : all) {
        writer.reading(
            each.micros, each.channel, each.frame, 0, each.frame.length, each.value, Quality.OK);
      }
      writer.finish(CloseReason.RANGE, Instant.parse("2026-11-25T07:17:31Z"), 0);
    }
    return LoadTrace.read(file);
  }

  @Test
  void crack_splitBeam_isTheTruthRowByRow() throws Exception {
    CrackTrace crack = trace().crack().orElseThrow();
    BeamTruth truth = BEAM.truth();
    double[] seconds = crack.seconds();
    for (int i = 300; i < seconds.length; i += 97) {
      // half a second of averaging rounds the corners off
      assertThat(crack.millimetres()[i]).isCloseTo(truth.widthAt(seconds[i]), within(0.012));
      assertThat(crack.newtons()[i]).isCloseTo(truth.loadAt(seconds[i]), within(150.0));
    }
  }

  @Test
  void ofLoad_splitBeam_marksCracksThresholdsAndCyclesInBothSystems() throws Exception {
    LoadTrace trace = trace();
    Path svg = folder.resolve("load.svg");
    ChartWriter.write(CrackChart.ofLoad(trace, Theme.LIGHT), svg);
    assertThat(svg)
        .content(StandardCharsets.UTF_8)
        .containsPattern(">first crack, left its line: 9\\.[12]\\d kN \\(20\\d\\d lbf\\)<")
        .containsPattern(">first crack, small opening: 9\\.[34]\\d kN \\(21\\d\\d lbf\\)<")
        .containsPattern(">0\\.20 mm: 11\\.\\d\\d kN \\(25\\d\\d lbf\\)<")
        .containsPattern(">left by cycle 1: 0\\.0\\d\\d mm \\(0\\.00\\d\\d in\\)<")
        .contains(">Crack width, mm<", ">Crack width, in<");
    XYPlot plot = CrackChart.ofLoad(trace, Theme.LIGHT).getXYPlot();
    assertThat(labels(plot)).containsExactly("Load, kN", "Load, lbf");
  }

  @Test
  void ofTime_splitBeam_marksHoldsAndHasTheLoadBelow() throws Exception {
    LoadTrace trace = trace();
    Path svg = folder.resolve("time.svg");
    ChartWriter.write(CrackChart.ofTime(trace, Theme.DARK), svg);
    assertThat(svg)
        .content(StandardCharsets.UTF_8)
        .containsPattern(">hold 1: creep 0\\.0\\d\\d mm \\(0\\.000\\d in\\)<")
        .contains(">Time since the start of the record, s<");
    CombinedDomainXYPlot both =
        (CombinedDomainXYPlot) CrackChart.ofTime(trace, Theme.DARK).getXYPlot();
    assertThat(labels(both.getSubplots().get(0)))
        .containsExactly("Crack width, mm", "Crack width, in");
    assertThat(labels(both.getSubplots().get(1))).containsExactly("Load, kN", "Load, lbf");
  }

  private static List<String> labels(XYPlot plot) {
    return List.of(plot.getRangeAxis(0).getLabel(), plot.getRangeAxis(1).getLabel());
  }

  @Test
  void write_bothThemes_areOfTheSizePromised() throws Exception {
    LoadTrace trace = trace();
    for (Theme theme : List.of(Theme.LIGHT, Theme.DARK)) {
      Path png = folder.resolve(theme + ".png");
      ChartWriter.write(CrackChart.ofLoad(trace, theme), png);
      BufferedImage image = ImageIO.read(png.toFile());
      assertThat(image.getWidth()).isEqualTo(1280);
      assertThat(image.getHeight()).isEqualTo(720);
    }
  }

  @Test
  void ofLoad_noCrackFollowed_isRefused() throws Exception {
    Path file = folder.resolve("b.raw.csv");
    try (RawFileWriter writer = RawFileWriter.create(new DiskFolder(), file, header())) {
      writer.finish(CloseReason.INTERRUPTED, Instant.parse("2026-11-25T07:17:31Z"), 0);
    }
    LoadTrace empty = LoadTrace.read(file);
    assertThatThrownBy(() -> CrackChart.ofLoad(empty, Theme.LIGHT))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("followed no crack");
  }

  @Test
  void path_manyPoints_keepsTheEndsAndAtMostOnePointAPiece() {
    int n = 10_000;
    double[] along = new double[n];
    double[] x = new double[n];
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      along[i] = i;
      x[i] = i < n / 2 ? i : n - i;
      y[i] = i;
    }
    XYSeries series = Decimation.path("way", along, x, y, 100);
    assertThat(series.getItemCount()).isBetween(99, 102);
    assertThat(series.getY(series.getItemCount() - 1).doubleValue()).isEqualTo(n - 1.0);
    assertThat(Arrays.stream(series.toArray()[0]).max().orElseThrow()).isGreaterThan(4_900);
  }
}
