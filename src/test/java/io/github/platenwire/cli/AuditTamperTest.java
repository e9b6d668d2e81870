package io.github.platenwire.cli;

import static io.github.platenwire.cli.AuditLab.edit;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.audit.AuditReport;
import io.github.platenwire.audit.Finding;
import io.github.platenwire.audit.Scope;
import io.github.platenwire.audit.Severity;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.PrivateKeys;
import io.github.platenwire.lab.Register;
import io.github.platenwire.lab.RegisterCheck;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.Digests;
import io.github.platenwire.record.DiskFolder;
import io.github.platenwire.recorder.LabRecovery;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Whole archives forged, cut and exchanged; parts of archives; and that nothing is written. */
@Timeout(300)
@TestInstance(Lifecycle.PER_CLASS)
class AuditTamperTest {
  private Path folder;
  private AuditLab base;
  private int copies;

  @BeforeAll
  void makeArchive(@TempDir Path temporary) throws Exception {
    folder = temporary;
    base = AuditLab.make(temporary.resolve("base"));
  }

  private AuditLab copy() throws Exception {
    return base.copyTo(folder.resolve("copy-" + ++copies));
  }

  private static List<String> ids(AuditReport report) {
    return report.findings().stream().map(finding -> finding.check().id()).distinct().toList();
  }

  private static List<String> faults(AuditReport report) {
    return report.findings().stream()
        .filter(finding -> finding.severity() == Severity.FAULT)
        .map(finding -> finding.check().id())
        .distinct()
        .toList();
  }

  @Test
  void swap_twoRecords_isFoundByNamesAndSummaries() throws Exception {
    AuditLab lab = copy();
    Path first = lab.raw(0);
    Path second = lab.raw(1);
    Path aside = lab.root().resolve("aside");
    Files.move(first, aside);
    Files.move(second, first);
    Files.move(aside, second);
    AuditReport report = lab.audit();
    assertThat(faults(report)).contains("name-differs", "summary-differs");
    assertThat(report.findings().stream().filter(f -> f.check().id().equals("name-differs")))
        .hasSize(2);
  }

  @Test
  void swap_twoSummaries_isFound() throws Exception {
    AuditLab lab = copy();
    byte[] first = Files.readAllBytes(lab.summary(0));
    Files.write(lab.summary(0), Files.readAllBytes(lab.summary(1)));
    Files.write(lab.summary(1), first);
    assertThat(faults(lab.audit())).contains("summary-changed", "summary-differs");
  }

  @Test
  void remove_lastRecordWithItsLine_showsInTheSharedRegisterOnly() throws Exception {
    AuditLab lab = copy();
    String witness = RegisterCheck.of(lab.lab(), AuditLab.RIG).head().orElseThrow();
    Files.delete(lab.summary(2));
    Files.delete(lab.raw(2));
    edit(lab.registerFile(), t -> t.substring(0, t.lastIndexOf("{")));
    assertThat(faults(lab.audit())).containsExactly("shared-ahead");
    AuditReport withPaper = lab.audit(Scope.ARCHIVE, Set.of(), List.of(witness));
    assertThat(faults(withPaper)).contains("witness-unknown");
  }

  @Test
  void forge_readingWithSealsSummaryAndRegisterAnew_showsByKeyWitnessAndSharedCopy()
      throws Exception {
    AuditLab lab = copy();
    String fingerprint = lab.register(AuditLab.RIG).fingerprint();
    String witness = RegisterCheck.of(lab.lab(), AuditLab.RIG).head().orElseThrow();
    AuditLab.forge(lab.raw(0), t -> t.replace("diameters-mm = [100.2", "diameters-mm = [100.1"));
    for (int i = 0; i < 3; i++) {
      Files.delete(lab.summary(i));
    }
    Files.delete(lab.registerFile());
    Files.delete(lab.lab().keysFolder().resolve("frame-1.pub"));
    PrivateKeys forgers = new PrivateKeys(folder.resolve("forger"));
    // The forger keeps the shared folder out of reach, or it would tell him.
    AuditLab.deleteTree(lab.shared());
    new LabRecovery(lab.lab(), forgers, SystemClocks.wall(), new DiskFolder(), Set.of()).all();
    AuditReport blind = lab.audit();
    assertThat(faults(blind)).as("nothing is left in the folder that could tell").isEmpty();
    assertThat(ids(blind)).contains("entered-afterwards", "specimen-changed");
    assertThat(faults(lab.audit(Scope.ARCHIVE, Set.of(fingerprint), List.of())))
        .containsExactly("key-not-confirmed");
    assertThat(faults(lab.audit(Scope.ARCHIVE, Set.of(), List.of(witness))))
        .containsExactly("witness-unknown");
    AuditLab whole = base.copyTo(folder.resolve("whole-" + ++copies));
    whole.copyShared(lab.shared());
    assertThat(faults(lab.audit())).contains("shared-differs");
  }

  @Test
  void sign_registerAnewWithAnotherKey_isFound() throws Exception {
    AuditLab lab = copy();
    RecordTamperings.signAnew(lab);
    assertThat(faults(lab.audit())).contains("witness-unknown", "shared-differs");
  }

  @Test
  void add_recordOfAnotherLab_isFound() throws Exception {
    AuditLab lab = copy();
    Path foreign = lab.raw(0).resolveSibling(lab.test(0) + "-9.raw.csv");
    AuditLab.forge(
        Files.copy(lab.raw(0), foreign),
        t -> t.replaceFirst("test = \"[^\"]+\"", "test = \"" + test(foreign) + "\""));
    assertThat(ids(lab.audit())).contains("not-recovered");
    Files.writeString(LabFolder.summaryOf(foreign), Files.readString(lab.summary(0)));
    assertThat(faults(lab.audit())).contains("not-registered");
  }

