package io.github.platenwire.device;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.Chunk.Part;
import io.github.platenwire.port.Port;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import org.junit.jupiter.api.Test;

class AskingPortTest {
  private static final long MILLIS = 1_000_000;
  private static final DeviceDefinition DEVICE =
      Definitions.parse(
          """
          format = "platenwire-device 1"
          name = "box"
          title = "Box"
          kind = "asked-line"
          [ask]
          opening = ["*CLS"]
          identity = "*IDN?"
          command = "READ?"
          interval-ms = 200
          timeout-ms = 300
          [line]
          layout = "{load}"
          terminator = "LF"
          longest = 20
          [fields.load]
          kind = "number"
          unit = "N"
          """);

  private final Box box = new Box();
  private final Port port = open();

  private Port open() {
    try {
      return DEVICE
          .asking()
          .orElseThrow()
          .opener(
              () -> box,
              () -> box.nanos,
              (nanos, closing) -> {
                box.nanos += nanos;
                return false;
              })
          .open();
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private List<Chunk> readUntil(long nanos) throws IOException {
    List<Chunk> chunks = new ArrayList<>();
    while (box.nanos < nanos) {
      port.read().ifPresent(chunks::add);
    }
    return chunks;
  }

  private static List<String> texts(List<Chunk> chunks) {
    return chunks.stream()
        .map(c -> c.part() + " " + new String(c.bytes(), StandardCharsets.ISO_8859_1).strip())
        .toList();
  }

  @Test
  void read_deviceThatAnswers_isAskedEachInterval() throws IOException {
    box.answers("box 7\n", "1\n", "2\n", "3\n");
    assertThat(texts(readUntil(500 * MILLIS)))
        .containsExactly("IDENTITY box 7", "STREAM 1", "STREAM 2", "STREAM 3");
    assertThat(box.sent).containsExactly("*CLS", "*IDN?", "READ?", "READ?", "READ?");
    assertThat(box.sentNanos.get(3) - box.sentNanos.get(2)).isEqualTo(200 * MILLIS);
  }

  @Test
  void read_answerCutShort_isTornAndTheNextOneIsNot() throws IOException {
    box.answers("box\n", "12", "345\n");
    assertThat(texts(readUntil(800 * MILLIS)))
        .containsExactly("IDENTITY box", "TORN 12", "STREAM 345");
  }

  @Test
  void read_silence_asksAgainAfterTheTimeOut() throws IOException {
    box.answers("box\n", "", "", "5\n");
    List<Chunk> chunks = readUntil(1_500 * MILLIS);
    assertThat(texts(chunks)).containsExactly("IDENTITY box", "STREAM 5");
  }

  @Test
  void read_twoLinesForOne_keepsTheSecondAsStray() throws IOException {
    box.answers("box\n", "1\n9\n", "2\n");
    assertThat(texts(readUntil(300 * MILLIS)))
        .containsExactly("IDENTITY box", "STREAM 1", "STRAY 9", "STREAM 2");
  }

  @Test
  void read_flood_isTornAtTheLongest() throws IOException {
    box.answers("box\n", "9".repeat(5000));
    List<Chunk> chunks = readUntil(300 * MILLIS);
    int bytes = chunks.stream().skip(1).mapToInt(c -> c.bytes().length).sum();
    assertThat(bytes).isEqualTo(5000);
    assertThat(chunks).extracting(Chunk::part).contains(Part.TORN, Part.STRAY);
  }

  @Test
  void decode_strayLine_isGarbledNeverRead() {
    Frames frames = new Frames();
    FrameDecoder decoder = DEVICE.newDecoder();
    Decoding.accept(decoder, new Chunk(Frames.bytes("9\n"), 1, Part.STRAY), frames);
    Decoding.accept(decoder, new Chunk(Frames.bytes("12"), 2, Part.TORN), frames);
    assertThat(frames.found).containsExactly("9\n -> garbled", "12 -> garbled");
  }

  @Test
  void write_anything_isRefused() {
    assertThatThrownBy(() -> port.write(new byte[1]))
        .hasMessageContaining("only the definition's requests");
  }

  /** A device that answers each query with the next of its answers, at once. */
  private static final class Box implements Port {
    private final Queue<String> answers = new ArrayDeque<>();
    private final Queue<Chunk> waiting = new ArrayDeque<>();
    private final List<String> sent = new ArrayList<>();
    private final List<Long> sentNanos = new ArrayList<>();
    private long nanos;

    void answers(String... texts) {
      answers.addAll(List.of(texts));
    }

    @Override
    public String address() {
      return "box";
    }

    @Override
    public Optional<Chunk> read() {
      if (waiting.isEmpty()) {
        nanos += 100 * MILLIS;
      }
      return Optional.ofNullable(waiting.poll());
    }

    @Override
    public boolean hasBytes() {
      return !waiting.isEmpty();
    }

    @Override
    public void write(byte[] bytes) {
      String command = new String(bytes, StandardCharsets.ISO_8859_1).strip();
      sent.add(command);
      sentNanos.add(nanos);
      String answer = command.endsWith("?") ? answers.poll() : null;
      if (answer != null && !answer.isEmpty()) {
        waiting.add(new Chunk(answer.getBytes(StandardCharsets.ISO_8859_1), nanos));
      }
    }

    @Override
    public void close() {}
  }
}
