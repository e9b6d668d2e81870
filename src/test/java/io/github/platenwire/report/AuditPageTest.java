package io.github.platenwire.report;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.audit.AuditReport;
import io.github.platenwire.audit.AuditReport.RecordSeen;
import io.github.platenwire.audit.AuditReport.RegisterSeen;
import io.github.platenwire.audit.Check;
import io.github.platenwire.audit.Checks;
import io.github.platenwire.audit.Finding;
import io.github.platenwire.audit.Location;
import io.github.platenwire.audit.Severity;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.quantity.UnitSystem;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** The page of an audit of an invented archive of four months. */
class AuditPageTest {
  private static final ZoneId ZONE = ZoneId.of("Europe/Vienna");
  private static final Instant MADE = Instant.parse("2026-11-25T15:04:05Z");

  @TempDir private Path folder;

  /** Tests on most workdays, findings of each weight on a few of them. */
  private static AuditReport report(Severity... weights) {
    Random random = new Random(3);
    List<RecordSeen> records = new ArrayList<>();
    List<Finding> findings = new ArrayList<>();
    LocalDate day = LocalDate.of(2026, 8, 10);
    for (; day.isBefore(LocalDate.of(2026, 11, 25)); day = day.plusDays(1)) {
      int tests = day.getDayOfWeek().getValue() > 5 ? 0 : random.nextInt(5);
      for (int test = 1; test <= tests; test++) {
        Instant start = day.atTime(8 + test, 12).atZone(ZONE).toInstant();
        String id = day.toString().replace("-", "") + "T0" + (7 + test) + "1200Z_RA-S-07-" + test;
        String file = "records/" + day.toString().substring(0, 7) + "/" + id + ".raw.csv";
        Optional<Severity> worst =
            weights.length > 0 && random.nextInt(12) == 0
                ? Optional.of(weights[random.nextInt(weights.length)])
                : Optional.empty();
        worst.ifPresent(severity -> findings.add(finding(severity, file, id, findings.size())));
        records.add(
            new RecordSeen(
                id,
                file,
                Optional.of(start),
                Optional.of(start.plusSeconds(95)),
                Optional.of("frame-1"),
                Optional.of("RA-S-07-" + test),
                Optional.of("RA-S"),
                4400 + 10 * test,
                worst));
      }
    }
    return new AuditReport(
        "Alder Weir lab",
        ZONE,
        "the whole archive",
        MADE,
        "platenwire 0.1",
        2L * records.size() + 9,
        4400L * records.size(),
        251_000L * records.size(),
        records,
        List.of(
            new RegisterSeen("frame-1", records.size(), Optional.of("55a1c60f2be94d37")),
            new RegisterSeen("beam-frame", 0, Optional.empty())),
        findings);
  }

  private static Finding finding(Severity severity, String file, String test, int number) {
    List<Check> checks = Checks.all().stream().filter(c -> c.severity() == severity).toList();
    Check check = checks.get(number % Math.min(3, checks.size()));
    return new Finding(
        check,
        Location.of(file, 118 + number, 20_113 + 57L * number),
        Optional.of(test),
        "sha256=3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855e",
        "sha256=ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  }

  private Page page(AuditReport report) throws Exception {
    LabFolder lab =
        LabFolder.create(
            folder.resolve("lab"), LabTemplate.example("Alder Weir lab", ZONE, UnitSystem.SI));
    return AuditPage.of(new ReportSetting(lab, folder, "platenwire 0.1", MADE), report);
  }

  private static Document parsed(String xhtml) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    return factory
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(xhtml.getBytes(StandardCharsets.UTF_8)));
  }

  private static List<Element> elements(Document document, String name) {
    NodeList found = document.getElementsByTagName(name);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < found.getLength(); i++) {
      elements.add((Element) found.item(i));
    }
    return elements;
  }

  @Test
  void of_archiveWithFindings_marksEachDayAndLeadsToEachRecord() throws Exception {
    AuditReport report = report(Severity.values());
    String xhtml = page(report).xhtml();
    Document document = parsed(xhtml);
    long tests =
        elements(document, "span").stream()
            .filter(span -> span.getAttribute("class").equals("tests"))
            .mapToLong(span -> Long.parseLong(span.getTextContent()))
            .sum();
    assertThat(tests).isEqualTo(report.records().size());
    List<String> ids =
        elements(document, "span").stream()
            .map(span -> span.getAttribute("id"))
            .filter(id -> id.startsWith("day-"))
            .toList();
    assertThat(ids).isNotEmpty().doesNotHaveDuplicates();
    List<String> targets =
        elements(document, "a").stream().map(link -> link.getAttribute("href")).toList();
    assertThat(targets.stream().filter(t -> t.startsWith("#day-")).map(t -> t.substring(1)))
        .as("each marked day leads to a place on the page")
        .containsExactlyInAnyOrderElementsOf(ids);
    for (Finding finding : report.findings()) {
      assertThat(targets).contains("lab/" + finding.location().file());
      assertThat(xhtml).contains("line " + finding.location().line().orElseThrow());
    }
    assertThat(xhtml).contains("55a1c60f2be94d37", "What to do:", "no line yet");
  }

  @Test
  void of_calendar_hasEveryDayOfEachMonthOnce() throws Exception {
    Document document = parsed(page(report()).xhtml());
    List<Element> months =
        elements(document, "table").stream()
            .filter(table -> table.getAttribute("class").equals("month"))
            .toList();
    assertThat(months)
        .extracting(table -> table.getElementsByTagName("th").item(0).getTextContent())
        .containsExactly("August 2026", "September 2026", "October 2026", "November 2026");
    assertThat(
            elements(document, "td").stream()
                .filter(cell -> cell.getAttribute("class").startsWith("day")))
        .hasSize(31 + 30 + 31 + 30);
    // 10 August 2026 is a Monday (from memory): two rows of headings and two weeks come before it
    Element monday = (Element) months.get(0).getElementsByTagName("tr").item(4);
    assertThat(monday.getElementsByTagName("td").item(0).getTextContent()).startsWith("10");
  }

  @Test
  void of_cleanArchive_saysSoAndMarksNoDay() throws Exception {
    String xhtml = page(report()).xhtml();
    assertThat(xhtml).contains("Nothing was found").doesNotContain("#day-", "What to do:");
  }

  @Test
  void of_emptyArchive_isStillAPage() throws Exception {
    AuditReport empty =
        new AuditReport("L", ZONE, "nothing", MADE, "p", 0, 0, 0, List.of(), List.of(), List.of());
    String xhtml = page(empty).xhtml();
    assertThat(xhtml).contains("none with a start").doesNotContain("class=\"month\"");
    parsed(xhtml);
  }

  @Test
  void of_wordsWithMarkup_areEscaped() throws Exception {
    Finding hostile =
        new Finding(
            Checks.all().get(0),
            Location.of("records/<b>&.raw.csv"),
            Optional.of("<script>"),
            "a < b",
            "\"quoted\" & more");
    AuditReport report =
        new AuditReport(
            "<Lab>", ZONE, "s", MADE, "p", 1, 1, 1, List.of(), List.of(), List.of(hostile));
    String xhtml = page(report).xhtml();
    parsed(xhtml);
    assertThat(xhtml).doesNotContain("<script>", "<Lab>");
  }
}
