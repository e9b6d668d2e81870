package io.github.platenwire.record;

import io.github.platenwire.reading.EscapedBytes;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.toml.TomlException;
import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads one raw file from front to back, strictly: every row is in its place, every check line
 * agrees with the bytes before it. A torn last line is no error; it is reported. Reads only. Not
 * thread-safe; made for one file and used once.
 *
 * <p>The format is told column by column in {@code src/docs/raw-format.md}.
 */
public final class RawFileReader implements AutoCloseable {
  private static final Pattern CHECK =
      Pattern.compile("# check seq=(\\d{1,18}) sha256=([0-9a-f]{64})");
  private static final Pattern CLOSED =
      Pattern.compile(
          "# closed seq=(\\d{1,18}) ended=(\\S+) reason=([a-z]+) rows=(\\d{1,18}) lost=(\\d{1,18})"
              + " sha256=([0-9a-f]{64})");

  private final String name;
  private final InputStream in;
  private final MessageDigest digest = Digests.sha256();
  private final ByteArrayOutputStream lineBytes = new ByteArrayOutputStream(256);
  private final RawHeader header;
  private long line;
  private long wholeBytes;
  private long lastSeq;
  private long goodSeq;
  private long goodMicros;
  private int checkLines;
  private @Nullable Closing closing;
  private boolean sealBroken;
  private GoodPrefix sealed;

  private RawFileReader(String name, InputStream in) throws IOException, RawFileException {
    this.name = name;
    this.in = in;
    this.header = readHeader();
    this.sealed = goodPrefix();
  }

  /**
   * Opens a raw file and reads its head.
   *
   * @throws IOException if the file cannot be read
   * @throws RawFileException if its head is not as the format says
   */
  public static RawFileReader open(Path path) throws IOException, RawFileException {
    InputStream in = new BufferedInputStream(Files.newInputStream(path), 1 << 16);
    try {
      return new RawFileReader(path.getFileName().toString(), in);
    } catch (IOException | RawFileException | RuntimeException e) {
      in.close();
      throw e;
    }
  }

  /** The file's head. */
  public RawHeader header() {
    return header;
  }

  /**
   * Reads all rows.
   *
   * @param visitor given each row in file order
   * @return how the file ends
   * @throws IOException if the file cannot be read on
   * @throws RawFileException at the first line that is not as the format says
   */
  public RawFileEnd readRows(Consumer<RawRow> visitor) throws IOException, RawFileException {
    while (true) {
      boolean whole = nextLine();
      if (!whole) {
        return new RawFileEnd(
            lastSeq, wholeBytes, lineBytes.size(), Optional.ofNullable(closing), checkLines);
      }
      String text = lineBytes.toString(StandardCharsets.UTF_8);
      if (closing != null) {
        throw wrong("nothing may follow the last line, but there is: " + text);
      }
      if (text.startsWith("# check ")) {
        check(text);
      } else if (text.startsWith("# closed ")) {
        closed(text);
      } else {
        RawRow row = row(text);
        visitor.accept(row);
        goodSeq = row.seq();
        goodMicros = Math.max(goodMicros, row.elapsedMicros());
      }
      swallowLine();
      if (text.startsWith("# check ")) {
        sealed = goodPrefix();
      }
    }
  }

  /** Whether the line that closes a record was met. */
  boolean sawLastLine() {
    return closing != null;
  }

  /**
   * What can be kept of the file, as far as {@link #readRows} came: everything before the line it
   * stopped at; where that was a seal that did not agree, everything up to the seal before.
   */
  GoodPrefix kept() {
    return sealBroken ? sealed : goodPrefix();
  }

  private GoodPrefix goodPrefix() {
    return new GoodPrefix(header, wholeBytes, goodSeq, goodMicros, Digests.copyOf(digest));
  }

  private RawHeader readHeader() throws IOException, RawFileException {
    StringBuilder document = new StringBuilder();
    while (nextLine()) {
      String text = lineBytes.toString(StandardCharsets.UTF_8);
      swallowLine();
      if (text.equals(RowText.COLUMNS)) {
        return parseHeader(document.toString());
      }
      if (!text.equals("#") && !text.startsWith("# ")) {
        throw wrong(
            "a comment line or '" + RowText.COLUMNS + "' should stand here, but there is: " + text);
      }
      document.append(text.length() < 2 ? "" : text.substring(2)).append('\n');
    }
    throw wrong("the file ends before the line '" + RowText.COLUMNS + "'");
  }

