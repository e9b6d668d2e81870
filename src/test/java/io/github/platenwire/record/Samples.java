package io.github.platenwire.record;

import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.Dimensions;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawHeader.HeaderCheck;
import io.github.platenwire.record.RawHeader.KeptFile;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Heads of raw files for tests. */
public final class Samples {
  private Samples() {}

  /** A head with two channels and everything filled in, awkward characters included. */
  public static RawHeader header() {
    KeptFile device =
        new KeptFile(
            "signed-line-lbf",
            "name = \"signed-line-lbf\" # says \"lbf\"\nlayout = '{load}'\n\ttab \\ end\n");
    KeptFile calibration = new KeptFile("frame-1-2026", "certificate = \"C-17\"\n");
    return new RawHeader(
        "20261125T071502Z_RA-07-2",
        Instant.parse("2026-11-25T07:15:02.123456Z"),
        123_456_789L,
        ZoneId.of("Europe/Vienna"),
        "platenwire 0.1.0 (abc1234)",
        "Lab of the weir \"Alder\"",
        Optional.of("op é"),
        Optional.empty(),
        specimen(),
        new KeptFile(
            "compression-cylinder-c39", "format = \"platenwire-method 1\"\n# a \"\"\" b\n"),
        new KeptFile("frame-1", "name = \"frame-1\"\r\n"),
        List.of(
            new HeaderChannel(
                new ChannelFacts(
                    "load",
                    Quantity.FORCE,
                    Unit.POUND_FORCE,
                    -1000,
                    60000,
                    OptionalDouble.of(1),
                    50,
                    OptionalDouble.empty(),
                    OptionalDouble.of(0.6)),
                "/dev/ttyUSB0",
                0,
                device,
                0,
                1000,
                Optional.of(calibration),
                1.0025),
            new HeaderChannel(
                new ChannelFacts(
                        "gauge-a",
                        Quantity.LENGTH,
                        Unit.MILLIMETRE,
                        -5,
                        5,
                        OptionalDouble.empty(),
                        0.1,
                        OptionalDouble.empty(),
                        OptionalDouble.empty())
                    .timed(12_500, 86.5),
                "tcp://192.0.2.7:4001",
                0,
                device,
                12.5,
                500,
                Optional.empty(),
                1)),
        List.of(new HeaderCheck("disk", "passed", "53.1 GB free")));
  }

  /** A cylinder with everything measured. */
  public static Specimen specimen() {
    return new Specimen(
        "RA-07-2",
        "RA-S",
        "cylinder",
        List.of(100.1, 99.9),
        OptionalDouble.of(200.5),
        Dimensions.of(
            Map.of(
                Dimension.WIDTH, 150.2,
                Dimension.DEPTH, 149.9,
                Dimension.SPAN, 457.2,
                Dimension.GAUGE_LENGTH, 152.4,
                Dimension.NOTCH_DEPTH, 25.1,
                Dimension.BAR_DIAMETER, 15.9,
                Dimension.COVER, 40.0,
                Dimension.WEDGE_ANGLE, 20.5)),
        OptionalDouble.of(3.71),
        Optional.of(LocalDateTime.of(2026, 11, 18, 8, 0)),
        OptionalDouble.of(7),
        Optional.of("ground"),
        Optional.of("wet sacking"),
        Optional.empty(),
        Map.of("specimen", "RA-07-2", "notes", "a, \"b\" #c"));
  }
}
