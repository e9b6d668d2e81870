package io.github.platenwire.record;

import io.github.platenwire.record.RawFileException.Damage;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
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

  private static final byte[] CHECK_MARK = "# check ".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] CLOSED_MARK = "# closed ".getBytes(StandardCharsets.US_ASCII);

  private final String name;
  private final LineSource source;
  private final RowParser parser = new RowParser();
  private final CarefulRowParser careful = new CarefulRowParser(this::wrong);
  private final RawHeader header;
  private long line;
  private long lastSeq;
  private long goodSeq;
  private long goodMicros;
  private int checkLines;
  private @Nullable Closing closing;
  private boolean sealBroken;
  private @Nullable RawFileEnd end;
  private GoodPrefix sealed;

  private RawFileReader(String name, InputStream in) throws IOException, RawFileException {
    this.name = name;
    this.source = new LineSource(in);
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
    InputStream in = Files.newInputStream(path);
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

  /** Bytes before the line in hand. */
  public long offset() {
    return source.offset();
  }

  /** How many rows were good so far. */
  public long goodRows() {
    return goodSeq;
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
    while (nextLine()) {
      if (closing != null) {
        throw wrong(
            Damage.SURPLUS, "nothing may follow the last line", "there is: " + source.text());
      }
      if (source.startsWith(CHECK_MARK)) {
        check(source.text());
        source.swallow();
        sealed = goodPrefix();
      } else if (source.startsWith(CLOSED_MARK)) {
        closed(source.text());
        source.swallow();
      } else {
        RawRow row = row();
        visitor.accept(row);
        goodSeq = row.seq();
        goodMicros = Math.max(goodMicros, row.elapsedMicros());
        source.swallow();
      }
    }
    RawFileEnd reached =
        new RawFileEnd(
            lastSeq, source.offset(), source.length(), Optional.ofNullable(closing), checkLines);
    end = reached;
    return reached;
  }

  /** How the file ends, once {@link #readRows} came so far. */
  public Optional<RawFileEnd> end() {
    return Optional.ofNullable(end);
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
    return new GoodPrefix(header, source.offset(), goodSeq, goodMicros, source.digestBefore());
  }

  private RawHeader readHeader() throws IOException, RawFileException {
    StringBuilder document = new StringBuilder();
    while (nextLine()) {
      String text = source.text();
      if (text.equals(RowText.COLUMNS)) {
        source.swallow();
        return parseHeader(document.toString());
      }
      if (!text.equals("#") && !text.startsWith("# ")) {
        throw wrong(
            Damage.HEAD,
            "a comment line or '" + RowText.COLUMNS + "' should stand here",
            "there is: " + text);
      }
      source.swallow();
      document.append(text.length() < 2 ? "" : text.substring(2)).append('\n');
    }
    throw wrong(
        Damage.HEAD, "the line '" + RowText.COLUMNS + "' should come", "the file ends before it");
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
    line++;
    return source.next();
  }

  private void check(String text) throws RawFileException {
    Matcher matcher = CHECK.matcher(text);
    if (!matcher.matches()) {
      throw wrong(Damage.LINE, "a check line reads '# check seq=… sha256=…'", "there is: " + text);
    }
    expectSeq(matcher.group(1));
    expectDigest(matcher.group(2));
    checkLines++;
  }

  private void closed(String text) throws RawFileException {
    Matcher matcher = CLOSED.matcher(text);
    if (!matcher.matches()) {
      throw wrong(
          Damage.LINE,
          "the last line reads '# closed seq=… ended=… reason=… rows=… lost=… sha256=…'",
          "there is: " + text);
    }
    expectSeq(matcher.group(1));
    expectDigest(matcher.group(6));
    CloseReason reason =
        CloseReason.ofWord(matcher.group(3))
            .orElseThrow(
                () ->
                    wrong(
                        Damage.LINE,
                        "the reason should be break, operator, range or interrupted",
                        "it is " + matcher.group(3)));
    closing =
        new Closing(
            lastSeq,
            instant(matcher.group(2)),
            reason,
            Long.parseLong(matcher.group(4)),
            Long.parseLong(matcher.group(5)),
            matcher.group(6),
            HexFormat.of().formatHex(source.digestWith().digest()));
  }

  private Instant instant(String text) throws RawFileException {
    try {
      return Instant.parse(text);
    } catch (DateTimeException e) {
      throw wrong(Damage.LINE, "ended should be a moment in UTC", "it is '" + text + "'");
    }
  }

  private void expectSeq(String seen) throws RawFileException {
    if (Long.parseLong(seen) != lastSeq) {
      throw wrong(Damage.SEQ, "seq should be " + lastSeq, "it is " + seen);
    }
  }

  private void expectDigest(String seen) throws RawFileException {
    String expected = HexFormat.of().formatHex(source.digestBefore().digest());
    if (!expected.equals(seen)) {
      sealBroken = true;
      throw wrong(
          Damage.SEAL, "the bytes before this line have sha256=" + expected, "it says " + seen);
    }
  }

  private RawRow row() throws RawFileException {
    RawRow plain = parser.parse(source.buffer(), source.start(), source.end(), lastSeq + 1, line);
    RawRow row = plain == null ? careful.parse(source.text(), lastSeq + 1, line) : plain;
    lastSeq = row.seq();
    return row;
  }

  private RawFileException wrong(Damage damage, String expected, String seen) {
    return new RawFileException(name, line, source.offset(), damage, expected, seen);
  }

  @Override
  public void close() throws IOException {
    source.close();
  }
}
