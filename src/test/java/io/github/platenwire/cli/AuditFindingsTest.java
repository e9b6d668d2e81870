package io.github.platenwire.cli;

import static io.github.platenwire.cli.AuditLab.edit;
import static io.github.platenwire.cli.AuditLab.forge;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.audit.AuditReport;
import io.github.platenwire.audit.Check;
import io.github.platenwire.audit.Checks;
import io.github.platenwire.audit.Finding;
import io.github.platenwire.audit.Scope;
import io.github.platenwire.audit.Severity;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.Register;
import io.github.platenwire.lab.RegisterLine;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Every check against an archive made by the real path and changed so that it must bite. */
@Timeout(300)
@TestInstance(Lifecycle.PER_CLASS)
class AuditFindingsTest {
  private static final Duration AN_HOUR = Duration.ofHours(1);

  /** Checks that look at the readings themselves are tested beside their detectors. */
  private static final Set<String> ELSEWHERE =
      Set.of(
          "reused-trace",
          "typed-readings",
          "enclosure-missing",
          "enclosure-changed",
          "enclosure-elsewhere",
          "enclosure-unnamed",
          "entry-corrected",
          "entry-time-backward",
          "entry-typed-late");

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

  /** Does something to an archive. */
  @FunctionalInterface
  interface Tampering {
    void on(AuditLab lab) throws Exception;
  }

  private static String id(Finding finding) {
    return finding.check().id();
  }

  @Test
  void audit_untouchedArchive_findsNothing() throws Exception {
    AuditReport report = base.audit();
    assertThat(report.findings()).isEmpty();
    assertThat(report.records()).hasSize(3).allMatch(record -> record.worst().isEmpty());
    assertThat(report.registers())
        .singleElement()
        .matches(register -> register.lines() == 3 && register.witness().isPresent());
    assertThat(report.rows()).isGreaterThan(10_000);
    assertThat(report.files()).isEqualTo(7);
  }

  @Test
  void table_ofThisTest_hasEveryCheck() throws Exception {
    Set<String> tested = new TreeSet<>(tamperings().keySet());
    tested.addAll(ELSEWHERE);
    assertThat(tested)
        .containsExactlyInAnyOrderElementsOf(Checks.all().stream().map(Check::id).toList());
  }

  @TestFactory
  Stream<DynamicTest> audit_tampered_findsIt() throws Exception {
    return tamperings().entrySet().stream()
        .map(
            entry ->
                DynamicTest.dynamicTest(
                    entry.getKey(), () -> assertFound(entry.getKey(), entry.getValue())));
  }

  private void assertFound(String id, Tampering tampering) throws Exception {
    AuditLab lab = copy();
    tampering.on(lab);
    AuditReport report = lab.audit();
    if (id.equals("key-not-confirmed")) {
      report = lab.audit(Scope.ARCHIVE, Set.of("0123456789abcdef"), List.of());
    }
    assertThat(report.findings()).as(id).extracting(AuditFindingsTest::id).contains(id);
    AuditLab.deleteTree(lab.root());
  }

  private Map<String, Tampering> tamperings() {
    Map<String, Tampering> all = new LinkedHashMap<>();
    rawFiles(all);
    summaries(all);
    registers(all);
    shared(all);
    RecordTamperings.method(all);
    RecordTamperings.links(all);
    RecordTamperings.calibrations(all);
    RecordTamperings.order(all);
    return all;
  }

