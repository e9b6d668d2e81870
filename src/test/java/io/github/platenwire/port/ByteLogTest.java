package io.github.platenwire.port;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@Timeout(20)
class ByteLogTest {
  private static final long ORIGIN_NANOS = -7_000;
  private static final long OPENED_NANOS = 1_000_000_000;

  @TempDir Path folder;

  private static Chunk chunk(String text, long arrivalNanos) {
    return new Chunk(text.getBytes(StandardCharsets.ISO_8859_1), arrivalNanos);
  }

  private static void write(Path file, List<Chunk> chunks) throws IOException {
    try (ByteLogWriter log = ByteLogWriter.create(file, ORIGIN_NANOS)) {
      for (Chunk chunk : chunks) {
        log.append(chunk);
      }
    }
  }

  private static List<Chunk> readAll(Port port) throws IOException {
    List<Chunk> chunks = new ArrayList<>();
    while (true) {
      try {
        port.read().ifPresent(chunks::add);
      } catch (LinkLostException e) {
        assertThat(e).hasMessageContaining("come to its end");
        return chunks;
      }
    }
  }

  private Path log(String text) throws IOException {
    return Files.writeString(folder.resolve("log.bytes"), text);
  }

  @Test
  void append_chunks_linesOfPlainText() throws IOException {
    Path file = folder.resolve("log.bytes");

    write(
        file,
        List.of(
            chunk("\u0002+1 kN\r\n", ORIGIN_NANOS),
            chunk("# \\ 5", ORIGIN_NANOS + 1_234_567),
            chunk("\u00ff", ORIGIN_NANOS + 1_234_999)));

    assertThat(Files.readString(file, StandardCharsets.US_ASCII))
        .isEqualTo(
            """
            # platenwire-bytes 1
            0 \\x02+1 kN\\x0D\\x0A
            1234 \\x23 \\\\ 5
            1234 \\xFF
            """);
  }

  @Property(tries = 200)
  void replay_ofWritten_givesSameBytesAtSameMicroseconds(
      @ForAll @Size(max = 20) List<@Size(min = 1, max = 300) byte[]> parts,
      @ForAll @LongRange(min = 0, max = 10_000_000_000L) long gapNanos)
      throws IOException {
    List<Chunk> chunks = new ArrayList<>();
    for (byte[] part : parts) {
      chunks.add(new Chunk(part, ORIGIN_NANOS + gapNanos * chunks.size()));
    }
    Path file = Files.createTempFile("log", ".bytes");
    Files.delete(file);
    try {
      write(file, chunks);
      try (Port port = ReplayPort.open(file, ReplayPort.Pace.AT_ONCE, () -> OPENED_NANOS)) {
        List<Chunk> played = readAll(port);
        assertThat(played).extracting(Chunk::bytes).containsExactlyElementsOf(parts);
        for (int i = 0; i < played.size(); i++) {
          assertThat(played.get(i).arrivalNanos())
              .isEqualTo(OPENED_NANOS + gapNanos * i / 1_000 * 1_000);
        }
      }
    } finally {
      Files.delete(file);
    }
  }

  @Test
  void append_muchLongerThanBefore_keptWhole() throws IOException {
    Path file = folder.resolve("log.bytes");
    byte[] big = new byte[1 << 16];
    Arrays.fill(big, (byte) 0xE9);

    write(file, List.of(chunk("a", 0), new Chunk(big, 1)));

    try (Port port = ReplayPort.open(file, ReplayPort.Pace.AT_ONCE, () -> OPENED_NANOS)) {
      assertThat(readAll(port)).extracting(Chunk::bytes).containsExactly(new byte[] {'a'}, big);
    }
  }

  @Test
  void append_olderOrEmptyChunk_refused() throws IOException {
    try (ByteLogWriter log = ByteLogWriter.create(folder.resolve("log.bytes"), 100)) {
      assertThatThrownBy(() -> log.append(chunk("a", 99)))
          .isInstanceOf(IllegalArgumentException.class);
      assertThatThrownBy(() -> log.append(chunk("", 100)))
          .isInstanceOf(IllegalArgumentException.class);
      log.append(chunk("a", 200));
      assertThatThrownBy(() -> log.append(chunk("b", 199)))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("lastNanos=200");
    }
  }

  @Test
  void create_fileExists_leavesItAlone() throws IOException {
    Path file = log("mine");

    assertThatThrownBy(() -> ByteLogWriter.create(file, 0))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(file).hasContent("mine");
  }

  @Test
  void flush_beforeClose_readerSeesTheChunk() throws IOException {
    Path file = folder.resolve("log.bytes");
    try (ByteLogWriter log = ByteLogWriter.create(file, 0)) {
      log.append(chunk("a", 0));
      log.flush();

      assertThat(file).hasContent("# platenwire-bytes 1\n0 a");
    }
  }