  private RawHeader parseHeader(String document) throws RawFileException {
    String text = document.endsWith("\n") ? document.substring(0, document.length() - 1) : document;
    try {
      return HeaderParser.parse(text, name);
    } catch (TomlException e) {
      throw new RawFileException(name, e.line(), "the head cannot be read: " + e.getMessage());
    }
  }

  /** Reads up to the next line feed; false if the file ends before one. */
  private boolean nextLine() throws IOException {
    lineBytes.reset();
    int b = in.read();
    while (b >= 0 && b != '\n') {
      lineBytes.write(b);
      b = in.read();
    }
    line++;
    return b == '\n';
  }

  private void swallowLine() {
    byte[] bytes = lineBytes.toByteArray();
    digest.update(bytes);
    digest.update((byte) '\n');
    wholeBytes += bytes.length + 1L;
  }

  private void check(String text) throws RawFileException {
    Matcher matcher = CHECK.matcher(text);
    if (!matcher.matches()) {
      throw wrong("a check line reads '# check seq=… sha256=…', but there is: " + text);
    }
    expectSeq(matcher.group(1));
    expectDigest(matcher.group(2));
    checkLines++;
  }

  private void closed(String text) throws RawFileException {
    Matcher matcher = CLOSED.matcher(text);
    if (!matcher.matches()) {
      throw wrong(
          "the last line reads '# closed seq=… ended=… reason=… rows=… lost=… sha256=…', but there is: "
              + text);
    }
    expectSeq(matcher.group(1));
    expectDigest(matcher.group(6));
    CloseReason reason =
        CloseReason.ofWord(matcher.group(3))
            .orElseThrow(() -> wrong("no such reason: " + matcher.group(3)));
    closing =
        new Closing(
            lastSeq,
            instant(matcher.group(2)),
            reason,
            Long.parseLong(matcher.group(4)),
            Long.parseLong(matcher.group(5)),
            matcher.group(6),
            digestWith(text));
  }

  private String digestWith(String text) {
    MessageDigest whole = Digests.copyOf(digest);
    whole.update((text + "\n").getBytes(StandardCharsets.UTF_8));
    return HexFormat.of().formatHex(whole.digest());
  }

  private Instant instant(String text) throws RawFileException {
    try {
      return Instant.parse(text);
    } catch (DateTimeException e) {
      throw wrong("'" + text + "' is no moment in UTC");
    }
  }

  private void expectSeq(String seen) throws RawFileException {
    if (Long.parseLong(seen) != lastSeq) {
      throw wrong("seq should be " + lastSeq + ", but it is " + seen);
    }
  }

  private void expectDigest(String seen) throws RawFileException {
    String expected = Digests.hexSoFar(digest);
    if (!expected.equals(seen)) {
      sealBroken = true;
      throw wrong("the bytes before this line have sha256=" + expected + ", but it says " + seen);
    }
  }

  private RawRow row(String text) throws RawFileException {
    String[] columns = RowSplitter.split(text);
    if (columns.length != 6) {
      throw wrong("a row has 6 columns, but there are " + columns.length + ": " + text);
    }
    long seq = whole(columns[0], "seq");
    if (seq != lastSeq + 1) {
      throw wrong("seq should be " + (lastSeq + 1) + ", but it is " + seq);
    }
    lastSeq = seq;
    return new RawRow(
        seq,
        whole(columns[1], "elapsed_us"),
        columns[2],
        received(columns[3]),
        value(columns[4]),
        Quality.ofWord(columns[5]).orElseThrow(() -> wrong("no such quality: " + columns[5])),
        line);
  }

  private long whole(String text, String column) throws RawFileException {
    try {
      return Long.parseLong(text);
    } catch (NumberFormatException e) {
      throw wrong(column + " should be a whole number, but it is '" + text + "'");
    }
  }

  private double value(String text) throws RawFileException {
    try {
      return text.isEmpty() ? Double.NaN : Double.parseDouble(text);
    } catch (NumberFormatException e) {
      throw wrong("value should be a number, but it is '" + text + "'");
    }
  }

  private byte[] received(String text) throws RawFileException {
    try {
      return EscapedBytes.decode(text);
    } catch (IllegalArgumentException e) {
      throw wrong("received cannot be read: " + e.getMessage());
    }
  }

  private RawFileException wrong(String problem) {
    return new RawFileException(name, line, problem);
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