  private static void rawFiles(Map<String, Tampering> all) {
    all.put(
        "unreadable",
        lab -> {
          Files.delete(lab.registerFile());
          Files.createDirectory(lab.registerFile());
        });
    all.put("head-damaged", lab -> edit(lab.raw(0), t -> t.replace("-raw 1\"", "-raw 9\"")));
    all.put("row-damaged", lab -> edit(lab.raw(0), t -> t.replaceFirst("\n9,", "\n9;")));
    all.put("row-missing", lab -> edit(lab.raw(0), t -> t.replaceFirst("\n100,[^\n]*", "")));
    all.put(
        "seal-broken", lab -> edit(lab.raw(0), t -> t.replaceFirst("(\n9,[0-9]+,)load", "$1lead")));
    all.put("after-the-end", lab -> edit(lab.raw(0), t -> t + "1,2,load,,,ok\n"));
    all.put("row-count", lab -> edit(lab.raw(0), t -> t.replaceFirst(" rows=\\d+ ", " rows=7 ")));
    all.put(
        "time-backward",
        lab -> forge(lab.raw(0), t -> t.replaceFirst("\n100,[0-9]+,", "\n100,1,")));
    all.put(
        "value-differs",
        lab -> forge(lab.raw(0), t -> t.replaceFirst("(\n100,.*),[0-9.]+,ok", "$1,999.5,ok")));
    all.put(
        "name-differs",
        lab -> {
          Files.move(lab.raw(0), lab.raw(0).resolveSibling("20260101T000000Z_RA-1.raw.csv"));
        });
    all.put(
        "duplicate-record",
        lab -> Files.copy(lab.raw(0), lab.raw(0).resolveSibling("20260101T000000Z_A.raw.csv")));
    all.put("not-recovered", lab -> edit(lab.raw(2), t -> t.substring(0, t.length() - 30)));
    all.put("interrupted", AuditFindingsTest::interrupt);
    all.put("torn-file", AuditFindingsTest::interrupt);
    all.put(
        "torn-file-differs",
        lab -> {
          interrupt(lab);
          edit(lab.raw(2).resolveSibling(lab.test(2) + ".raw.csv.torn"), t -> t + "x");
        });
    all.put(
        "foreign-file", lab -> Files.writeString(lab.raw(0).resolveSibling("thesis.txt"), "mine"));
  }

  /** Cuts the last test in the middle of a row, and recovers it. */
  private static void interrupt(AuditLab lab) throws Exception {
    Files.delete(lab.summary(2));
    edit(lab.registerFile(), t -> t.substring(0, t.lastIndexOf("{")));
    edit(lab.raw(2), t -> t.substring(0, t.indexOf("\n2000,") + 9));
    lab.recover();
  }

  private static void correct(AuditLab lab) throws Exception {
    int code =
        Platenwire.commandLine()
            .execute(
                "reduce",
                lab.raw(0).toString(),
                "--correct",
                "diameter_1_mm=101.25",
                "--who",
                "M. K.",
                "--why",
                "misread",
                "--keys",
                lab.keyFolder().toString());
    assertThat(code).isZero();
  }

  private static void summaries(Map<String, Tampering> all) {
    all.put("summary-unreadable", lab -> Files.writeString(lab.summary(0), "{}"));
    all.put(
        "summary-differs",
        lab -> edit(lab.summary(0), t -> t.replaceFirst("\"met\" : true", "\"met\" : false")));
    all.put("summary-changed", lab -> edit(lab.summary(0), t -> t + " "));
    all.put("summary-missing", lab -> Files.delete(lab.summary(0)));
    all.put("corrected", AuditFindingsTest::correct);
    all.put(
        "summary-unregistered",
        lab -> {
          String before = Files.readString(lab.registerFile());
          correct(lab);
          Files.writeString(lab.registerFile(), before);
        });
    all.put(
        "summary-alone",
        lab ->
            Files.copy(
                lab.summary(0), lab.summary(0).resolveSibling("20260101T000000Z_A.summary.json")));
    all.put(
        "versions-out-of-order",
        lab -> {
          correct(lab);
          Path second = LabFolder.newestSummaryOf(lab.raw(0)).orElseThrow();
          Files.move(second, second.resolveSibling(lab.test(0) + ".summary-3.json"));
        });
  }

