package io.github.platenwire.cli;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.emulate.Answerer;
import io.github.platenwire.emulate.AskedFrame;
import io.github.platenwire.emulate.EmulatedFrame;
import io.github.platenwire.emulate.EmulatedIndicator;
import io.github.platenwire.emulate.Faults;
import io.github.platenwire.emulate.Pacer;
import io.github.platenwire.emulate.SentTruth;
import io.github.platenwire.emulate.SpecimenTruth;
import io.github.platenwire.emulate.Voice;
import io.github.platenwire.emulate.Waiter;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.reading.MonotonicClock;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.terminal.SystemTerminal;
import io.github.platenwire.terminal.TerminalOut;
import java.io.IOException;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code emulate}: answers like a load frame with a cylinder in it. */
@Command(
    name = "emulate",
    description = {
      "Answer like a load frame's indicator while a cylinder of known strength is broken, or a beam of known",
      "crack width opened, in real bytes on a serial port, a new pseudo-terminal or a TCP port. Prints the truth",
      "at the end, to be held against a record."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire emulate --on pty                         prints the path to record from",
      "  platenwire emulate --on tcp://127.0.0.1:5331 --strength 32 --tests 3",
      "  platenwire emulate --on pty --layout registers-gauge --beam --crack-width 0.2",
      "  platenwire emulate --on /dev/ttyUSB1 --garbage 0.01 --torn 0.01 --seed 7"
    })
final class EmulateCommand implements Callable<Integer> {
  private static final double CAPACITY_NEWTONS = 2_000_000;

  @Option(
      names = "--on",
      required = true,
      paramLabel = "WHERE",
      description =
          "pty (a new pseudo-terminal), tcp://host:port (listens there), or a serial port.")
  private String where = "";

