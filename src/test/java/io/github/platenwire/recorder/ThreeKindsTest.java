package io.github.platenwire.recorder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.emulate.Answerer;
import io.github.platenwire.emulate.AskedFrame;
import io.github.platenwire.emulate.BeamInFrame;
import io.github.platenwire.emulate.BeamProgram;
import io.github.platenwire.emulate.BeamTruth;
import io.github.platenwire.emulate.EmulatedBeam;
import io.github.platenwire.emulate.EmulatedFrame;
import io.github.platenwire.emulate.Pacer;
import io.github.platenwire.emulate.PseudoTerminal;
import io.github.platenwire.emulate.PseudoTerminalOutlet;
import io.github.platenwire.emulate.TwoWayOutlet;
import io.github.platenwire.emulate.Voice;
import io.github.platenwire.emulate.Waiter;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.RawRow;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * A Modbus RTU slave by j2mod, a device that sends binary frames and one that answers queries, on
 * three pseudo-terminals, in one record.
 */
@Timeout(60)
@EnabledOnOs({OS.LINUX, OS.MAC})
class ThreeKindsTest {
  private static final int FROM_EACH = 60;

  /** Micrometres become millimetres on the way: the last digits of a double. */
  private static final double ULPS = 1e-15;

  @TempDir Path folder;

  private final BeamInFrame truth =
      new BeamInFrame(
          new BeamTruth(
              EmulatedBeam.withWidth(9_000, 13_000, 0.3),
              new BeamProgram(0.2).to(18_000, 4_000).hold(60)));

  private final Queue<byte[]> frames = new ConcurrentLinkedQueue<>();
  private final Queue<byte[]> answers = new ConcurrentLinkedQueue<>();

  /** An outlet that notes what goes out. */
  private record Noting(TwoWayOutlet outlet, Queue<byte[]> sent) implements TwoWayOutlet {
    @Override
    public byte[] receive() throws IOException {
      return outlet.receive();
    }

    @Override
    public void send(byte[] bytes, int from, int length, long nanos) throws IOException {
      sent.add(Arrays.copyOfRange(bytes, from, from + length));
      outlet.send(bytes, from, length, nanos);
    }

    @Override
    public void close() throws IOException {
      outlet.close();
    }
  }

  /** Runs until its line is closed. */
  private static void start(String name, Sending sending) {
    Thread thread =
        new Thread(
            () -> {
              try {
                sending.run();
              } catch (IOException lineClosed) {
                assertThat(lineClosed).hasMessageContaining("closed");
              }
            },
            name);
    thread.setDaemon(true);
    thread.start();
  }

  @FunctionalInterface
  private interface Sending {
    void run() throws IOException;
  }

  private void startBinary(PseudoTerminal line) {
    Pacer pacer = new Pacer(new Noting(new PseudoTerminalOutlet(line), frames));
    EmulatedFrame frame =
        new EmulatedFrame(truth, Voice.BINARY_GAUGE.indicator(200_000, 50), /* seed= */ 5);
    start("binary", () -> pacer.atTruePace(frame, SystemClocks.monotonic(), Waiter.parking()));
  }

  private void startQuery(PseudoTerminal line) {
    Answerer answerer = new Answerer(new Noting(new PseudoTerminalOutlet(line), answers));
    AskedFrame frame =
        Voice.QUERY_GAUGE.asked(truth, Voice.QUERY_GAUGE.indicator(200_000, 50), /* seed= */ 6);
    start("query", () -> answerer.answer(frame, SystemClocks.monotonic(), () -> {}));
  }

