package io.github.platenwire.cli;

import io.github.platenwire.emulate.DemoBeam;
import io.github.platenwire.emulate.DemoScenario;
import io.github.platenwire.emulate.DemoSpecimen;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.lab.Register;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.study.StudyData;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code demo}: a lab day on emulated devices, through the real path. */
@Command(
    name = "demo",
    description = {
      "Make a lab folder, break four sets of three companion cylinders (two series, two ages) on an emulated",
      "load frame, and open the cracks of six split beams, three with a plain and three with a coated bar:",
      "the bytes go through the same port, device, recorder and method as a real one's. Ends with what was",
      "measured beside the truth."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire demo",
      "  platenwire demo --lab alder-demo --pace real",
      "  platenwire demo --lab alder-demo-2 --seed 7"
    })
final class DemoCommand implements Callable<Integer> {
  private static final String RIG = "frame-1";

  /** How many test times the emulated day takes, so that it ends about now. */
  private static final int TESTS_AND_BREAK = 20;

  @Mixin private final KeysOption keysOption = new KeysOption();

  @Option(
      names = "--lab",
      paramLabel = "DIR",
      description = "The lab folder to make (default: ${DEFAULT-VALUE}).")
  private Path folder = Path.of("platenwire-demo");

  @Option(
      names = "--pace",
      paramLabel = "PACE",
      description =
          "real: the first set of cylinders, as long as real tests take; fast: all, as fast as the readings can be recorded, on an emulated clock (default: ${DEFAULT-VALUE}).")
  private String pace = "fast";

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "The same seed breaks the same cylinders (default: ${DEFAULT-VALUE}).")
  private long seed = 1;

  @Override
  public Integer call() throws Exception {
    boolean real = realPace();
    refuseOccupied();
    ZoneId zone = ZoneId.systemDefault();
    Instant now = SystemClocks.wall().now().truncatedTo(ChronoUnit.SECONDS);
    Instant start = real ? now : now.minus(DemoBench.BETWEEN_TESTS.multipliedBy(TESTS_AND_BREAK));
    DemoScenario scenario = new DemoScenario(start, zone, seed);
    List<DemoSpecimen> cylinders = real ? scenario.firstSet() : scenario.today();
    Face face = Face.standard(UnitSystem.SI);
    try (DemoBench bench = real ? DemoBench.realPace() : DemoBench.fast(start)) {
      LabFolder lab = makeLab(scenario, zone, bench.port());
      Logging.toFolder(lab.root());
      face.line(
          "Made the lab folder "
              + lab.root()
              + " of an invented study: a footbridge over Alder Weir.");
      face.line(
          "Breaking "
              + cylinders.size()
              + " cylinders of "
              + String.join(
                  " and ", cylinders.stream().map(DemoSpecimen::series).distinct().toList())
              + " on an emulated load frame at "
              + bench.port()
              + (real ? ", at true pace." : ", on an emulated clock."));
      DemoReport report = new DemoReport(face);
      Register register = Register.open(lab, RIG, keysOption.open(), SystemClocks.wall());
      for (DemoSpecimen specimen : cylinders) {
        report.add(breakOne(lab, register, scenario, specimen, bench, face));
      }
      int strengths = report.print();
      Instant beams =
          real
              ? SystemClocks.wall().now()
              : start.plus(DemoBench.BETWEEN_TESTS.multipliedBy(cylinders.size() + 1));
      Register beamRegister =
          Register.open(lab, DemoBeam.RIG, keysOption.open(), SystemClocks.wall());
      int split = new DemoBeamTests(lab, beamRegister, face, seed).run(beams);
      farewell(face, lab);
      return Math.max(strengths, split);
    }
  }

  private void farewell(Face face, LabFolder lab) throws Exception {
    face.line("");
    face.line("A report of the study, for people:");
    ReportStudyCommand.write(lab, StudyData.read(lab), new ReportOutput(), face);
    face.line("");
    face.line("Look at " + lab.root() + ": records/ has a raw file and a summary for each test.");
    face.line("What is still to break:      platenwire study status --lab " + folder);
    face.line("How the series compare:      platenwire compare --lab " + folder);
  }

  private DemoResult breakOne(
      LabFolder lab,
      Register register,
      DemoScenario scenario,
      DemoSpecimen specimen,
      DemoBench bench,
      Face face)
      throws LabException, TomlException, IOException, InterruptedException, CommandException {
    return new DemoTest(lab, register, scenario, specimen, face, pace.equals("real")).run(bench);
  }

  private LabFolder makeLab(DemoScenario scenario, ZoneId zone, String port)
      throws LabException, IOException {
    LabTemplate template =
        LabTemplate.example("Alder Weir demo lab", zone, UnitSystem.SI)
            .withRigs(
                Map.of(
                    DemoBeam.RIG,
                    DemoBeam.rigText(),
                    RIG,
                    scenario.rigText(RIG, port, DemoTest.DEVICE),
                    "frame-2",
                    scenario.rigText("frame-2", "tcp://127.0.0.1:5331", DemoTest.DEVICE)))
            .withSpecimens(scenario.specimensText())
            .withStudy(scenario.studyText());
    LabFolder lab = LabFolder.create(folder, template);
    for (Map.Entry<String, String> file : scenario.calibrationTexts().entrySet()) {
      Files.writeString(
          lab.root().resolve("calibrations").resolve(file.getKey() + ".toml"), file.getValue());
    }
    return lab;
  }

  private boolean realPace() throws CommandException {
    return switch (pace) {
      case "real" -> true;
      case "fast" -> false;
      default ->
          throw new CommandException(
              ExitCode.USAGE, "--pace must be real or fast, not '" + pace + "'");
    };
  }

  private void refuseOccupied() throws IOException, CommandException {
    if (!Files.exists(folder)) {
      return;
    }
    List<Path> inside = new ArrayList<>();
    if (Files.isDirectory(folder)) {
      try (Stream<Path> entries = Files.list(folder)) {
        entries.forEach(inside::add);
      }
    } else {
      inside.add(folder);
    }
    if (!inside.isEmpty()) {
      throw new CommandException(
          ExitCode.USAGE,
          folder
              + " is there already and is not empty. The demo never writes into what is there: name another folder with --lab, or remove this one.");
    }
  }
}
