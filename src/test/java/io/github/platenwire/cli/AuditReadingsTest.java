package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.audit.AuditReport;
import io.github.platenwire.audit.Finding;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Records whose readings were not measured on their specimen, in an archive of honest ones. */
@Timeout(300)
class AuditReadingsTest {
  private static final Pattern READING =
      Pattern.compile("(?m)^(\\d+,)(\\d+)(,load,)[^,]* kN,[^,]+,ok$");
  private static final Pattern VALUE = Pattern.compile(",([^,]+),ok$");

  @TempDir private static Path folder;
  private static AuditLab honest;

  @BeforeAll
  static void makeArchive() throws Exception {
    honest = AuditLab.make(folder.resolve("honest"));
  }

  private static AuditLab copy(String name) throws Exception {
    return honest.copyTo(folder.resolve(name));
  }

  private static List<Finding> of(AuditReport report, String check) {
    return report.findings().stream().filter(f -> f.check().id().equals(check)).toList();
  }

  /** Passes the first record's readings off as a test of the second specimen. */
  private static void reuse(AuditLab lab, double load, double time) throws Exception {
    Path victim = lab.raw(0);
    Path forged = lab.raw(1);
    String text = Files.readString(victim);
    String head = Files.readString(forged);
    String rows = text.substring(text.indexOf("\nseq,"));
    Files.writeString(forged, head.substring(0, head.indexOf("\nseq,")) + rows);
    AuditLab.forge(
        forged, whole -> rewritten(whole, time, micros -> load * kilonewtons(whole, micros)));
  }

  private static String rewritten(String text, double time, DoubleUnaryOperator ofMicros) {
    return READING
        .matcher(text)
        .replaceAll(
            row -> {
              double micros = Double.parseDouble(row.group(2));
              double value = ofMicros.applyAsDouble(row.start());
              return row.group(1)
                  + Math.round(micros * time)
                  + row.group(3)
                  + String.format(Locale.ROOT, "%+08.2f kN,%s,ok", value, round(value));
            });
  }

  private static String round(double value) {
    return Double.toString(Math.rint(value * 100) / 100);
  }

  private static double kilonewtons(String text, double at) {
    int from = (int) at;
    String row = text.substring(from, text.indexOf('\n', from));
    MatchResult value = VALUE.matcher(row).results().findFirst().orElseThrow();
    return Double.parseDouble(value.group(1));
  }

  @Test
  void audit_honestArchive_findsNothing() throws Exception {
    assertThat(copy("clean").audit().findings()).isEmpty();
  }

  @Test
  void audit_traceUsedForAnotherSpecimen_namesBothRecords() throws Exception {
    AuditLab lab = copy("reused");
    reuse(lab, 1, 1);
    assertThat(of(lab.audit(), "reused-trace"))
        .singleElement()
        .satisfies(
            finding -> {
              assertThat(finding.location().file()).contains(lab.test(1));
              assertThat(finding.seen()).contains(lab.test(0));
              assertThat(finding.test()).contains(lab.test(1));
            });
  }

  @Test
  void audit_traceScaledInLoadAndTime_isFound() throws Exception {
    AuditLab lab = copy("scaled");
    reuse(lab, 0.963, 1.041);
    assertThat(of(lab.audit(), "reused-trace")).hasSize(1);
    assertThat(of(lab.audit(), "typed-readings")).isEmpty();
  }

  @Test
  void audit_computedReadings_areFound() throws Exception {
    AuditLab lab = copy("computed");
    AuditLab.forge(
        lab.raw(2),
        text -> {
          double rows = READING.matcher(text).results().count();
          int[] at = {0};
          return rewritten(
              text,
              1,
              place -> 198.4 * Math.min(1, at[0]++ / (0.8 * rows)) * (at[0] < 0.9 * rows ? 1 : 0));
        });
    assertThat(of(lab.audit(), "typed-readings"))
        .isNotEmpty()
        .allSatisfy(finding -> assertThat(finding.location().file()).contains(lab.test(2)));
  }

  @Test
  void html_page_isWrittenOnceAndLeadsToTheRecord() throws Exception {
    AuditLab lab = copy("page");
    reuse(lab, 1, 1);
    Path page = folder.resolve("audit.html");
    String[] command = {
      "audit", "--lab", lab.root().toString(), "--html", page.toString(), "--fail-on", "fault"
    };
    assertThat(Platenwire.commandLine().execute(command)).isEqualTo(ExitCode.NOT_MET);
    assertThat(Files.readString(page))
        .contains("href=\"page/records/", lab.test(1) + ".raw.csv", "class=\"month\"");
    assertThat(Platenwire.commandLine().execute(command)).isEqualTo(ExitCode.USAGE);
  }
}