  @Test
  void record_slaveBinaryAndQueryTogether_noBadFrameAndValuesAsSent() throws Exception {
    Path file = folder.resolve("three.raw.csv");
    List<ForeignSlave.Told> told;
    try (DeviceBench bench = new DeviceBench()) {
      PseudoTerminal registers = bench.line();
      PseudoTerminal binary = bench.line();
      PseudoTerminal query = bench.line();
      for (int field = 0; field < 2; field++) {
        String of = field == 0 ? "load-" : "gauge-";
        bench.channel(
            of + "registers", registers, DeviceBench.shipped("registers-load-and-gauge"), field);
        bench.channel(of + "binary", binary, DeviceBench.shipped("binary-load-and-gauge"), field);
        bench.channel(of + "query", query, DeviceBench.shipped("query-line-n-mm"), field);
      }
      try (ForeignSlave slave = new ForeignSlave(registers)) {
        RecordedTest recorded =
            bench.record(
                file,
                progress ->
                    slave.told.size() >= FROM_EACH
                        && frames.size() >= FROM_EACH
                        && answers.size() >= FROM_EACH,
                () -> {
                  startBinary(binary);
                  startQuery(query);
                });
        assertThat(recorded.failure()).isEmpty();
        told = List.copyOf(slave.told);
      }
    }
    assertThat(Bench.rows(file).stream().filter(row -> !row.isEvent()))
        .extracting(RawRow::quality)
        .containsOnly(Quality.OK, Quality.SUSPECT)
        .filteredOn(quality -> quality == Quality.SUSPECT)
        .as("the first line of the query's stream only")
        .hasSizeLessThanOrEqualTo(2);
    assertRegisters(file, told);
    assertBinary(file);
    assertQuery(file);
    assertThat(Bench.events(file))
        .filteredOn(event -> event.startsWith("identity"))
        .containsExactly("identity load-query Platenwire,emulated load frame,6,1");
  }

  private static void assertRegisters(Path file, List<ForeignSlave.Told> told) throws Exception {
    List<RawRow> loads = DeviceBench.rows(file, "load-registers");
    List<RawRow> gauges = DeviceBench.rows(file, "gauge-registers");
    assertThat(loads).hasSizeBetween(FROM_EACH - 2, told.size()).hasSameSizeAs(gauges);
    for (int i = 0; i < loads.size(); i++) {
      assertThat(loads.get(i).value()).isEqualTo(told.get(i).loadNewtons());
      assertThat(gauges.get(i).value()).isCloseTo(told.get(i).gaugeTenths() / 1e4, within(ULPS));
    }
  }

  private void assertBinary(Path file) throws Exception {
    List<RawRow> loads = DeviceBench.rows(file, "load-binary");
    List<RawRow> gauges = DeviceBench.rows(file, "gauge-binary");
    assertThat(loads).hasSizeGreaterThanOrEqualTo(FROM_EACH - 10).hasSameSizeAs(gauges);
    List<byte[]> sent = List.copyOf(frames);
    for (int i = 0; i < loads.size(); i++) {
      ByteBuffer frame = ByteBuffer.wrap(sent.get(i));
      assertThat(loads.get(i).received()).isEqualTo(sent.get(i));
      assertThat(loads.get(i).value()).isEqualTo(frame.getInt(2) / 10.0);
      assertThat(gauges.get(i).value()).isCloseTo(frame.getInt(6) / 1e4, within(ULPS));
    }
  }

  private void assertQuery(Path file) throws Exception {
    List<RawRow> loads = DeviceBench.rows(file, "load-query");
    List<RawRow> gauges = DeviceBench.rows(file, "gauge-query");
    List<String> sent =
        answers.stream()
            .map(answer -> new String(answer, StandardCharsets.US_ASCII).strip())
            .filter(answer -> answer.startsWith("+") || answer.startsWith("-"))
            .toList();
    assertThat(loads).hasSizeGreaterThanOrEqualTo(FROM_EACH - 10).hasSameSizeAs(gauges);
    for (int i = 0; i < loads.size(); i++) {
      String[] numbers = sent.get(i).split(",", -1);
      assertThat(loads.get(i).value()).isEqualTo(Double.parseDouble(numbers[0]));
      assertThat(gauges.get(i).value()).isEqualTo(Double.parseDouble(numbers[1]));
    }
  }
}
