package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.audit.AuditReport;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * False alarms are as bad as none: clean archives made by whole demos have no finding at all, not
 * even a note. Five seeds in the usual run; {@code -Dplatenwire.audit.demos=50} makes it fifty.
 */
@Timeout(1800)
class AuditCleanTest {
  private static final int DEMOS = Integer.getInteger("platenwire.audit.demos", 5);

  @TempDir private Path folder;

  @Test
  void audit_archivesOfSeededDemos_findsNothing() throws Exception {
    for (int seed = 1; seed <= DEMOS; seed++) {
      AuditLab lab = new AuditLab(folder.resolve("demo-" + seed), folder.resolve("keys"));
      int code =
          Platenwire.commandLine()
              .execute(
                  "demo",
                  "--seed",
                  String.valueOf(seed),
                  "--lab",
                  lab.root().toString(),
                  "--keys",
                  lab.keyFolder().toString());
      assertThat(code).as("demo of seed " + seed).isZero();
      AuditReport report = lab.audit();
      assertThat(report.findings()).as("seed " + seed).isEmpty();
      assertThat(report.records()).as("seed " + seed).hasSizeGreaterThanOrEqualTo(5);
      AuditLab.deleteTree(lab.root());
    }
  }
}
