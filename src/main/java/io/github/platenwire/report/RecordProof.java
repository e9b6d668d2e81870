package io.github.platenwire.report;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.Register;
import io.github.platenwire.lab.RegisterCheck;
import io.github.platenwire.lab.RegisterLine;
import io.github.platenwire.record.Closing;
import io.github.platenwire.record.Digests;
import io.github.platenwire.record.StoredSummary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What ties a report to its record: files, digests, the register's line and its witness. Immutable.
 *
 * @param setting the lab
 * @param raw the raw file
 * @param summary what its summary tells
 * @param summarySha256 digest of the summary as it is now
 * @param closing the raw file's end, with its digest as it is now
 * @param line the register's newest line of this test
 * @param findings what does not go together, in whole sentences
 */
record RecordProof(
    ReportSetting setting,
    Path raw,
    StoredSummary summary,
    String summarySha256,
    Optional<Closing> closing,
    Optional<RegisterLine> line,
    List<String> findings) {
  static RecordProof of(ReportSetting setting, Path raw, StoredSummary summary, RawScan scan)
      throws IOException, LabException {
    String digest = Digests.sha256Hex(Files.readAllBytes(summary.file()));
    Optional<Closing> closing = scan.end().closing();
    Optional<RegisterLine> line = line(setting.lab(), summary);
    List<String> findings = new ArrayList<>();
    if (closing.isEmpty()) {
      findings.add("The raw file was never closed: 'platenwire recover' does that.");
    } else if (!closing.get().fileSha256().equals(summary.raw().sha256())) {
      findings.add(
          "The raw file is not the one that the summary was made from: its SHA-256 is "
              + closing.get().fileSha256()
              + ". 'platenwire audit' tells more.");
    }
    if (line.isEmpty()) {
      findings.add("The register of " + summary.rig() + " has no line of this test.");
    } else if (!line.get().summarySha256().equals(digest)) {
      findings.add(
          "The summary is not the one that the register knows; its SHA-256 is " + digest + ".");
    }
    return new RecordProof(setting, raw, summary, digest, closing, line, List.copyOf(findings));
  }

  private static Optional<RegisterLine> line(LabFolder lab, StoredSummary summary)
      throws IOException, LabException {
    if (!Files.isRegularFile(Register.file(lab, summary.rig()))) {
      return Optional.empty();
    }
    return RegisterCheck.of(lab, summary.rig()).lines().stream()
        .filter(line -> line.test().equals(summary.test()))
        .reduce((before, after) -> after);
  }

  /** What is printed on paper. */
  Optional<String> witness() {
    return line.map(RegisterLine::witness);
  }

  void add(Page page) {
    Facts facts = new Facts();
    facts.add("Raw file", setting.link(raw));
    closing.ifPresent(
        end -> {
          facts.add("SHA-256 of the raw file", Inline.code(end.fileSha256()));
          facts.add("Rows", end.rows() + ", readings known to be lost: " + end.lost());
        });
    facts.add("Summary", setting.link(summary.file()));
    facts.add("SHA-256 of the summary", Inline.code(summarySha256));
    line.ifPresent(
        there -> {
          facts.add(
              "Register",
              setting
                  .link(Register.file(setting.lab(), summary.rig()))
                  .and(", line " + there.number() + " of " + there.time()));
          facts.add("Witness", Inline.strong(there.witness()));
        });
    facts.add("Compute it again", Inline.code("platenwire reduce " + summary.test()));
    page.section("Record").facts(facts);
    page.remark(
        "The witness is the head of the register when this test was entered. Written on paper, it"
            + " testifies later that neither this record nor any before it was changed since.");
  }
}
