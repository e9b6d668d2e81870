package io.github.platenwire.cli;

import io.github.platenwire.audit.AuditReport;
import io.github.platenwire.audit.Finding;
import java.io.IOException;
import java.util.OptionalLong;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** The findings of an audit as a table for a spreadsheet, one row each. Stateless. */
final class AuditCsv {
  private static final CSVFormat FORMAT =
      CSVFormat.DEFAULT
          .builder()
          .setHeader(
              "severity", "check", "file", "line", "offset", "test", "expected", "seen", "advice")
          .setRecordSeparator("\n")
          .get();

  private AuditCsv() {}

  static String text(AuditReport report) throws IOException {
    StringBuilder text = new StringBuilder();
    try (CSVPrinter printer = new CSVPrinter(text, FORMAT)) {
      for (Finding finding : report.findings()) {
        printer.printRecord(
            finding.severity().word(),
            finding.check().id(),
            finding.location().file(),
            number(finding.location().line()),
            number(finding.location().offset()),
            finding.test().orElse(""),
            finding.expected(),
            finding.seen(),
            finding.advice());
      }
    }
    return text.toString();
  }

  private static String number(OptionalLong number) {
    return number.isPresent() ? Long.toString(number.getAsLong()) : "";
  }
}
