package io.github.platenwire.bench;

import io.github.platenwire.emulate.PseudoTerminal;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.port.LineSettings;
import io.github.platenwire.port.Port;
import io.github.platenwire.port.PortAddress;
import io.github.platenwire.port.Ports;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.recorder.LabTest;
import io.github.platenwire.recorder.RecordedTest;
import io.github.platenwire.recorder.RecorderClocks;
import io.github.platenwire.recorder.Recording;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/**
 * How many readings a second can be recorded when a device sends without a pause over a
 * pseudo-terminal: the whole way to a closed record, beside readers that do less. The rounds take
 * turns, so that a machine that slows down slows all.
 */
final class FlatOut {
  private static final int RESTING_LINES = 20;

  private final ScratchLab lab;
  private final int lines;
  private final int rounds;

  FlatOut(ScratchLab lab, int lines, int rounds) {
    this.lab = lab;
    this.lines = lines;
    this.rounds = rounds;
  }

  List<BenchFigure> run()
      throws IOException, LabException, TomlException, BenchException, InterruptedException {
    List<Double> recorded = new ArrayList<>();
    List<Double> bare = new ArrayList<>();
    List<Double> simple = new ArrayList<>();
    for (int round = 0; round < rounds; round++) {
      byte[] bytes = LoadLines.of(lines, round);
      recorded.add(record(bytes));
      bare.add(read(BareReader::new, lab.file("bare-" + round), bytes));
      simple.add(read(SimpleReader::new, lab.file("simple-" + round), bytes));
    }
    double perSecond = Medians.of(recorded);
    BenchFigure whole =
        BenchFigure.of("record_readings_per_second", "Recorded flat out", perSecond, "readings/s");
    return List.of(
        whole.atLeast(0.6, Medians.of(bare), "bare reader"),
        whole.atLeast(2.2, Medians.of(simple), "simple reader"));
  }

  private double record(byte[] bytes)
      throws IOException, LabException, TomlException, BenchException, InterruptedException {
    try (PseudoTerminal line = PseudoTerminal.open();
        LabTest test =
            lab.openFrame(
                (address, settings) ->
                    Ports.opener(
                        PortAddress.parse(line.path()), settings, SystemClocks.monotonic()),
                RecorderClocks.system())) {
      rest(line);
      Arrival arrival = new Arrival();
      Recording recording = lab.start(test, arrival);
      arrival.await(RESTING_LINES);
      long start = SystemClocks.monotonic().nanos();
      Sender sender = new Sender(() -> line.write(bytes, 0, bytes.length));
      sender.start();
      arrival.await(RESTING_LINES + (long) lines);
      double seconds = (SystemClocks.monotonic().nanos() - start) / 1e9;
      sender.await();
      recording.stop();
      RecordedTest recorded = recording.await();
      check(recorded);
      lab.close(test, recorded);
      return lines / seconds;
    }
  }

  private static void rest(PseudoTerminal line) throws IOException {
    byte[] atRest = LoadLines.atRest();
    for (int i = 0; i < RESTING_LINES; i++) {
      line.write(atRest, 0, atRest.length);
    }
  }

  private void check(RecordedTest recorded) throws BenchException {
    long readings = recorded.channels().get(0).received();
    long lost = recorded.closing().map(closing -> closing.lost()).orElse(Long.MAX_VALUE);
    if (lost != 0 || readings != RESTING_LINES + (long) lines) {
      throw new BenchException(
          "sent "
              + (RESTING_LINES + (long) lines)
              + " readings, recorded "
              + readings
              + ", "
              + lost
              + " known to be lost");
    }
  }

  private double read(Supplier<LineReader> reader, Path file, byte[] bytes)
      throws IOException, InterruptedException {
    try (PseudoTerminal line = PseudoTerminal.open();
        Port port =
            Ports.opener(
                    PortAddress.parse(line.path()), LineSettings.COMMON, SystemClocks.monotonic())
                .open()) {
      Sender sender = new Sender(() -> line.write(bytes, 0, bytes.length));
      long start = SystemClocks.monotonic().nanos();
      sender.start();
      reader.get().read(port, file, lines);
      double seconds = (SystemClocks.monotonic().nanos() - start) / 1e9;
      sender.await();
      return lines / seconds;
    }
  }
}
