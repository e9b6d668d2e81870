package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.audit.Audit;
import io.github.platenwire.audit.Finding;
import io.github.platenwire.audit.Scope;
import io.github.platenwire.audit.Severity;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.lab.Register;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.record.Digests;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The smallest whole record there is, a log of three depths from a table: a bit is flipped in every
 * byte of its raw file, summary, register and enclosure, and each of them is cut at every byte. The
 * audit finds each, with a fault. {@link AuditFlipTest} does the same to a record of a load frame.
 */
@Timeout(600)
@TestInstance(Lifecycle.PER_CLASS)
class EveryByteTest {
  private static final String RIG = "log-typed";
  private static final long SEED = 20261125;
  private static final int COPIES = 2;

  private final List<Path> labs = new ArrayList<>();

  /** Changes a file's bytes at a place. */
  @FunctionalInterface
  private interface Damage {
    byte[] at(byte[] good, int place);
  }

  @BeforeAll
  void makeArchive(@TempDir Path folder) throws Exception {
    String specimens = "specimen,series,shape\nF-1,F,disc\n";
    LabTemplate template =
        LabTemplate.example("Lab", ZoneOffset.UTC, UnitSystem.SI)
            .withRigs(
                Map.of(
                    RIG,
                    Files.readString(Path.of("config/rigs/log-typed.toml"))
                        .replaceAll("(?m)^#.*\n", "")))
            .withSpecimens(specimens);
    Path lab = LabFolder.create(folder.resolve("0"), template).root();
    keepShort(lab, "config/methods", "methods", "front-advance");
    keepShort(lab, "devices", "devices", "typed-length");
    Path table = Files.writeString(folder.resolve("d.csv"), "time_s,depth_mm\n0,0\n9,2\n30,5\n");
    Ran record =
        Ran.of(
            "record",
            "F-1",
            "--lab",
            lab,
            "--keys",
            folder.resolve("keys"),
            "--method",
            "front-advance",
            "--unattended",
            "--entries",
            table);
    assertThat(record.exitCode()).as(record.err()).isZero();
    labs.add(lab);
    for (int copy = 1; copy < COPIES; copy++) {
      labs.add(new AuditLab(lab, folder).copyTo(folder.resolve("" + copy)).root());
    }
    for (Path each : labs) {
      assertThat(findings(each)).noneMatch(one -> one.severity() == Severity.FAULT);
    }
  }

  /** The record keeps the text of its method and device: without comments there is less of it. */
  private static void keepShort(Path lab, String from, String to, String name) throws Exception {
    String text =
        Files.readString(Path.of(from, name + ".toml"))
            .replaceAll("(?m)#.*$", "")
            .replaceAll("(?m)^depths-.*$", "")
            .replaceAll("(?m)[ \\t]+$", "")
            .replaceAll("\n{2,}", "\n");
    Files.createDirectories(lab.resolve(to));
    Files.writeString(lab.resolve(to).resolve(name + ".toml"), text.strip() + "\n");
  }

  private static List<Finding> findings(Path lab) throws Exception {
    Instant now = Instant.parse("2026-11-25T07:00:00Z");
    Audit.Settings settings =
        new Audit.Settings(Scope.ARCHIVE, 1, Set.of(), List.of(), "test", now);
    return Audit.of(LabFolder.open(lab), settings, (read, of) -> {}).findings();
  }

  private static Path file(Path lab, String ending) throws Exception {
    try (Stream<Path> files = Files.walk(lab)) {
      return files.filter(one -> one.toString().endsWith(ending)).findFirst().orElseThrow();
    }
  }

  private static Path register(Path lab) throws Exception {
    return Register.file(LabFolder.open(lab), RIG);
  }

  private static byte[] flip(byte[] good, int place) {
    byte[] bad = good.clone();
    bad[place] ^= (byte) (1 << new Random(SEED + place).nextInt(8));
    return bad;
  }

  private static byte[] cut(byte[] good, int place) {
    return java.util.Arrays.copyOf(good, place);
  }

  /** Does it at every byte, a copy of the archive for each core. */
  private void assertFound(List<Path> files, Damage damage) throws Exception {
    byte[] good = Files.readAllBytes(files.get(0));
    ExecutorService cores = Executors.newFixedThreadPool(COPIES);
    try {
      List<Future<List<String>>> overseen = new ArrayList<>();
      for (int copy = 0; copy < COPIES; copy++) {
        int from = copy;
        overseen.add(cores.submit(() -> overseen(from, files.get(from), good, damage)));
      }
      for (Future<List<String>> each : overseen) {
        assertThat(each.get()).isEmpty();
      }
    } finally {
      cores.shutdown();
    }
  }