  @Test
  void replay_commentsBetween_arePassedOver() throws IOException {
    Path file = log("# platenwire-bytes 1\n# from the frame\n5 a\n#\n6 b\n");

    try (Port port = ReplayPort.open(file, ReplayPort.Pace.AT_ONCE, () -> 0)) {
      assertThat(readAll(port)).extracting(Chunk::arrivalNanos).containsExactly(5_000L, 6_000L);
    }
  }

  @Test
  void replay_asRecorded_waitsForTheClock() throws IOException {
    Path file = log("# platenwire-bytes 1\n0 a\n2000000 b\n");
    AtomicLong clock = new AtomicLong(OPENED_NANOS);
    try (Port port = ReplayPort.open(file, ReplayPort.Pace.AS_RECORDED, clock::get)) {
      assertThat(port.read()).isPresent();
      assertThat(port.read()).isEmpty();
      clock.set(OPENED_NANOS + 1_999_999_999);
      assertThat(port.read()).isEmpty();
      clock.set(OPENED_NANOS + 2_000_000_000);

      Optional<Chunk> late = port.read();

      assertThat(late.orElseThrow().bytes()).containsExactly('b');
      assertThat(late.orElseThrow().arrivalNanos()).isEqualTo(OPENED_NANOS + 2_000_000_000);
    }
  }

  @Test
  void close_thenRead_saysWhoClosed() throws IOException {
    Port port =
        ReplayPort.open(log("# platenwire-bytes 1\n0 a\n"), ReplayPort.Pace.AT_ONCE, () -> 0);
    port.close();
    port.close();

    assertThatThrownBy(port::read)
        .isInstanceOf(LinkLostException.class)
        .hasMessageContaining("closed by this program");
  }

  @Test
  void opener_playedToItsEnd_isNotPlayedAgain() throws IOException {
    Path file = log("# platenwire-bytes 1\n0 a\n");
    PortOpener opener =
        Ports.opener(PortAddress.parse("replay:" + file), LineSettings.COMMON, () -> OPENED_NANOS);
    try (Port port = opener.open()) {
      assertThat(readAll(port)).hasSize(1);
      assertThatThrownBy(() -> port.write(new byte[1])).isInstanceOf(IOException.class);
    }

    assertThatThrownBy(opener::open)
        .isInstanceOf(PortException.class)
        .hasMessageContaining("has been played to its end");
  }

  @Test
  void open_fileMissing_saysSo() {
    Path file = folder.resolve("none.bytes");

    assertThatThrownBy(() -> ReplayPort.open(file, ReplayPort.Pace.AT_ONCE, () -> 0))
        .isInstanceOfSatisfying(
            PortException.class,
            e -> assertThat(e.reason()).isEqualTo(PortException.Reason.MISSING))
        .hasMessageContaining(file + ": there is no such file");
  }

  /** In the texts ~ stands for a line end. */
  @ParameterizedTest
  @CsvSource({
    "'', 1, this is no byte log",
    "'0 a~', 1, this is no byte log",
    "'# platenwire-bytes 2~0 a~', 1, this is no byte log",
    "'# platenwire-bytes 1', 1, cut short",
    "'# platenwire-bytes 1~0 a~5 b', 3, cut short",
    "'# platenwire-bytes 1~0 a~~', 3, whole microseconds",
    "'# platenwire-bytes 1~a~', 2, whole microseconds",
    "'# platenwire-bytes 1~-1 a~', 2, whole microseconds",
    "'# platenwire-bytes 1~1.5 a~', 2, whole microseconds",
    "'# platenwire-bytes 1~ 1 a~', 2, whole microseconds",
    "'# platenwire-bytes 1~12345678901234567890 a~', 2, whole microseconds",
    "'# platenwire-bytes 1~7 a~6 b~', 3, earlier than 7",
    "'# platenwire-bytes 1~7 ~', 2, no bytes after the time",
    "'# platenwire-bytes 1~7 a\\x0~', 2, 'in the bytes, character 2'",
    "'# platenwire-bytes 1~7 caf\u00e9~', 2, 'in the bytes, character 4'",
  })
  void open_faultyLog_namesFileAndLine(String text, int line, String said) throws IOException {
    Path file = log(text.replace('~', '\n'));

    assertThatThrownBy(() -> ReplayPort.open(file, ReplayPort.Pace.AT_ONCE, () -> 0))
        .isInstanceOfSatisfying(
            PortException.class,
            e -> assertThat(e.reason()).isEqualTo(PortException.Reason.UNUSABLE))
        .hasMessageContaining(file + ":" + line + ": ")
        .hasMessageContaining(said);
  }
}
