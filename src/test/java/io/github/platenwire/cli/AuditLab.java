package io.github.platenwire.cli;

import io.github.platenwire.audit.Audit;
import io.github.platenwire.audit.AuditReport;
import io.github.platenwire.audit.Scope;
import io.github.platenwire.emulate.DemoScenario;
import io.github.platenwire.emulate.DemoSpecimen;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.lab.PrivateKeys;
import io.github.platenwire.lab.Register;
import io.github.platenwire.lab.SharedRegister;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.Digests;
import io.github.platenwire.record.DiskFolder;
import io.github.platenwire.recorder.LabRecovery;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/**
 * An archive made by the real path, copies of it, and what a forger could do to them. Confined to
 * one thread.
 */
record AuditLab(Path root, Path keyFolder) {
  static final String RIG = "frame-1";
  private static final String SHARED = "shared";

  /** A lab with three cylinders broken, its register copied to a shared folder. */
  static AuditLab make(Path folder) throws Exception {
    Instant start = SystemClocks.wall().now().truncatedTo(ChronoUnit.SECONDS);
    start = start.minus(DemoBench.BETWEEN_TESTS.multipliedBy(6));
    DemoScenario scenario = new DemoScenario(start, ZoneOffset.UTC, 1);
    AuditLab made = new AuditLab(folder.resolve("lab"), folder.resolve("keys"));
    try (DemoBench bench = DemoBench.fast(start)) {
      LabTemplate template =
          LabTemplate.example("Alder Weir demo lab", ZoneOffset.UTC, UnitSystem.SI)
              .withRigs(Map.of(RIG, scenario.rigText(RIG, bench.port(), DemoTest.DEVICE)))
              .withSpecimens(scenario.specimensText())
              .withStudy(scenario.studyText())
              .withFile(
                  "calibrations/" + DemoScenario.CALIBRATION_NAME + ".toml",
                  scenario.calibrationText());
      LabFolder.create(made.root, template);
      Files.writeString(
          made.root.resolve("lab.toml"),
          Files.readString(made.root.resolve("lab.toml"))
              + "\nshared-register = \""
              + SHARED
              + "\"\n");
      Files.createDirectory(made.root.resolve(SHARED));
      LabFolder lab = made.lab();
      Register register = made.register(RIG);
      for (DemoSpecimen specimen : scenario.today().subList(0, 3)) {
        new DemoTest(
                lab,
                register,
                scenario,
                specimen,
                Face.standard(UnitSystem.SI),
                /* watched= */ false)
            .run(bench);
      }
    }
    return made;
  }

  /**
   * Leaves one record of a few readings: its test was interrupted soon after its start, and
   * recovered.
   */
  AuditLab cutToOneSmallRecord(int rows) throws Exception {
    List<Path> raws = lab().records();
    for (Path raw : raws.subList(1, raws.size())) {
      Files.delete(raw);
      Files.delete(LabFolder.summaryOf(raw));
    }
    Files.delete(LabFolder.summaryOf(raws.get(0)));
    Files.delete(registerFile());
    deleteTree(root.resolve(SHARED));
    Files.createDirectory(root.resolve(SHARED));
    String text = Files.readString(raws.get(0));
    int end = text.indexOf("\n" + (rows + 1) + ",");
    Files.writeString(raws.get(0), text.substring(0, end + 1));
    recover();
    return this;
  }

  LabFolder lab() throws Exception {
    return LabFolder.open(root);
  }

  PrivateKeys keys() {
    return new PrivateKeys(keyFolder);
  }

  Register register(String rig) throws Exception {
    return Register.open(lab(), rig, keys(), SystemClocks.wall());
  }

  Path registerFile() throws Exception {
    return Register.file(lab(), RIG);
  }

  Path shared() {
    return root.resolve(SHARED);
  }

  /** A raw file, from 0. */
  Path raw(int index) throws Exception {
    return lab().records().get(index);
  }

  Path summary(int index) throws Exception {
    return LabFolder.summaryOf(raw(index));
  }

  /** The id of a test, from 0. */
  String test(int index) throws Exception {
    return String.valueOf(raw(index).getFileName()).replace(".raw.csv", "");
  }

  void recover() throws Exception {
    List<LabRecovery.Report> reports =
        new LabRecovery(lab(), keys(), SystemClocks.wall(), new DiskFolder(), Set.of()).all();
    if (!reports.stream().allMatch(LabRecovery.Report::done)) {
      throw new AssertionError("not recovered: " + reports);
    }
  }

  AuditReport audit() throws Exception {
    return audit(Scope.ARCHIVE, Set.of(), List.of());
  }

  AuditReport audit(Scope scope, Set<String> confirmedKeys, List<String> witnesses)
      throws Exception {
    Audit.Settings settings =
        new Audit.Settings(
            scope, 2, confirmedKeys, witnesses, "test", Instant.parse("2026-11-25T07:00:00Z"));
    return Audit.of(lab(), settings, (read, of) -> {});
  }

  /** The same archive once more, in a new folder; the keys are shared. */
  AuditLab copyTo(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(root)) {
      for (Path file : (Iterable<Path>) files::iterator) {
        Path to = folder.resolve(root.relativize(file).toString());
        if (Files.isDirectory(file)) {
          Files.createDirectories(to);
        } else {
          Files.copy(file, to);
        }
      }
    }
    return new AuditLab(folder, keyFolder);
  }

  /** Brings the shared folder up to date, as each close does. */
  void joinShared() throws Exception {
    if (SharedRegister.join(lab(), RIG).isPresent()) {
      throw new AssertionError("the shared register could not be joined");
    }
  }

  /** Puts this archive's shared folder where another one looks for its own. */
  void copyShared(Path to) throws IOException {
    Files.createDirectories(to);
    try (Stream<Path> files = Files.list(shared())) {
      for (Path file : (Iterable<Path>) files::iterator) {
        Files.copy(file, to.resolve(String.valueOf(file.getFileName())));
      }
    }
  }

  static void deleteTree(Path folder) throws IOException {
    List<Path> all;
    try (Stream<Path> files = Files.walk(folder)) {
      all = new ArrayList<>(files.toList());
    }
    for (int i = all.size() - 1; i >= 0; i--) {
      Files.delete(all.get(i));
    }
  }

  /** Changes a file's text, which must really change. */
  static void edit(Path file, UnaryOperator<String> change) throws IOException {
    String before = Files.readString(file);
    String after = change.apply(before);
    if (after.equals(before)) {
      throw new AssertionError("nothing was changed in " + file);
    }
    Files.writeString(file, after);
  }

  /** Changes a raw file and computes its seals anew, as a forger who knows the format would. */
  static void forge(Path raw, UnaryOperator<String> change) throws IOException {
    edit(raw, text -> sealed(change.apply(text)));
  }

  private static String sealed(String text) {
    StringBuilder out = new StringBuilder();
    for (String line : text.lines().toList()) {
      boolean seal = line.startsWith("# check seq=") || line.startsWith("# closed seq=");
      out.append(
              seal
                  ? line.replaceFirst(
                      "sha256=[0-9a-f]{64}",
                      "sha256="
                          + Digests.sha256Hex(out.toString().getBytes(StandardCharsets.UTF_8)))
                  : line)
          .append('\n');
    }
    return out.toString();
  }
}
