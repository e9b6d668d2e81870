package io.github.platenwire.recorder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.emulate.BeamDevice;
import io.github.platenwire.emulate.BeamProgram;
import io.github.platenwire.emulate.BeamReadings;
import io.github.platenwire.emulate.BeamTruth;
import io.github.platenwire.emulate.ClockedPorts;
import io.github.platenwire.emulate.EmulatedBeam;
import io.github.platenwire.emulate.EmulatedClock;
import io.github.platenwire.emulate.TimedBytes;
import io.github.platenwire.port.Port;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.RawRow;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A gauge that goes wrong in mid-test, as the bytes that it sends: seen within a second, said,
 * recorded, and left out of the mean from then on. Three ports in memory, one emulated clock.
 */
@Timeout(60)
class GaugeFaultsTest {
  private static final double FAULT_SECONDS = 12.5;
  private static final List<String> PORTS = List.of("memory:load", "memory:a", "memory:b");

  @TempDir Path folder;

  private final BeamTruth truth =
      new BeamTruth(
          EmulatedBeam.withWidth(9_000, 13_000, 0.2),
          new BeamProgram(3).to(16_500, 1_000).hold(0.8));

  @ParameterizedTest
  @CsvSource({
    "STICKS,      stuck,     stuck",
    "SATURATES,   saturated, at the end of its range",
    "JUMPS,       jumped,    jumped",
    "FALLS_OFF,   fell-off,  fell off",
    "FALLS_SILENT,silent,    silent"
  })
  void record_gaugeGoesWrong_isSeenWithinASecondSaidAndLeftOut(
      BeamDevice.Kind kind, String reason, String words) throws Exception {
    RecordedTest recorded =
        record(BeamDevice.gauge(0, 10, 0.0005, 0.0001).failing(kind, FAULT_SECONDS));
    List<RawRow> rows = Bench.rows(recorded.file());
    RawRow lost = event(rows, "gauge lost ");
    assertThat(text(lost)).startsWith("gauge lost gauge-a reason=" + reason);
    assertThat(lost.elapsedMicros() * 1e-6 - FAULT_SECONDS).isBetween(0.0, 1.0);
    assertThat(String.join(" ", recorded.result().departures()))
        .contains("gauge-a was left out (" + words + ")")
        .contains("from then on the width rests on gauge-b");
    assertThat(recorded.result().checks())
        .filteredOn(check -> check.name().equals("gauges"))
        .noneMatch(check -> check.met());
    assertOnlyTheOtherCounts(recorded);
    boolean speaks = kind != BeamDevice.Kind.FALLS_SILENT;
    assertThat(rows)
        .filteredOn(row -> row.channel().equals("gauge-a") && row.seq() > lost.seq())
        .filteredOn(row -> !text(row).isEmpty())
        .hasSizeGreaterThan(speaks ? 20 : -1);
  }

  /** The other face opens less by a quarter; the faulty gauge would show in the mean. */
  private void assertOnlyTheOtherCounts(RecordedTest recorded) {
    double other = truth.widthAtLoad(15_000) * (1 - truth.beam().faceDifference());
    assertThat(recorded.result().figure("width-at-15-kN").orElseThrow().exact())
        .isCloseTo(other, within(0.005));
    assertThat(recorded.result().curve().orElseThrow().points())
        .filteredOn(point -> point.newtons() > 14_500)
        .isNotEmpty()
        .allMatch(point -> point.mask() == 0b10);
  }

  private static RawRow event(List<RawRow> rows, String start) {
    return rows.stream()
        .filter(row -> row.isEvent() && text(row).startsWith(start))
        .findFirst()
        .orElseThrow();
  }

  private static String text(RawRow row) {
    return new String(row.received(), StandardCharsets.US_ASCII);
  }

  private RecordedTest record(BeamDevice faulty) throws Exception {
    List<BeamDevice> devices =
        List.of(BeamDevice.load(100, 5, 1), faulty, BeamDevice.gauge(1, 60, 0.0005, 0.0001));
    List<Iterator<TimedBytes>> streams = new ArrayList<>();
    devices.forEach(device -> streams.add(new BeamReadings(truth, device, 11).bytes()));
    EmulatedClock clock = new EmulatedClock(Instant.parse("2026-11-25T07:15:02Z"));
    ClockedPorts bench = new ClockedPorts(clock, streams);
    bench.holdAt(0);
    List<Port> ports = bench.ports(PORTS);
    List<ChannelSetup> setups = new ArrayList<>();
    for (int i = 0; i < PORTS.size(); i++) {
      setups.add(BeamRig.setup(i, PORTS.get(i)));
    }
    try (RigConnection connection =
        RigConnection.open(
            setups,
            (port, settings) -> () -> ports.get(PORTS.indexOf(port)),
            new RecorderClocks(clock, clock, SystemClocks.monotonic()))) {
      Recording recording =
          connection.record(BeamRig.plan(setups, folder.resolve("beam.raw.csv")), progress -> {});
      bench.release(recording::stop);
      return recording.await();
    }
  }
}