  private static void registers(Map<String, Tampering> all) {
    all.put(
        "register-line-damaged", lab -> edit(lab.registerFile(), t -> t.replaceFirst("\"", "'")));
    all.put(
        "register-chain-broken",
        lab -> edit(lab.registerFile(), t -> t.substring(t.indexOf("\n") + 1)));
    all.put(
        "register-key-unknown",
        lab -> {
          Register other = lab.register("frame-9");
          assertThat(other.rig()).isEqualTo("frame-9");
          Path keys = lab.lab().keysFolder();
          Files.delete(keys.resolve("frame-1.pub"));
          Files.move(keys.resolve("frame-9.pub"), keys.resolve("frame-1.pub"));
        });
    all.put(
        "register-signature-wrong",
        lab -> edit(lab.registerFile(), AuditFindingsTest::otherSignature));
    all.put("register-torn", lab -> edit(lab.registerFile(), t -> t + "{\"format\""));
    all.put("key-unreadable", lab -> Files.delete(lab.lab().keysFolder().resolve("frame-1.pub")));
    all.put(
        "key-enrolled",
        lab -> Register.enrol(lab.lab(), AuditLab.RIG, lab.keys(), RecordTamperings.later()));
    all.put("key-not-confirmed", lab -> {});
    all.put("witness-unknown", RecordTamperings::signAnew);
    all.put("not-registered", AuditFindingsTest::cutRegister);
    all.put(
        "entered-afterwards",
        lab -> {
          cutRegister(lab);
          lab.recover();
        });
    all.put(
        "record-missing",
        lab -> {
          Files.delete(lab.summary(1));
          Files.delete(lab.raw(1));
        });
    all.put("record-changed", lab -> edit(lab.raw(0), t -> t.replace("operator = \"demo\"", "")));
    all.put("wrong-register", lab -> append(lab, "frame-9", Duration.ZERO));
    all.put("registered-twice", lab -> append(lab, AuditLab.RIG, Duration.ZERO));
    all.put("register-time-backward", lab -> append(lab, AuditLab.RIG, AN_HOUR.negated()));
  }

  /** Another digit, whichever stands there. */
  private static String otherSignature(String register) {
    int at = register.indexOf("signature\":\"") + "signature\":\"".length() + 9;
    char other = register.charAt(at) == '0' ? '1' : '0';
    return register.substring(0, at) + other + register.substring(at + 1);
  }

  private static void cutRegister(AuditLab lab) throws Exception {
    edit(lab.registerFile(), t -> t.substring(0, t.lastIndexOf("{")));
  }

  /** Writes a good line for the first test into a register. */
  private static void append(AuditLab lab, String rig, Duration later) throws Exception {
    Register register =
        Register.open(lab.lab(), rig, lab.keys(), () -> RecordTamperings.later().now().plus(later));
    try (Register.Entry entry = register.begin()) {
      entry.append(RegisterLine.Kind.CLOSE, lab.test(0), "0".repeat(64), "0".repeat(64));
    }
  }

  private static void shared(Map<String, Tampering> all) {
    all.put("shared-unreachable", lab -> AuditLab.deleteTree(lab.shared()));
    all.put(
        "shared-behind",
        lab ->
            edit(lab.shared().resolve("frame-1.jsonl"), t -> t.substring(0, t.lastIndexOf("{"))));
    all.put("shared-ahead", AuditFindingsTest::cutRegister);
    all.put(
        "shared-differs",
        lab -> edit(lab.shared().resolve("frame-1.jsonl"), t -> t.replace("close", "clone")));
  }

  @Test
  void findings_ofATamperedRow_nameFileLineOffsetAndTest() throws Exception {
    AuditLab lab = copy();
    edit(lab.raw(1), t -> t.replaceFirst("\n9,", "\n9;"));
    String text = Files.readString(lab.raw(1), StandardCharsets.ISO_8859_1);
    int at = text.indexOf("\n9;") + 1;
    Finding finding =
        lab.audit().findings().stream()
            .filter(one -> id(one).equals("row-damaged"))
            .findFirst()
            .orElseThrow();
    assertThat(finding.location().file())
        .isEqualTo(lab.root().relativize(lab.raw(1)).toString().replace('\\', '/'));
    assertThat(finding.location().offset()).hasValue(at);
    assertThat(finding.location().line())
        .hasValue(text.substring(0, at).chars().filter(c -> c == '\n').count() + 1);
    assertThat(finding.test()).contains(lab.test(1));
    assertThat(finding.severity()).isEqualTo(Severity.FAULT);
  }
}
