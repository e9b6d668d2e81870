package io.github.platenwire.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.method.Methods;
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
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A cylinder of 100 mm loaded at 2 kN/s (0.255 MPa/s) up to 200 kN, where it breaks. */
class LoadChartTest {
  private static final int PEAK = 1100;

  @TempDir Path folder;

  private static RawHeader header(List<HeaderChannel> channels) {
    RawHeader sample = Samples.header();
    String method = "compression-cylinder-c39";
    return new RawHeader(
        sample.test(),
        sample.start(),
        sample.originNanos(),
        sample.zone(),
        sample.program(),
        sample.lab(),
        sample.operator(),
        sample.overrideReason(),
        sample.specimen(),
        new KeptFile(method, Methods.shipped(method).orElseThrow().text()),
        sample.rig(),
        channels,
        sample.checklist());
  }

  private Path record() throws Exception {
    HeaderChannel load = Samples.header().channels().get(0);
    ChannelFacts kilonewtons =
        new ChannelFacts(
            "load",
            Quantity.FORCE,
            Unit.KILONEWTON,
            -10,
            1000,
            OptionalDouble.of(0.01),
            2,
            OptionalDouble.empty(),
            OptionalDouble.empty());
    RawHeader header =
        header(
            List.of(
                new HeaderChannel(
                    kilonewtons,
                    load.port(),
                    0,
                    load.device(),
                    0,
                    1000,
                    load.calibration(),
                    load.correction())));
    Path file = folder.resolve("a.raw.csv");
    try (RawFileWriter writer = RawFileWriter.create(new DiskFolder(), file, header)) {
      for (int i = 0; i <= PEAK + 50; i++) {
        byte[] frame = Integer.toString(i).getBytes(StandardCharsets.US_ASCII);
        double value = i <= 100 ? 0.5 : i <= PEAK ? 0.5 + (i - 100) * 0.2 : 20;
        writer.reading(i * 100_000L, 0, frame, 0, frame.length, value, Quality.OK);
        if (i == 60) {
          writer.event(i * 100_000L, "zero load=0.5 unit=kN");
        }
        if (i == PEAK + 5) {
          writer.event(i * 100_000L, "break peak=200.5 seq=1102");
        }
      }
      writer.finish(CloseReason.BREAK, Instant.parse("2026-11-25T07:17:31Z"), 0);
    }
    return file;
  }

  @Test
  void read_compressionTest_findsZeroPeakAndBreak() throws Exception {
    LoadTrace trace = LoadTrace.read(record());
    assertThat(trace.zeroSeconds()).hasValue(6.0);
    assertThat(trace.breakSeconds()).hasValue(110.5);
    int peak = trace.peakIndex().orElseThrow();
    assertThat(peak).isEqualTo(PEAK);
    assertThat(trace.seconds()[peak]).isEqualTo(110.0);
    assertThat(trace.newtons()[peak]).isCloseTo(200_000, within(1.0));
    assertThat(trace.band()).isPresent();
    // 2 kN/s on a cylinder of 100.0 mm: 2000 / 7854 MPa/s
    assertThat(trace.rates()[800]).isCloseTo(0.2546, within(0.001));
  }

  @Test
  void chart_compressionTest_namesItsMarksInBothSystems() throws Exception {
    Path svg = folder.resolve("a.svg");
    ChartWriter.write(LoadChart.of(LoadTrace.read(record()), Theme.DARK), svg);
    assertThat(svg)
        .content(StandardCharsets.UTF_8)
        .contains("greatest load 200.0 kN (44960 lbf)")
        .contains(">zero taken<", ">break<", ">band of the method<")
        .contains(">Time since the start of the record, s<");
    assertThat(svg).content(StandardCharsets.UTF_8).doesNotContain("DOCTYPE");
  }

  @Test
  void chart_recordWithoutAReading_isStillDrawn() throws Exception {
    Path file = folder.resolve("b.raw.csv");
    RawHeader header = header(Samples.header().channels());
    try (RawFileWriter writer = RawFileWriter.create(new DiskFolder(), file, header)) {
      writer.finish(CloseReason.INTERRUPTED, Instant.parse("2026-11-25T07:17:31Z"), 0);
    }
    Path png = folder.resolve("b.png");
    ChartWriter.write(LoadChart.of(LoadTrace.read(file), Theme.LIGHT), png);
    assertThat(png).exists();
  }
}
