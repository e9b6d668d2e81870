package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.audit.Finding;
import io.github.platenwire.audit.Severity;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A bit flipped in a byte of a small archive, and a file cut at a byte: each is found. In the usual
 * run at every so many bytes from a seeded beginning; with {@code
 * -Dplatenwire.audit.every-byte=true} at every one.
 */
@Timeout(1800)
@TestInstance(Lifecycle.PER_CLASS)
class AuditFlipTest {
  private static final boolean EVERY_BYTE = Boolean.getBoolean("platenwire.audit.every-byte");
  private static final int STRIDE = EVERY_BYTE ? 1 : 211;
  private static final int ROWS = 40;
  private static final long SEED = 20261125;

  private AuditLab lab;
  private Set<Finding> usual;

  @BeforeAll
  void makeArchive(@TempDir Path temporary) throws Exception {
    lab = AuditLab.make(temporary.resolve("base")).cutToOneSmallRecord(ROWS);
    usual = Set.copyOf(lab.audit().findings());
    assertThat(usual)
        .as("an interrupted test has its doubts, but nothing is at fault")
        .noneMatch(finding -> finding.severity() == Severity.FAULT);
  }

  private void assertEachFlipIsFound(Path file) throws Exception {
    byte[] good = Files.readAllBytes(file);
    Random random = new Random(SEED);
    for (int at = random.nextInt(STRIDE); at < good.length; at += STRIDE) {
      byte[] bad = good.clone();
      int bit = random.nextInt(8);
      bad[at] ^= (byte) (1 << bit);
      Files.write(file, bad);
      assertFound(file.getFileName() + ", seed " + SEED + ", byte " + at + ", bit " + bit);
    }
    Files.write(file, good);
    assertThat(lab.audit().findings()).containsExactlyInAnyOrderElementsOf(usual);
  }

  private void assertEachCutIsFound(Path file) throws Exception {
    byte[] good = Files.readAllBytes(file);
    for (int end = new Random(SEED).nextInt(STRIDE); end < good.length; end += STRIDE) {
      Files.write(file, java.util.Arrays.copyOf(good, end));
      assertFound(file.getFileName() + " cut to " + end + " bytes");
    }
    Files.write(file, good);
  }

  private void assertFound(String what) throws Exception {
    List<Finding> findings = lab.audit().findings();
    Set<Finding> news = new HashSet<>(findings);
    news.removeAll(usual);
    assertThat(news).as(what).anyMatch(finding -> finding.severity() == Severity.FAULT);
  }

  @Test
  void flip_anyBitOfARawFile_isFound() throws Exception {
    assertEachFlipIsFound(lab.raw(0));
  }

  @Test
  void flip_anyBitOfASummary_isFound() throws Exception {
    assertEachFlipIsFound(lab.summary(0));
  }

  @Test
  void flip_anyBitOfARegister_isFound() throws Exception {
    AuditLab.deleteTree(lab.shared());
    assertEachFlipIsFoundWithoutTheCopy();
  }

  /** The shared copy would show it anyhow: the register must show it by itself. */
  private void assertEachFlipIsFoundWithoutTheCopy() throws Exception {
    Set<Finding> withCopy = usual;
    usual = Set.copyOf(lab.audit().findings());
    try {
      assertEachFlipIsFound(lab.registerFile());
    } finally {
      usual = withCopy;
      Files.createDirectory(lab.shared());
      lab.joinShared();
    }
  }

  @Test
  void cut_rawFileAtAnyByte_isFound() throws Exception {
    assertEachCutIsFound(lab.raw(0));
  }

  @Test
  void cut_summaryAtAnyByte_isFound() throws Exception {
    assertEachCutIsFound(lab.summary(0));
  }

  @Test
  void cut_registerAtAnyByte_isFound() throws Exception {
    assertEachCutIsFound(lab.registerFile());
  }
}
