package io.github.platenwire.recorder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.emulate.BeamDevice;
import io.github.platenwire.emulate.BeamProgram;
import io.github.platenwire.emulate.BeamReadings;
import io.github.platenwire.emulate.BeamTruth;
import io.github.platenwire.emulate.EmulatedBeam;
import io.github.platenwire.emulate.Pacer;
import io.github.platenwire.emulate.PseudoTerminal;
import io.github.platenwire.emulate.PseudoTerminalOutlet;
import io.github.platenwire.emulate.TimedBytes;
import io.github.platenwire.emulate.Waiter;
import io.github.platenwire.method.MethodResult;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.port.PortAddress;
import io.github.platenwire.port.Ports;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.RawRow;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A load at 100 Hz and gauges at 10 and 60 Hz on three pseudo-terminals, at true pace. */
@Timeout(60)
@EnabledOnOs({OS.LINUX, OS.MAC})
class SplitBeamLinksTest {
  private static final double CABLE_PULLED_SECONDS = 5.5;

  @TempDir Path folder;

  private final BeamTruth truth =
      new BeamTruth(
          EmulatedBeam.withWidth(9_000, 13_000, 0.3),
          new BeamProgram(3).to(16_500, 3_000).hold(0.8));

  /** The devices share no clock but must begin the same test. */
  private final CyclicBarrier allAtOnce = new CyclicBarrier(3);

  private final List<PseudoTerminal> lines = new ArrayList<>();
  private final List<List<String>> sent =
      List.of(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());

  @Test
  void record_threeLinks_noRowLostAndWidthsAtLoadAsSent() throws Exception {
    RecordedTest recorded = record(Double.POSITIVE_INFINITY);
    List<RawRow> rows = Bench.rows(recorded.file());
    for (int channel = 0; channel < 3; channel++) {
      assertThat(received(rows, channel))
          .as(BeamRig.NAMES.get(channel))
          .isEqualTo(sent.get(channel));
    }
    MethodResult result = recorded.result();
    Figure width = result.figure("width-at-3000-lbf").orElseThrow();
    assertAsSent(width, truth.widthAtLoad(Unit.POUND_FORCE.toBase(3000)));
    assertAsSent(result.figure("width-at-15-kN").orElseThrow(), truth.widthAtLoad(15_000));
    assertThat(result.checks())
        .filteredOn(check -> check.name().equals("gauges"))
        .allMatch(MethodResult.Check::met);
  }

  /** The claim is for the readings; a busy machine may stamp some of them late as well. */
  private static void assertAsSent(Figure width, double real) {
    double claim = width.uncertainty().orElseThrow().expanded();
    assertThat(width.exact()).isCloseTo(real, within(Math.max(0.005, claim)));
  }

  @Test
  void record_gaugeCablePulledInMidTest_testGoesOnAndSaysSo() throws Exception {
    RecordedTest recorded = record(CABLE_PULLED_SECONDS);
    assertThat(recorded.failure()).isEmpty();
    assertThat(Bench.events(recorded.file()))
        .anyMatch(text -> text.startsWith("link lost gauge-a"))
        .anyMatch(text -> text.startsWith("gauge lost gauge-a reason=silent"))
        .anyMatch(text -> text.startsWith("threshold 0.40 mm load="));
    List<RawRow> rows = Bench.rows(recorded.file());
    assertThat(received(rows, 0)).isEqualTo(sent.get(0));
    assertThat(received(rows, 2)).isEqualTo(sent.get(2));
    assertThat(String.join(" ", recorded.result().departures()))
        .contains("gauge-a was left out (silent)", "from then on the width rests on gauge-b");
    int onlySecond = 0b10;
    List<Integer> masks =
        recorded.result().curve().orElseThrow().points().stream().map(p -> p.mask()).toList();
    assertThat(masks.get(masks.size() - 1)).isEqualTo(onlySecond);
    assertThat(masks.get(masks.size() / 4)).isEqualTo(0b11);
  }

  private static List<String> received(List<RawRow> rows, int channel) {
    return rows.stream()
        .filter(row -> !row.isEvent() && row.channel().equals(BeamRig.NAMES.get(channel)))
        .map(row -> new String(row.received(), StandardCharsets.US_ASCII))
        .filter(text -> !text.isEmpty())
        .toList();
  }

  private RecordedTest record(double pulledSeconds) throws Exception {
    List<ChannelSetup> setups = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      lines.add(PseudoTerminal.open());
      setups.add(BeamRig.setup(i, lines.get(i).path()));
    }
    try (RigConnection connection =
        RigConnection.open(
            setups,
            (port, settings) ->
                Ports.opener(PortAddress.parse(port), settings, SystemClocks.monotonic()),
            RecorderClocks.system())) {
      Recording recording =
          connection.record(BeamRig.plan(setups, folder.resolve("beam.raw.csv")), progress -> {});
      List<CompletableFuture<Void>> sending = new ArrayList<>();
      for (int i = 0; i < 3; i++) {
        sending.add(send(i, i == 1 ? pulledSeconds : Double.POSITIVE_INFINITY));
      }
      CompletableFuture.allOf(sending.toArray(CompletableFuture[]::new)).get(30, TimeUnit.SECONDS);
      awaitRows(recording);
      recording.stop();
      return recording.await();
    } finally {
      lines.forEach(PseudoTerminal::close);
    }
  }

  /**
   * All but what may have gone down with a pulled cable has arrived, or half a second has passed.
   */
  private void awaitRows(Recording recording) {
    long all = sent.stream().mapToLong(List::size).sum();
    long until = SystemClocks.monotonic().nanos() + TimeUnit.MILLISECONDS.toNanos(500);
    while (recording.progress().map(Progress::readings).orElse(0L) < all
        && SystemClocks.monotonic().nanos() < until) {
      Thread.onSpinWait();
    }
  }

  private CompletableFuture<Void> send(int channel, double pulledSeconds) {
    List<BeamDevice> devices =
        List.of(
            BeamDevice.load(100, 5, 1),
            BeamDevice.gauge(0, 10, 0.0005, 0.0001),
            BeamDevice.gauge(1, 60, 0.0005, 0.0001));
    Iterator<TimedBytes> stream =
        until(new BeamReadings(truth, devices.get(channel), 11).bytes(), channel, pulledSeconds);
    CompletableFuture<Void> done = new CompletableFuture<>();
    Thread thread =
        new Thread(
            () -> {
              try {
                allAtOnce.await(10, TimeUnit.SECONDS);
                new Pacer(new PseudoTerminalOutlet(lines.get(channel)))
                    .atTruePace(stream, SystemClocks.monotonic(), Waiter.parking());
                if (pulledSeconds < Double.POSITIVE_INFINITY) {
                  lines.get(channel).close();
                }
                done.complete(null);
              } catch (Exception e) {
                done.completeExceptionally(e);
              }
            },
            "sends-" + BeamRig.NAMES.get(channel));
    thread.setDaemon(true);
    thread.start();
    return done;
  }

  /** The stream as far as the cable is in, each line noted. */
  private Iterator<TimedBytes> until(Iterator<TimedBytes> stream, int channel, double seconds) {
    List<TimedBytes> kept = new ArrayList<>();
    while (stream.hasNext()) {
      TimedBytes next = stream.next();
      if (next.nanos() < seconds * 1e9) {
        kept.add(next);
        sent.get(channel).add(new String(next.bytes(), StandardCharsets.US_ASCII).strip());
      }
    }
    return kept.iterator();
  }
}
