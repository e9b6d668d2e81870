package io.github.platenwire.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.RawFileRecovery.Outcome;
import io.github.platenwire.record.RawFileRecovery.Recovered;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RawFileRecoveryTest {
  private static final Instant NOW = Instant.parse("2026-11-25T09:00:00Z");

  @TempDir Path folder;

  @Test
  void recover_cutAtEveryByte_keepsEveryWholeRowAndSetsTheRestAside() throws Exception {
    byte[] whole = sample();
    String text = new String(whole, StandardCharsets.UTF_8);
    int head = text.indexOf(RowText.COLUMNS) + RowText.COLUMNS.length() + 1;
    head = text.substring(0, head).getBytes(StandardCharsets.UTF_8).length;
    for (int cut = 0; cut < whole.length; cut++) {
      // Within the head every cut is alike: some are enough, and all of the last hundred.
      if (cut > head - 100 || cut % 97 == 0) {
        cutAt(cut, whole, head);
      }
    }
  }

  private void cutAt(int cut, byte[] whole, int head) throws Exception {
    Path raw = folder.resolve(cut + ".raw.csv");
    byte[] part = Arrays.copyOf(whole, cut);
    Files.write(raw, part);
    Recovered recovered = RawFileRecovery.recover(new DiskFolder(), raw, NOW);
    if (cut < head) {
      assertThat(recovered.outcome()).as("cut at %d", cut).isEqualTo(Outcome.SET_ASIDE);
      assertThat(raw).doesNotExist();
      assertThat(recovered.tornFile().orElseThrow()).hasBinaryContent(part);
      return;
    }
    assertThat(recovered.outcome()).as("cut at %d", cut).isEqualTo(Outcome.CLOSED);
    byte[] closed = Files.readAllBytes(raw);
    int kept = cut - (int) recovered.tornBytes();
    assertThat(Arrays.copyOf(closed, kept)).isEqualTo(Arrays.copyOf(part, kept));
    byte[] torn =
        recovered.tornFile().isPresent()
            ? Files.readAllBytes(recovered.tornFile().get())
            : new byte[0];
    assertThat(torn).isEqualTo(Arrays.copyOfRange(part, kept, cut));
    assertThat(new String(torn, StandardCharsets.ISO_8859_1)).doesNotContain("\n");
    assertClosed(raw, recovered.keptRows());
  }

  private static List<RawRow> assertClosed(Path raw, long keptRows) throws Exception {
    List<RawRow> rows = new ArrayList<>();
    try (RawFileReader reader = RawFileReader.open(raw)) {
      RawFileEnd end = reader.readRows(rows::add);
      assertThat(end.closing().orElseThrow().reason()).isEqualTo(CloseReason.INTERRUPTED);
      assertThat(end.tornBytes()).isZero();
    }
    RawRow last = rows.get(rows.size() - 1);
    assertThat(last.seq()).isEqualTo(keptRows + 1);
    assertThat(new String(last.received(), StandardCharsets.UTF_8)).startsWith("recovered at=");
    assertThat(RawFileRecovery.isClosed(raw)).isTrue();
    return rows;
  }

  @Test
  void recover_closedFile_touchesNothing() throws Exception {
    byte[] whole = sample();
    Path raw = folder.resolve("a.raw.csv");
    Files.write(raw, whole);
    assertThat(RawFileRecovery.recover(new DiskFolder(), raw, NOW).outcome())
        .isEqualTo(Outcome.WAS_CLOSED);
    assertThat(raw).hasBinaryContent(whole);
  }

  @Test
  void recover_closedButDamaged_isRefusedAndUntouched() throws Exception {
    byte[] bad = sample();
    String text = new String(bad, StandardCharsets.UTF_8);
    bad[text.substring(0, text.indexOf("12345 lbf")).getBytes(StandardCharsets.UTF_8).length]++;
    Path raw = folder.resolve("a.raw.csv");
    Files.write(raw, bad);
    assertThatThrownBy(() -> RawFileRecovery.recover(new DiskFolder(), raw, NOW))
        .isInstanceOf(RawFileException.class);
    assertThat(raw).hasBinaryContent(bad);
  }

  @Test
  void recover_somethingAfterTheLastLine_isRefusedAndUntouched() throws Exception {
    byte[] whole = sample();
    Path raw = folder.resolve("a.raw.csv");
    for (String more : List.of("x", "x\n", "7,1,load,,,ok\n")) {
      byte[] bad = Arrays.copyOf(whole, whole.length + more.length());
      System.arraycopy(more.getBytes(StandardCharsets.UTF_8), 0, bad, whole.length, more.length());
      Files.write(raw, bad);
      assertThatThrownBy(() -> RawFileRecovery.recover(new DiskFolder(), raw, NOW))
          .isInstanceOf(RawFileException.class);
      assertThat(raw).hasBinaryContent(bad);
    }
  }

  /** A power cut can leave a file longer than what was written, with zeros in it. */
  @Test
  void recover_zerosAfterTheRows_areSetAside() throws Exception {
    byte[] rows = unclosedSample();
    byte[] longer = Arrays.copyOf(rows, rows.length + 500);
    longer[rows.length + 200] = '\n';
    Path raw = folder.resolve("a.raw.csv");
    Files.write(raw, longer);
    Recovered recovered = RawFileRecovery.recover(new DiskFolder(), raw, NOW);
    assertThat(recovered.tornBytes()).isEqualTo(500);
    assertClosed(raw, 6);
  }

  @Test
  void recover_sealThatDoesNotAgree_keepsUpToTheSealBefore() throws Exception {
    byte[] rows = unclosedSample();
    String text = new String(rows, StandardCharsets.UTF_8);
    int second = text.indexOf("# check", text.indexOf("# check") + 5);
    assertThat(second).isPositive();
    int changed = text.indexOf("0.3", text.indexOf("# check"));
    rows[text.substring(0, changed).getBytes(StandardCharsets.UTF_8).length + 2]++;
    Path raw = folder.resolve("a.raw.csv");
    Files.write(raw, rows);
    Recovered recovered = RawFileRecovery.recover(new DiskFolder(), raw, NOW);
    assertThat(recovered.keptRows()).isEqualTo(3);
    assertClosed(raw, 3);
    assertThat(Files.readString(recovered.tornFile().orElseThrow())).contains("# check");
  }

  /** Interrupted at every write and every force, then done again. */
  @Test
  void recover_interruptedAnywhere_canBeDoneAgain() throws Exception {
    byte[] rows = unclosedSample();
    byte[] torn = Arrays.copyOf(rows, rows.length - 7);
    boolean failed = true;
    for (int step = 0; failed; step++) {
      for (int bytes : new int[] {0, 1, 40}) {
        Path raw = folder.resolve(step + "-" + bytes + ".raw.csv");
        Files.write(raw, torn);
        failed = false;
        try {
          RawFileRecovery.recover(new Interrupted(step, bytes), raw, NOW);
        } catch (IOException e) {
          failed = true;
        }
        if (failed) {
          RawFileRecovery.recover(new DiskFolder(), raw, NOW);
        }
        List<RawRow> read = new ArrayList<>();
        try (RawFileReader reader = RawFileReader.open(raw)) {
          RawFileEnd end = reader.readRows(read::add);
          assertThat(end.closing().orElseThrow().reason()).isEqualTo(CloseReason.INTERRUPTED);
        }
        assertThat(read).filteredOn(row -> !row.isEvent()).hasSize(4);
        byte[] closed = Files.readAllBytes(raw);
        Path first = raw.resolveSibling(raw.getFileName() + ".torn");
        int kept = torn.length - (int) Files.size(first);
        assertThat(Arrays.copyOf(closed, kept)).isEqualTo(Arrays.copyOf(torn, kept));
        assertThat(first).hasBinaryContent(Arrays.copyOfRange(torn, kept, torn.length));
      }
    }
  }

  /** Dies at a numbered write or force after some bytes of it, without tidying up. */
  private static final class Interrupted implements RecordFolder {
    private final DiskFolder real = new DiskFolder();
    private int left;
    private final int bytes;

    Interrupted(int left, int bytes) {
      this.left = left;
      this.bytes = bytes;
    }

    @Override
    public RecordFile create(Path path) throws IOException {
      return real.create(path);
    }

    @Override
    public boolean freeReserve(Path beside) {
      return false;
    }

    @Override
    public RecordFile reopen(Path path, long length) throws IOException {
      die();
      RecordFile file = real.reopen(path, length);
      return new RecordFile() {
        @Override
        public int write(ByteBuffer buffer) throws IOException {
          if (left == 0) {
            int taken = Math.min(bytes, buffer.remaining());
            file.write(buffer.slice(buffer.position(), taken));
          }
          die();
          return file.write(buffer);
        }

        @Override
        public void force() throws IOException {
          die();
          file.force();
        }

        @Override
        public void truncate(long to) throws IOException {
          throw new IOException("dead");
        }

        @Override
        public void close() throws IOException {
          file.close();
        }
      };
    }

    private void die() throws IOException {
      if (left-- <= 0) {
        throw new IOException("dead");
      }
    }
  }

  private byte[] unclosedSample() throws IOException {
    byte[] whole = sample();
    String text = new String(whole, StandardCharsets.ISO_8859_1);
    return Arrays.copyOf(whole, text.indexOf("# closed"));
  }

  private byte[] sample() throws IOException {
    Path path = folder.resolve("sample.raw.csv");
    Files.deleteIfExists(path);
    try (RawFileWriter writer = RawFileWriter.create(new DiskFolder(), path, Samples.header())) {
      writer.event(0, "start");
      byte[] frame = "+0012345 lbf".getBytes(StandardCharsets.US_ASCII);
      writer.reading(10_000, 0, frame, 0, frame.length, 12345, Quality.OK);
      byte[] noise = {0, '#', ',', '"', '\\', (byte) 0xFF};
      writer.reading(20_000, 0, noise, 0, 6, Double.NaN, Quality.GARBLED);
      writer.check();
      byte[] spaced = " 0.3".getBytes(StandardCharsets.US_ASCII);
      writer.reading(30_000, 1, spaced, 0, spaced.length, 0.1 + 0.2, Quality.OK);
      writer.late(1_500_000, 1);
      writer.event(1_500_000, "note é");
      writer.check();
      writer.finish(CloseReason.OPERATOR, Instant.parse("2026-11-25T07:17:00Z"), 0);
    }
    return Files.readAllBytes(path);
  }
}