  private List<String> overseen(int copy, Path file, byte[] good, Damage damage) throws Exception {
    List<String> overseen = new ArrayList<>();
    for (int place = copy; place < good.length; place += COPIES) {
      Files.write(file, damage.at(good, place));
      if (findings(labs.get(copy)).stream().noneMatch(f -> f.severity() == Severity.FAULT)) {
        overseen.add(file.getFileName() + ", byte " + place + ", seed " + SEED);
      }
    }
    Files.write(file, good);
    return overseen;
  }

  private List<Path> all(String ending) throws Exception {
    List<Path> files = new ArrayList<>();
    for (Path lab : labs) {
      files.add(ending.isEmpty() ? register(lab) : file(lab, ending));
    }
    return files;
  }

  @Test
  void flip_everyByteOfTheRawFile_isFound() throws Exception {
    assertFound(all(".raw.csv"), EveryByteTest::flip);
  }

  @Test
  void flip_everyByteOfTheSummary_isFound() throws Exception {
    assertFound(all(".summary.json"), EveryByteTest::flip);
  }

  @Test
  void flip_everyByteOfTheRegister_isFound() throws Exception {
    assertFound(all(""), EveryByteTest::flip);
  }

  @Test
  void flip_everyByteOfTheEnclosure_isFound() throws Exception {
    assertFound(all(".enclosure-1.csv"), EveryByteTest::flip);
  }

  @Test
  void audit_enclosureChangedGoneOrUnnamed_saysWhich() throws Exception {
    Path lab = labs.get(0);
    Path enclosure = file(lab, ".enclosure-1.csv");
    byte[] good = Files.readAllBytes(enclosure);
    Files.write(enclosure, flip(good, 3));
    assertThat(ids(lab)).contains("enclosure-changed");
    Files.delete(enclosure);
    assertThat(ids(lab)).contains("enclosure-missing").doesNotContain("enclosure-changed");
    Files.write(enclosure, good);
    Path stranger =
        enclosure.resolveSibling(
            enclosure.getFileName().toString().replace("enclosure-1.csv", "enclosure-2.jpg"));
    Files.write(stranger, good);
    assertThat(ids(lab)).contains("enclosure-unnamed").doesNotContain("enclosure-missing");
    Files.delete(stranger);
    assertThat(ids(lab)).noneMatch(id -> id.startsWith("enclosure"));
  }

  /** A summary must not lead the audit to a file that is none of its business. */
  @Test
  void audit_enclosureNamedElsewhere_isAFaultAndIsNotRead() throws Exception {
    Path lab = labs.get(0);
    Path summary = file(lab, ".summary.json");
    Path kept = file(lab, ".enclosure-1.csv");
    String good = Files.readString(summary);
    String name = String.valueOf(kept.getFileName());
    Path secret = Files.writeString(lab.resolveSibling("secret.txt"), "not the lab's");
    String secretDigest = Digests.sha256Hex(secret);
    String up = "../".repeat(3) + secret.getFileName();
    for (String elsewhere :
        List.of(
            up,
            secret.toAbsolutePath().toString(),
            "./" + name,
            "x/../" + name,
            "..\\\\secret.txt")) {
      AuditLab.edit(summary, text -> text.replace(name, elsewhere));
      assertThat(ids(lab)).as(elsewhere).contains("enclosure-elsewhere");
      assertThat(findings(lab)).as(elsewhere).noneMatch(f -> f.seen().contains(secretDigest));
      Files.writeString(summary, good);
    }
    byte[] bytes = Files.readAllBytes(kept);
    Files.delete(kept);
    Files.createSymbolicLink(kept, secret);
    assertThat(ids(lab)).contains("enclosure-elsewhere").doesNotContain("enclosure-changed");
    Files.delete(kept);
    Files.write(kept, bytes);
    assertThat(ids(lab)).noneMatch(id -> id.startsWith("enclosure"));
  }

  private static List<String> ids(Path lab) throws Exception {
    return findings(lab).stream().map(finding -> finding.check().id()).toList();
  }

  @Test
  void cut_rawFileAtEveryByte_isFound() throws Exception {
    assertFound(all(".raw.csv"), EveryByteTest::cut);
  }

  @Test
  void cut_summaryAtEveryByte_isFound() throws Exception {
    assertFound(all(".summary.json"), EveryByteTest::cut);
  }

  @Test
  void cut_registerAtEveryByte_isFound() throws Exception {
    assertFound(all(""), EveryByteTest::cut);
  }
}