  private static String test(Path raw) {
    return String.valueOf(raw.getFileName()).replace(".raw.csv", "");
  }

  @Test
  void confirm_enrolledKey_asksNoMore() throws Exception {
    AuditLab lab = copy();
    String first = lab.register(AuditLab.RIG).fingerprint();
    Register second = Register.enrol(lab.lab(), AuditLab.RIG, lab.keys(), RecordTamperings.later());
    assertThat(ids(lab.audit())).contains("key-enrolled");
    Set<String> both = Set.of(first, second.fingerprint());
    assertThat(ids(lab.audit(Scope.ARCHIVE, both, List.of()))).containsExactly("shared-behind");
  }

  @Test
  void correct_measurementInTableAndSummary_isANoteOnly() throws Exception {
    AuditLab lab = copy();
    edit(
        lab.root().resolve("specimens.csv"),
        t -> t.replaceFirst("(RA-S-07-1,.*)100\\.2", "$1101.2"));
    assertThat(ids(lab.audit())).containsExactly("specimen-changed");
    int code =
        Platenwire.commandLine()
            .execute(
                "reduce",
                lab.raw(0).toString(),
                "--correct",
                "diameter_1_mm=101.2",
                "--who",
                "M. K.",
                "--why",
                "misread",
                "--keys",
                lab.keyFolder().toString());
    assertThat(code).isZero();
    AuditReport report = lab.audit();
    assertThat(report.findings()).singleElement().satisfies(AuditTamperTest::assertCorrection);
  }

  private static void assertCorrection(Finding finding) {
    assertThat(finding.check().id()).isEqualTo("corrected");
    assertThat(finding.severity()).isEqualTo(Severity.NOTE);
    assertThat(finding.seen()).contains("M. K.", "misread", "diameter_1_mm 101.2");
    assertThat(finding.location().file()).endsWith(".summary-2.json");
  }

  @Test
  void audit_anyArchive_changesNoByteAndNoTime() throws Exception {
    AuditLab lab = copy();
    edit(lab.raw(1), t -> t.replaceFirst("\n9,", "\n9;"));
    Files.writeString(lab.raw(0).resolveSibling("x.txt"), "x");
    Map<String, String> before = state(lab.root());
    boolean readOnly = lab.root().toFile().setWritable(false);
    try {
      assertThat(lab.audit().findings()).isNotEmpty();
    } finally {
      assertThat(!readOnly || lab.root().toFile().setWritable(true)).isTrue();
    }
    assertThat(state(lab.root())).isEqualTo(before);
  }

  private static Map<String, String> state(Path root) throws Exception {
    Map<String, String> state = new TreeMap<>();
    try (Stream<Path> files = Files.walk(root)) {
      for (Path file : (Iterable<Path>) files::iterator) {
        String digest = Files.isRegularFile(file) ? Digests.sha256Hex(file) : "folder";
        state.put(file.toString(), digest + " " + Files.getLastModifiedTime(file));
      }
    }
    return state;
  }

  @Test
  void audit_manyThreadsOrOne_givesTheSameReport() throws Exception {
    AuditLab lab = copy();
    edit(lab.raw(0), t -> t.replaceFirst("\n9,", "\n9;"));
    edit(lab.summary(1), t -> t + " ");
    Files.delete(lab.summary(2));
    AuditReport once = lab.audit();
    assertThat(lab.audit()).isEqualTo(once);
    assertThat(once.findings()).isSortedAccordingTo(Finding.HEAVIEST_FIRST);
    assertThat(once.records().get(0).worst()).contains(Severity.FAULT);
  }

  @Test
  void scope_partOfAnArchive_looksAtThatPartOnly() throws Exception {
    AuditLab lab = copy();
    Files.delete(lab.summary(0));
    Files.delete(lab.raw(0));
    Path raw = lab.raw(0);
    LocalDate today = LocalDate.ofInstant(SystemClocks.wall().now(), ZoneOffset.UTC);
    Scope one = new Scope(List.of(raw), Optional.empty(), Optional.empty(), Set.of());
    Scope month = new Scope(List.of(raw.getParent()), Optional.empty(), Optional.empty(), Set.of());
    Scope longAgo =
        new Scope(List.of(), Optional.empty(), Optional.of(today.minusYears(1)), Set.of());
    Scope recent =
        new Scope(List.of(), Optional.of(today.minusDays(2)), Optional.of(today), Set.of());
    Scope series = new Scope(List.of(), Optional.empty(), Optional.empty(), Set.of("RA-S"));
    Scope none = new Scope(List.of(), Optional.empty(), Optional.empty(), Set.of("NA-T"));
    assertThat(lab.audit(one, Set.of(), List.of()).records()).hasSize(1);
    assertThat(lab.audit(month, Set.of(), List.of()).records()).hasSize(2);
    assertThat(lab.audit(longAgo, Set.of(), List.of()).records()).isEmpty();
    assertThat(lab.audit(series, Set.of(), List.of()).records()).hasSize(2);
    assertThat(lab.audit(none, Set.of(), List.of()).records()).isEmpty();
    assertThat(ids(lab.audit(recent, Set.of(), List.of()))).containsExactly("record-missing");
    assertThat(lab.audit(one, Set.of(), List.of()).findings()).isEmpty();
    assertThat(lab.audit(longAgo, Set.of(), List.of()).findings()).isEmpty();
    assertThat(lab.audit(series, Set.of(), List.of()).scope()).isEqualTo("series RA-S");
  }
}
