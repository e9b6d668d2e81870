package io.github.platenwire.cli;

import io.github.platenwire.emulate.CylinderTruth;
import io.github.platenwire.emulate.EmulatedCylinder;
import io.github.platenwire.emulate.EmulatedCylinder.BreakKind;
import io.github.platenwire.emulate.EmulatedFrame;
import io.github.platenwire.emulate.EmulatedIndicator;
import io.github.platenwire.emulate.Faults;
import io.github.platenwire.emulate.FrameProgram;
import io.github.platenwire.emulate.LineLayout;
import io.github.platenwire.emulate.Pacer;
import io.github.platenwire.emulate.TruthSummary;
import io.github.platenwire.emulate.Waiter;
import io.github.platenwire.reading.MonotonicClock;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.terminal.SystemTerminal;
import io.github.platenwire.terminal.TerminalOut;
import java.math.BigDecimal;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code emulate}: answers like a load frame with a cylinder in it. */
@Command(
    name = "emulate",
    description = {
      "Answer like a load frame's indicator while a cylinder of known strength is broken, in real bytes on a",
      "serial port, a new pseudo-terminal or a TCP port. Prints the truth at the end, to be held against a record."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire emulate --on pty                         prints the path to record from",
      "  platenwire emulate --on tcp://127.0.0.1:5331 --strength 32 --tests 3",
      "  platenwire emulate --on /dev/ttyUSB1 --garbage 0.01 --torn 0.01 --seed 7"
    })
final class EmulateCommand implements Callable<Integer> {
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

  @ArgGroup(validate = false, heading = "%nThe cylinder and the frame:%n")
  private final Cylinder cylinder = new Cylinder();

  @ArgGroup(validate = false, heading = "%nThe indicator:%n")
  private final Indicator indicator = new Indicator();

  @ArgGroup(
      validate = false,
      heading = "%nWhat goes wrong, as chances for each reading, 0 to 1 (default: nothing):%n")
  private final Trouble trouble = new Trouble();

  /** What is broken, and how. */
  static final class Cylinder {
    @Option(
        names = "--strength",
        paramLabel = "MPA",
        description = "True strength in MPa (default: ${DEFAULT-VALUE}; 1 MPa = 145 psi).")
    private double strengthMegapascals = 25;

    @Option(
        names = "--diameter",
        paramLabel = "MM",
        description = "Diameter in mm (default: ${DEFAULT-VALUE}; 101.6 mm = 4 in).")
    private double diameterMillimetres = 100;

    @Option(
        names = "--length",
        paramLabel = "MM",
        description = "Length in mm (default: ${DEFAULT-VALUE}).")
    private double lengthMillimetres = 200;

    @Option(
        names = "--load-rate",
        paramLabel = "MPA/S",
        description =
            "Rate of loading in MPa/s (default: ${DEFAULT-VALUE}; 35 psi/s = 0.241 MPa/s).")
    private double rateMegapascalsPerSecond = 0.25;

    @Option(names = "--gradual", description = "Let it soften slowly instead of breaking suddenly.")
    private boolean gradual;

    @Option(
        names = "--idle",
        paramLabel = "S",
        description = "Seconds without load before each test (default: ${DEFAULT-VALUE}).")
    private double idleSeconds = 8;
  }

  /** How the load is told. */
  static final class Indicator {
    @Option(
        names = "--layout",
        paramLabel = "WHAT",
        description =
            "lbf (+0012345 lbf), kn (+0123.45 kN) or status-kn (ok,+00123.45,kN) (default: ${DEFAULT-VALUE}).")
    private String layout = "lbf";

    @Option(
        names = "--rate",
        paramLabel = "HZ",
        description = "Readings a second (default: ${DEFAULT-VALUE}).")
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
    EmulatedIndicator device = device();
    MonotonicClock clock = SystemClocks.monotonic();
    TerminalOut out = SystemTerminal.out();
    try (EmulationPlace place = EmulationPlace.open(where, clock)) {
      out.lines(
          List.of(
              "Emulated indicator at: " + place.address(),
              "Waiting for somebody to read it; Ctrl-C ends it."));
      for (int i = 0; i < tests; i++) {
        EmulatedFrame frame = frame(device, seed + i);
        place.awaitReader();
        out.lines(List.of("Test " + (i + 1) + " of " + tests + " begins."));
        Pacer.Outcome outcome =
            new Pacer(place.outlet()).atTruePace(frame, clock, Waiter.parking());
        out.lines(
            List.of(
                TruthSummary.of(frame).words().strip(),
                place.unheardWords(),
                outcome.finished() ? "" : "Not finished."));
      }
    }
    return ExitCode.FINE;
  }

  private EmulatedFrame frame(EmulatedIndicator device, long testSeed) {
    EmulatedCylinder broken =
        EmulatedCylinder.ofNormalConcrete(
            cylinder.diameterMillimetres,
            cylinder.lengthMillimetres,
            cylinder.strengthMegapascals,
            cylinder.gradual ? BreakKind.GRADUAL : BreakKind.BRITTLE);
    FrameProgram program =
        FrameProgram.cylinderAtCommonRate(cylinder.strengthMegapascals)
            .withSetRate(cylinder.rateMegapascalsPerSecond)
            .withIdleAndTail(cylinder.idleSeconds, 8);
    return new EmulatedFrame(new CylinderTruth(broken, program, testSeed), device, testSeed);
  }

  private EmulatedIndicator device() throws CommandException {
    LineLayout layout =
        switch (indicator.layout) {
          case "lbf" -> LineLayout.POUNDS;
          case "kn" -> LineLayout.KILONEWTONS;
          case "status-kn" -> LineLayout.STATUS_KILONEWTONS;
          default ->
              throw new CommandException(
                  ExitCode.USAGE,
                  "--layout must be lbf, kn or status-kn, not '" + indicator.layout + "'");
        };
    BigDecimal resolution =
        layout.equals(LineLayout.POUNDS) ? BigDecimal.ONE : new BigDecimal("0.01");
    EmulatedIndicator sound =
        EmulatedIndicator.perfect(layout, resolution, 2_000_000, indicator.rateHertz)
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