  @Option(
      names = "--tests",
      paramLabel = "N",
      description = "How many cylinders, one after the other (default: ${DEFAULT-VALUE}).")
  private int tests = 1;

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "The same seed gives the same bytes (default: ${DEFAULT-VALUE}).")
  private long seed = 1;

  @ArgGroup(validate = false, heading = "%nWhat is in the frame:%n")
  private final EmulatedSpecimen specimen = new EmulatedSpecimen();

  @ArgGroup(validate = false, heading = "%nThe indicator:%n")
  private final Indicator indicator = new Indicator();

  @ArgGroup(
      validate = false,
      heading = "%nWhat goes wrong, as chances for each reading, 0 to 1 (default: nothing):%n")
  private final Trouble trouble = new Trouble();

  /** How the load is told. */
  static final class Indicator {
    @Option(
        names = "--layout",
        paramLabel = "WHAT",
        description = {
          "How it speaks (default: ${DEFAULT-VALUE}). Unasked lines: lbf (+0012345 lbf), kn (+0123.45 kN),",
          "status-kn (ST,+00123.45,kN). Binary frames: binary, binary-gauge. When asked: query, query-gauge",
          "(lines, as by IEEE 488.2), registers, registers-gauge (Modbus RTU). Those with gauge also tell the",
          "platen's travel, or a beam's crack."
        })
    private String layout = "lbf";

    @Option(
        names = "--rate",
        paramLabel = "HZ",
        description = "Readings a second, unless it is asked (default: ${DEFAULT-VALUE}).")
    private double rateHertz = 50;

    @Option(
        names = "--noise",
        paramLabel = "N",
        description = "Standard deviation of the noise in newtons (default: ${DEFAULT-VALUE}).")
    private double noiseNewtons = 15;

    @Option(
        names = "--zero",
        paramLabel = "N",
        description = "What it shows without load, in newtons (default: ${DEFAULT-VALUE}).")
    private double zeroNewtons = 60;

    @Option(names = "--bursts", description = "Hand bytes over every 16 ms, as USB adapters do.")
    private boolean bursts;
  }

  /** What goes wrong. */
  static final class Trouble {
    @Option(names = "--glitches", paramLabel = "P", description = "A wild value in a whole line.")
    private double glitches;

    @Option(names = "--garbage", paramLabel = "P", description = "Stray bytes before the line.")
    private double garbage;

    @Option(names = "--torn", paramLabel = "P", description = "Part of the line is lost.")
    private double torn;

    @Option(names = "--flips", paramLabel = "P", description = "One bit of the line is flipped.")
    private double flips;

    @Option(
        names = "--silences",
        paramLabel = "P",
        description = "The device falls silent for --silent-for seconds.")
    private double silences;

    @Option(
        names = "--silent-for",
        paramLabel = "S",
        description = "How long a silence lasts (default: ${DEFAULT-VALUE}).")
    private double silentForSeconds = 2;
  }

  @Override
  public Integer call() throws Exception {
    if (tests < 1) {
      throw new CommandException(ExitCode.USAGE, "--tests must be 1 or more, not " + tests);
    }
    Voice voice = voice();
    EmulatedIndicator device = device(voice);
    DeviceDefinition reads = LabFolder.shippedDevice(voice.definition());
    MonotonicClock clock = SystemClocks.monotonic();
    TerminalOut out = SystemTerminal.out();
    try (EmulationPlace place = EmulationPlace.open(where, reads.lineSettings(), clock)) {
      out.lines(
          List.of(
              "Emulated indicator at: " + place.address(),
              "The device definition that reads it: " + voice.definition(),
              "Waiting for somebody to "
                  + (voice.isAsked() ? "ask" : "read")
                  + " it; Ctrl-C ends it."));
      for (int i = 0; i < tests; i++) {
        emulate(voice, device, place, i, out);
      }
    }
    return ExitCode.FINE;
  }

  private void emulate(
      Voice voice, EmulatedIndicator device, EmulationPlace place, int test, TerminalOut out)
      throws IOException, InterruptedException {
    SpecimenTruth truth = specimen.truth(seed + test);
    String begins = "Test " + (test + 1) + " of " + tests + " begins.";
    MonotonicClock clock = SystemClocks.monotonic();
    boolean finished;
    SentTruth sent;
    if (voice.isAsked()) {
      AskedFrame frame = voice.asked(truth, device, seed + test);
      finished =
          new Answerer(place.outlet()).answer(frame, clock, () -> out.lines(List.of(begins)));
      sent = frame.sent();
    } else {
      EmulatedFrame frame = new EmulatedFrame(truth, device, seed + test);
      place.awaitReader(device.nudge());
      out.lines(List.of(begins));
      finished = new Pacer(place.outlet()).atTruePace(frame, clock, Waiter.parking()).finished();
      sent = frame.sent();
    }
    out.lines(
        List.of(
            specimen.words(truth, sent), place.unheardWords(), finished ? "" : "Not finished."));
  }

  private Voice voice() throws CommandException {
    Voice voice =
        Voice.ofWord(indicator.layout)
            .orElseThrow(
                () ->
                    new CommandException(
                        ExitCode.USAGE,
                        "--layout '"
                            + indicator.layout
                            + "' is not known; possible: "
                            + String.join(", ", Voice.words())));
    if (specimen.isBeam() && !voice.hasGauge()) {
      throw new CommandException(
          ExitCode.USAGE,
          "--layout "
              + voice.word()
              + " tells no gauge, and a beam's crack would not be seen; take query-gauge,"
              + " binary-gauge or registers-gauge");
    }
    return voice;
  }

  private EmulatedIndicator device(Voice voice) {
    EmulatedIndicator sound =
        voice
            .indicator(CAPACITY_NEWTONS, indicator.rateHertz)
            .withNoiseAndZero(indicator.noiseNewtons, indicator.zeroNewtons)
            .withFaults(
                Faults.NONE
                    .withGlitches(trouble.glitches)
                    .withGarbage(trouble.garbage)
                    .withTornLines(trouble.torn)
                    .withFlippedBits(trouble.flips)
                    .withSilences(trouble.silences, trouble.silentForSeconds));
    return indicator.bursts
        ? sound.withJitterAndBursts(0, EmulatedIndicator.ADAPTER_BURST_NANOS)
        : sound;
  }
}
