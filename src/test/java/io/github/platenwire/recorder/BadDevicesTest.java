package io.github.platenwire.recorder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.emulate.PseudoTerminal;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.RawRow;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Devices that misbehave, on a pseudo-terminal and recorded by the real path. */
@Timeout(90)
@EnabledOnOs({OS.LINUX, OS.MAC})
class BadDevicesTest {
  private static final String LINE = "signed-line-kn";
  private static final String QUERY = "query-line-n";
  private static final String BINARY = "binary-load";
  private static final String REGISTERS = "registers-load";

  /** 1234.5 N as each kind sends it. */
  private static final byte[] LINE_FRAME = text("+  1.2345 kN\r\n");

  private static final byte[] ANSWER = text("+1.23450E+03\n");
  private static final byte[] BINARY_FRAME = HexFormat.of().parseHex("02003930000097");
  private static final byte[] REGISTER_ANSWER = HexFormat.of().parseHex("110404303900003548");

  @TempDir Path folder;
  private DeviceBench bench;
  private PseudoTerminal line;

  private static byte[] text(String ascii) {
    return ascii.getBytes(StandardCharsets.US_ASCII);
  }

  @BeforeEach
  void openLine() throws Exception {
    bench = new DeviceBench();
    line = bench.line();
  }

  @AfterEach
  void closeLine() {
    bench.close();
  }

  /** What a device does until its line is closed. */
  @FunctionalInterface
  private interface Device {
    void run() throws IOException;
  }

  private void start(Device device) {
    Thread thread =
        new Thread(
            () -> {
              try {
                device.run();
              } catch (IOException lineClosed) {
                assertThat(lineClosed).hasMessageContaining("closed");
              }
            },
            "bad-device");
    thread.setDaemon(true);
    thread.start();
  }

  private void write(byte[] bytes) throws IOException {
    line.write(bytes, 0, bytes.length);
  }

  /** A device that answers each request, by how many requests there were before. */
  @FunctionalInterface
  private interface Answers {
    void answer(int before, byte[] request) throws IOException;
  }

  /** Requests end with LF, or have eight bytes. */
  private void answering(boolean modbus, Answers answers) {
    AtomicInteger asked = new AtomicInteger();
    start(
        () -> {
          byte[] buffer = new byte[256];
          byte[] held = new byte[0];
          while (true) {
            int got = Math.max(0, line.read(buffer));
            held = Arrays.copyOf(held, held.length + got);
            System.arraycopy(buffer, 0, held, held.length - got, got);
            int end = modbus ? (held.length >= 8 ? 8 : 0) : endOfLine(held);
            while (end > 0) {
              byte[] request = Arrays.copyOf(held, end);
              held = Arrays.copyOfRange(held, end, held.length);
              boolean counts =
                  modbus || new String(request, StandardCharsets.US_ASCII).contains("READ?");
              if (counts) {
                answers.answer(asked.getAndIncrement(), request);
              }
              end = modbus ? (held.length >= 8 ? 8 : 0) : endOfLine(held);
            }
          }
        });
  }

  private static int endOfLine(byte[] bytes) {
    for (int i = 0; i < bytes.length; i++) {
      if (bytes[i] == '\n') {
        return i + 1;
      }
    }
    return 0;
  }

  private List<RawRow> recorded(String definition, int readings, Runnable running)
      throws Exception {
    bench.channel("load", line, definition, 0);
    Path file = folder.resolve("bad.raw.csv");
    RecordedTest recorded =
        bench.record(file, progress -> progress.readings() >= readings, running);
    assertThat(recorded.failure()).isEmpty();
    return DeviceBench.rows(file, "load");
  }

  private static void assertGood(List<RawRow> rows, int least) {
    List<RawRow> good = rows.stream().filter(row -> row.quality() == Quality.OK).toList();
    assertThat(good).hasSizeGreaterThanOrEqualTo(least);
    assertThat(good).allMatch(row -> row.value() == 1234.5);
  }

  private static long garbled(List<RawRow> rows) {
    return rows.stream().filter(row -> row.quality() == Quality.GARBLED).count();
  }

