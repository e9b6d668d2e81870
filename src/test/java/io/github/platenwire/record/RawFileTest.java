package io.github.platenwire.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.reading.Quality;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RawFileTest {
  private static final Instant ENDED = Instant.parse("2026-11-25T07:17:00Z");

  @TempDir Path folder;

  @Test
  void readRows_closedFile_givesBackWhatWasWritten() throws Exception {
    Path path = folder.resolve("a.raw.csv");
    Closing closing = writeSample(path);
    List<RawRow> rows = new ArrayList<>();
    try (RawFileReader reader = RawFileReader.open(path)) {
      assertThat(reader.header()).isEqualTo(Samples.header());
      RawFileEnd end = reader.readRows(rows::add);
      assertThat(end.closing()).contains(closing);
      assertThat(end.tornBytes()).isZero();
      assertThat(end.checkLines()).isEqualTo(1);
    }
    assertThat(rows).extracting(RawRow::seq).containsExactly(1L, 2L, 3L, 4L, 5L, 6L);
    assertThat(rows.get(0).isEvent()).isTrue();
    assertThat(text(rows.get(0))).isEqualTo("start");
    assertThat(text(rows.get(1))).isEqualTo("+0012345 lbf");
    assertThat(rows.get(1).value()).isEqualTo(12345.0);
    assertThat(rows.get(2).received()).containsExactly(0, '#', ',', '"', '\\', 0xFF);
    assertThat(rows.get(2).value()).isNaN();
    assertThat(rows.get(2).quality()).isEqualTo(Quality.GARBLED);
    assertThat(rows.get(3).value()).isEqualTo(0.1 + 0.2);
    assertThat(rows.get(4).quality()).isEqualTo(Quality.LATE);
    assertThat(closing.fileSha256()).isEqualTo(Digests.sha256Hex(Files.readAllBytes(path)));
  }

  @Test
  void checkLine_anyFile_isDigestOfEveryByteBeforeIt() throws Exception {
    Path path = folder.resolve("a.raw.csv");
    writeSample(path);
    byte[] bytes = Files.readAllBytes(path);
    String text = new String(bytes, StandardCharsets.UTF_8);
    for (String mark : List.of("# check ", "# closed ")) {
      int at = text.indexOf(mark);
      String line = text.substring(at, text.indexOf('\n', at));
      int bytesBefore = text.substring(0, at).getBytes(StandardCharsets.UTF_8).length;
      assertThat(line).endsWith("sha256=" + Digests.sha256Hex(Arrays.copyOf(bytes, bytesBefore)));
    }
  }

  @Test
  void parse_commonsCsv_seesTheSameColumns() throws Exception {
    Path path = folder.resolve("a.raw.csv");
    writeSample(path);
    CSVFormat format =
        CSVFormat.RFC4180
            .builder()
            .setCommentMarker('#')
            .setHeader()
            .setSkipHeaderRecord(true)
            .get();
    List<CSVRecord> records = format.parse(new StringReader(Files.readString(path))).getRecords();
    assertThat(records).hasSize(6);
    assertThat(records.get(1).toMap())
        .containsEntry("seq", "2")
        .containsEntry("elapsed_us", "10000")
        .containsEntry("channel", "load")
        .containsEntry("received", "+0012345 lbf")
        .containsEntry("value", "12345")
        .containsEntry("quality", "ok");
    assertThat(records.get(2).get("received")).isEqualTo("\\x00\\x23,\"\\\\\\xFF");
  }

  @Test
  void create_existingFile_refusesAndLeavesIt() throws Exception {
    Path path = folder.resolve("a.raw.csv");
    Files.writeString(path, "mine");
    assertThatThrownBy(() -> RawFileWriter.create(new DiskFolder(), path, Samples.header()))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(path).hasContent("mine");
  }

  @Test
  void readRows_cutAtEveryByte_givesEveryWholeRowBefore() throws Exception {
    Path path = folder.resolve("a.raw.csv");
    writeSample(path);
    byte[] bytes = Files.readAllBytes(path);
    int rowsFrom = new String(bytes, StandardCharsets.UTF_8).indexOf(RowText.COLUMNS);
    rowsFrom =
        new String(bytes, StandardCharsets.UTF_8)
                .substring(0, rowsFrom)
                .getBytes(StandardCharsets.UTF_8)
                .length
            + RowText.COLUMNS.length()
            + 1;
    for (int cut = rowsFrom; cut < bytes.length; cut++) {
      Path torn = folder.resolve("torn");
      Files.write(torn, Arrays.copyOf(bytes, cut));
      try (RawFileReader reader = RawFileReader.open(torn)) {
        RawFileEnd end = reader.readRows(row -> {});
        assertThat(end.wholeBytes() + end.tornBytes()).isEqualTo(cut);
        assertThat(end.lastSeq()).isEqualTo(wholeRows(bytes, rowsFrom, cut));
        assertThat(end.closing()).isEmpty();
      }
    }
  }

  @Test
  void readRows_missingRow_namesTheLine() throws Exception {
    Path path = folder.resolve("a.raw.csv");
    writeSample(path);
    String text = Files.readString(path);
    Files.writeString(path, text.replaceFirst("\n2,[^\n]*", ""));
    try (RawFileReader reader = RawFileReader.open(path)) {
      assertThatThrownBy(() -> reader.readRows(row -> {}))
          .isInstanceOf(RawFileException.class)
          .hasMessageContaining("a.raw.csv:")
          .hasMessageContaining("seq should be 2, but it is 3");
    }
  }

  @Test
  void readRows_changedDigit_isFoundByTheNextCheckLine() throws Exception {
    Path path = folder.resolve("a.raw.csv");
    writeSample(path);
    Files.writeString(path, Files.readString(path).replace(",12345,", ",12346,"));
    try (RawFileReader reader = RawFileReader.open(path)) {
      assertThatThrownBy(() -> reader.readRows(row -> {}))
          .isInstanceOf(RawFileException.class)
          .hasMessageContaining("the bytes before this line have sha256=");
    }
  }

  @Property(tries = 2000)
  void row_anyDouble_readsBackAsTheSameDouble(@ForAll double value) {
    assertThat(Double.doubleToLongBits(writtenAndRead(value)))
        .isEqualTo(Double.doubleToLongBits(value));
  }

  @Property(tries = 2000)
  void row_anyShortDecimal_isWrittenPlain(@ForAll int thousandths) {
    double value = thousandths / 1000.0;
    String text = valueText(value);
    assertThat(text).doesNotContain("E");
    assertThat(Double.doubleToLongBits(Double.parseDouble(text)))
        .isEqualTo(Double.doubleToLongBits(value));
  }

  @Test
  void row_negativeZero_keepsItsSign() {
    assertThat(valueText(-0.0)).isEqualTo("-0");
  }

  private static double writtenAndRead(double value) {
    String text = valueText(value);
    return text.isEmpty() ? Double.NaN : Double.parseDouble(text);
  }

  private static String valueText(double value) {
    RowText rows = new RowText();
    rows.row(1, 0, new byte[] {'c'}, new byte[0], 0, 0, value, Quality.OK);
    String row = new String(rows.bytes(), 0, rows.length(), StandardCharsets.US_ASCII);
    return row.substring("1,0,c,,".length(), row.length() - ",ok\n".length());
  }

  private static Closing writeSample(Path path) throws IOException {
    try (RawFileWriter writer = RawFileWriter.create(new DiskFolder(), path, Samples.header())) {
      writer.event(0, "start");
      byte[] frame = "+0012345 lbf".getBytes(StandardCharsets.US_ASCII);
      writer.reading(10_000, 0, frame, 0, frame.length, 12345, Quality.OK);
      byte[] noise = {'x', 0, '#', ',', '"', '\\', (byte) 0xFF, 'y'};
      writer.reading(20_000, 0, noise, 1, 6, Double.NaN, Quality.GARBLED);
      writer.check();
      byte[] spaced = " 0.3".getBytes(StandardCharsets.US_ASCII);
      writer.reading(30_000, 1, spaced, 0, spaced.length, 0.1 + 0.2, Quality.OK);
      writer.late(1_500_000, 1);
      writer.event(1_500_000, "stop operator");
      return writer.finish(CloseReason.OPERATOR, ENDED, 0);
    }
  }

  private static String text(RawRow row) {
    return new String(row.received(), StandardCharsets.UTF_8);
  }

  private static long wholeRows(byte[] bytes, int from, int cut) {
    long rows = 0;
    for (int i = from; i < cut; i++) {
      int start = i;
      while (start > from && bytes[start - 1] != '\n') {
        start--;
      }
      if (bytes[i] == '\n' && bytes[start] != '#') {
        rows++;
      }
    }
    return rows;
  }
}
