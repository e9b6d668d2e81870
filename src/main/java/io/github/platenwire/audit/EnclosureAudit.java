package io.github.platenwire.audit;

import io.github.platenwire.record.Digests;
import io.github.platenwire.record.Enclosure;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Audits the files that one record's summaries enclose. Confined to one thread; used once. */
final class EnclosureAudit {
  private final Location record;
  private final Path raw;
  private final String test;
  private final Findings findings;
  private final Set<Enclosure> seen = new HashSet<>();

  EnclosureAudit(String file, Path raw, String test, Findings findings) {
    this.record = Location.of(file);
    this.raw = raw;
    this.test = test;
    this.findings = findings;
  }

  List<String> files(List<Enclosure> enclosures) {
    return enclosures.stream().map(Enclosure::file).toList();
  }

  /** Looks at the enclosures of one version; one that an earlier version names too only once. */
  void look(List<Enclosure> enclosures) {
    for (Enclosure enclosure : enclosures) {
      if (seen.add(enclosure)) {
        look(enclosure);
      }
    }
  }

  private void look(Enclosure enclosure) {
    if (!enclosure.isBeside(raw)) {
      elsewhere(enclosure.file());
      return;
    }
    try {
      Path kept = raw.resolveSibling(enclosure.file());
      if (Files.isSymbolicLink(kept)) {
        elsewhere(enclosure.file() + ", a link to a file elsewhere");
        return;
      }
      if (!Files.isRegularFile(kept, LinkOption.NOFOLLOW_LINKS)) {
        missing(enclosure, "no such file");
        return;
      }
      String sha256 = Digests.sha256Hex(kept);
      if (!sha256.equals(enclosure.sha256())) {
        findings.add(
            SummaryVersionCheck.ENCLOSURE_CHANGED,
            record,
            test,
            enclosure.file() + " with sha256=" + enclosure.sha256(),
            "sha256=" + sha256);
      }
    } catch (IOException e) {
      missing(enclosure, String.valueOf(e.getMessage()));
    }
  }

  private void elsewhere(String seenInstead) {
    findings.add(
        SummaryVersionCheck.ENCLOSURE_ELSEWHERE,
        record,
        test,
        "the name of a file beside the record, as the program gives it",
        seenInstead);
  }

  private void missing(Enclosure enclosure, String seenInstead) {
    findings.add(
        SummaryVersionCheck.ENCLOSURE_MISSING,
        record,
        test,
        enclosure.file() + " beside the record, as the summary says",
        seenInstead);
  }
}