  private static String shipped(String name) throws Exception {
    return DeviceBench.shipped(name).replaceFirst("timeout-ms = \\d+", "timeout-ms = 1000");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({LINE, BINARY})
  void flood_unaskedDeviceAsFastAsTheLineTakes_everyFrameIsKept(String name) throws Exception {
    byte[] frame = name.equals(LINE) ? LINE_FRAME : BINARY_FRAME;
    byte[] thousand = new byte[1000 * frame.length];
    for (int i = 0; i < 1000; i++) {
      System.arraycopy(frame, 0, thousand, i * frame.length, frame.length);
    }
    Runnable flood =
        () ->
            start(
                () -> {
                  for (int i = 0; i < 100; i++) {
                    write(thousand);
                  }
                });
    List<RawRow> rows = recorded(shipped(name), 100_000, flood);
    assertThat(rows).hasSize(100_000);
    assertGood(rows, 99_999);
    assertThat(garbled(rows)).isZero();
  }

  @Test
  void flood_deviceThatIsAskedSpeaksWithoutPause_isMarkedAndNothingIsTakenForAnAnswer()
      throws Exception {
    byte[] hundred = text("+9.99990E+09\n".repeat(100));
    List<RawRow> rows =
        recorded(
            shipped(QUERY),
            200,
            () ->
                start(
                    () -> {
                      while (true) {
                        write(hundred);
                      }
                    }));
    assertThat(garbled(rows)).isGreaterThan(100);
    assertThat(rows).allMatch(row -> row.received().length <= 1024);
    assertThat(rows)
        .extracting(RawRow::quality)
        .as("one that came in between a request and its answer is doubtful at most")
        .isSubsetOf(Quality.GARBLED, Quality.SUSPECT);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({LINE, BINARY})
  void stall_unaskedDeviceInMidFrame_silenceIsSaidAndTheFrameIsWholeAfterwards(String name)
      throws Exception {
    byte[] frame = name.equals(LINE) ? LINE_FRAME : BINARY_FRAME;
    bench.channel("load", line, shipped(name), 0);
    Path file = folder.resolve("bad.raw.csv");
    bench.record(
        file,
        progress ->
            goOnWhenLate(progress, frame, name.equals(LINE) ? 2 : 1) && progress.readings() >= 6,
        () ->
            start(
                () -> {
                  write(frame);
                  write(frame);
                  line.write(frame, 0, 4);
                }));
    List<RawRow> rows = DeviceBench.rows(file, "load");
    assertThat(rows)
        .extracting(RawRow::quality)
        .contains(Quality.LATE)
        .doesNotContain(Quality.GARBLED);
    assertGood(rows, 4);
  }

  private boolean wentOn;

  /** Sends the rest of the frame, and three more, as soon as the silence is in the record. */
  private boolean goOnWhenLate(Progress progress, byte[] frame, int marked) {
    if (!wentOn && progress.marked() >= marked) {
      wentOn = true;
      start(
          () -> {
            line.write(frame, 4, frame.length - 4);
            for (int i = 0; i < 3; i++) {
              write(frame);
            }
          });
    }
    return wentOn;
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({QUERY, REGISTERS})
  void stall_deviceThatIsAskedInMidAnswer_thePieceIsGarbledAndTheNextAnswerGood(String name)
      throws Exception {
    boolean modbus = name.equals(REGISTERS);
    byte[] answer = modbus ? REGISTER_ANSWER : ANSWER;
    List<RawRow> rows =
        recorded(
            shipped(name),
            12,
            () ->
                answering(
                    modbus,
                    (before, request) -> line.write(answer, 0, before == 3 ? 5 : answer.length)));
    assertGood(rows, 8);
    List<RawRow> torn = rows.stream().filter(row -> row.quality() == Quality.GARBLED).toList();
    assertThat(torn).hasSize(1);
    assertThat(torn.get(0).received()).isEqualTo(Arrays.copyOf(answer, 5));
  }

  /** The rest of a late answer comes after the time-out: it must not pass for the next one. */
  @ParameterizedTest(name = "{0}")
  @CsvSource({QUERY, REGISTERS})
  void stall_restOfTheAnswerComesTooLate_isMarkedAndTheNextAnswerGood(String name)
      throws Exception {
    boolean modbus = name.equals(REGISTERS);
    byte[] answer = modbus ? REGISTER_ANSWER : ANSWER;
    bench.channel("load", line, shipped(name), 0);
    Path file = folder.resolve("bad.raw.csv");
    bench.record(
        file,
        progress -> {
          if (!wentOn && progress.marked() >= (modbus ? 1 : 2)) {
            wentOn = true;
            start(() -> line.write(answer, 5, answer.length - 5));
          }
          return progress.readings() >= 10;
        },
        () ->
            answering(
                modbus,
                (before, request) -> line.write(answer, 0, before == 3 ? 5 : answer.length)));
    List<RawRow> rows = DeviceBench.rows(file, "load");
    assertGood(rows, 5);
    assertThat(garbled(rows)).isBetween(1L, 2L);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({QUERY, REGISTERS})
  void echo_deviceSendsEachRequestBack_noEchoIsTakenForAReading(String name) throws Exception {
    boolean modbus = name.equals(REGISTERS);
    byte[] answer = modbus ? REGISTER_ANSWER : ANSWER;
    List<RawRow> rows =
        recorded(
            shipped(name),
            12,
            () ->
                answering(
                    modbus,
                    (before, request) -> {
                      write(request);
                      write(answer);
                    }));
    assertThat(garbled(rows)).isPositive();
    assertThat(rows)
        .filteredOn(row -> row.quality() == Quality.OK || row.quality() == Quality.SUSPECT)
        .allMatch(row -> row.value() == 1234.5);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({LINE, BINARY, QUERY, REGISTERS})
  void noise_nulAndEightBitBytesBetweenFrames_soundFramesAreRead(String name) throws Exception {
    boolean asked = name.equals(QUERY) || name.equals(REGISTERS);
    byte[] frame =
        switch (name) {
          case LINE -> LINE_FRAME;
          case BINARY -> BINARY_FRAME;
          case QUERY -> ANSWER;
          default -> REGISTER_ANSWER;
        };
    Random random = new Random(20261125);
    Answers noisy =
        (before, request) -> {
          if (before % 3 == 2) {
            write(noise(name, random));
          }
          write(frame);
        };
    Runnable device =
        asked
            ? () -> answering(name.equals(REGISTERS), noisy)
            : () ->
                start(
                    () -> {
                      for (int i = 0; i < 60; i++) {
                        noisy.answer(i, new byte[0]);
                      }
                    });
    List<RawRow> rows = recorded(shipped(name), asked ? 30 : 60, device);
    assertGood(rows, asked ? 8 : 15);
    assertThat(garbled(rows)).isPositive();
    assertThat(rows)
        .filteredOn(row -> row.quality() == Quality.OK)
        .allMatch(row -> row.value() == 1234.5);
  }

  /** NUL, bytes above 127, and for lines their end: what stood before it is then a line. */
  private static byte[] noise(String name, Random random) {
    byte[] noise = new byte[9];
    for (int i = 0; i < noise.length; i++) {
      noise[i] = (byte) (i % 3 == 0 ? 0 : 0x80 + random.nextInt(0x80));
    }
    if (name.equals(LINE)) {
      noise[7] = '\r';
      noise[8] = '\n';
    }
    return noise;
  }

  /** 1 lbf = 4.4482216152605 N: NIST SP 811, appendix B.8. */
  @Test
  void unit_changedInMidTest_valueIsConvertedAndTheLineKept() throws Exception {
    List<RawRow> rows =
        recorded(
            shipped(LINE),
            4,
            () ->
                start(
                    () -> {
                      write(text("+  1.2345 kN\r\n+  1.2345 kN\r\n"));
                      write(text("+  100.00 lbf\r\n+  1234.5 N\r\n"));
                    }));
    assertThat(rows.get(1).value()).isEqualTo(1234.5);
    assertThat(rows.get(2).value()).isCloseTo(444.82216152605, within(1e-9));
    assertThat(rows.get(2).received()).asString(StandardCharsets.US_ASCII).endsWith("lbf");
    assertThat(rows.get(3).value()).isEqualTo(1234.5);
    assertThat(rows.subList(1, 4)).allMatch(row -> row.quality() == Quality.OK);
  }

  @Test
  void unit_changedToOneThatIsNotDefined_isGarbledAndLeftOut() throws Exception {
    List<RawRow> rows =
        recorded(
            shipped(LINE),
            4,
            () ->
                start(
                    () ->
                        write(
                            text(
                                "+  1.2345 kN\r\n+  1.2345 kN\r\n+  126.0 kgf\r\n+  1.2345 kN\r\n"))));
    assertThat(rows.get(2).quality()).isEqualTo(Quality.GARBLED);
    assertThat(rows.get(2).value()).isNaN();
    assertGood(rows, 2);
  }
}
