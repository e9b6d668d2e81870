package io.github.platenwire.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.platenwire.audit.AuditReport;
import io.github.platenwire.audit.AuditReport.RecordSeen;
import io.github.platenwire.audit.Finding;
import io.github.platenwire.audit.Severity;

/** An audit as JSON, told in {@code src/docs/audit.md}. Stateless. */
final class AuditJson {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private AuditJson() {}

  static String text(AuditReport report) throws JsonProcessingException {
    ObjectNode root = MAPPER.createObjectNode();
    root.put("format", "platenwire-audit 1");
    root.put("lab", report.lab());
    root.put("scope", report.scope());
    root.put("made", report.made().toString());
    root.put("program", report.program());
    root.put("files", report.files()).put("rows", report.rows()).put("bytes", report.bytes());
    report.from().ifPresent(from -> root.put("from", from.toString()));
    report.to().ifPresent(to -> root.put("to", to.toString()));
    ObjectNode counts = root.putObject("counts");
    for (Severity severity : Severity.values()) {
      counts.put(severity.word(), report.count(severity));
    }
    registers(root.putArray("registers"), report);
    ArrayNode records = root.putArray("records");
    report.records().forEach(record -> record(records.addObject(), record));
    ArrayNode findings = root.putArray("findings");
    report.findings().forEach(finding -> finding(findings.addObject(), finding));
    return MAPPER
        .writer()
        .with(JsonWriteFeature.ESCAPE_NON_ASCII)
        .withDefaultPrettyPrinter()
        .writeValueAsString(root);
  }

  private static void registers(ArrayNode array, AuditReport report) {
    for (AuditReport.RegisterSeen register : report.registers()) {
      ObjectNode node = array.addObject().put("rig", register.rig()).put("lines", register.lines());
      register.witness().ifPresent(witness -> node.put("witness", witness));
    }
  }

  private static void record(ObjectNode node, RecordSeen record) {
    node.put("test", record.test()).put("file", record.file()).put("rows", record.rows());
    record.start().ifPresent(start -> node.put("start", start.toString()));
    record.ended().ifPresent(ended -> node.put("ended", ended.toString()));
    record.rig().ifPresent(rig -> node.put("rig", rig));
    record.specimen().ifPresent(specimen -> node.put("specimen", specimen));
    record.series().ifPresent(series -> node.put("series", series));
    record.worst().ifPresent(worst -> node.put("worst", worst.word()));
  }

  private static void finding(ObjectNode node, Finding finding) {
    node.put("severity", finding.severity().word());
    node.put("check", finding.check().id());
    node.put("file", finding.location().file());
    finding.location().line().ifPresent(line -> node.put("line", line));
    finding.location().offset().ifPresent(offset -> node.put("offset", offset));
    finding.test().ifPresent(test -> node.put("test", test));
    node.put("meaning", finding.check().meaning());
    node.put("expected", finding.expected());
    node.put("seen", finding.seen());
    node.put("advice", finding.advice());
  }
}
