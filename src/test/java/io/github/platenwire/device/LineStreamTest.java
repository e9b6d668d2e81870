package io.github.platenwire.device;

import static io.github.platenwire.device.Definitions.field;
import static io.github.platenwire.device.Definitions.line;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.reading.Quality;
import java.util.Locale;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LineStreamTest {
  private static final String LOAD =
      field("load", "number", "unit = 'lbf'; sign = 'required'; over = ['OL']");
  private static final String UNIT =
      field("unit", "unit", "spellings = { 'lbf' = 'lbf', 'kN' = 'kN' }");
  private static final DeviceDefinition SIGNED = line("{load} {unit}", LOAD + UNIT);
  private static final DeviceDefinition PLAIN =
      line("{load} {unit}", field("load", "number", "unit = 'lbf'") + UNIT);

  /** Torn start, good lines, noise, NUL, an over-long line, empty lines, a torn end. */
  private static final String STREAM =
      "45 lbf\r\n+1 lbf\r\n+2.5 kN\r\n\0\0\u00ff\u0080\r\n+3 lbf\r\n\r\n\r\n"
          + "+4\rlbf\r\n+5 lbf\n+6 lbf\r\n"
          + "9".repeat(39)
          + "\r\n"
          + "8".repeat(40)
          + "\r\n"
          + "7".repeat(41)
          + "\r\n"
          + "6".repeat(42)
          + "\r\r\n"
          + "5".repeat(200)
          + "\r\n+7 lbf\r\r\n+8 lbf\r\nOL kN\r\n-9 l";

  private static Frames split(DeviceDefinition definition, String stream, int... cuts) {
    FrameDecoder decoder = definition.newDecoder();
    Frames frames = new Frames();
    byte[] bytes = Frames.bytes(stream);
    int from = 0;
    for (int cut : cuts) {
      decoder.accept(bytes, from, cut - from, 0, frames);
      from = cut;
    }
    decoder.accept(bytes, from, bytes.length - from, 0, frames);
    decoder.cut(frames);
    return frames;
  }

  @Test
  void accept_hostileStream_resynchronisesAtEachTerminator() {
    assertThat(split(SIGNED, STREAM).found)
        .containsExactly(
            "45 lbf -> garbled",
            "+1 lbf -> 0: 1.0 lbf ok",
            "+2.5 kN -> 0: 2.5 kN ok",
            "\0\0\u00ff\u0080 -> garbled",
            "+3 lbf -> 0: 3.0 lbf ok",
            "+4\rlbf -> garbled",
            "+5 lbf\n+6 lbf -> garbled",
            "9".repeat(39) + " -> garbled",
            "8".repeat(40) + " -> garbled",
            "7".repeat(40) + " -> garbled",
            "6".repeat(40) + " -> garbled",
            "5".repeat(40) + " -> garbled",
            "+7 lbf\r -> garbled",
            "+8 lbf -> 0: 8.0 lbf ok",
            "OL kN -> 0: NaN kN over",
            "-9 l -> garbled");
  }

  @ParameterizedTest
  @ValueSource(strings = {"CRLF", "CR", "LF", "\\x03", "lbf\\x0D\\x0A", "\\x0D\\x0D\\x0A"})
  void accept_splitAnywhere_equalsTheWhole(String terminator) {
    String escaped = terminator.replace("lbf", "\\x6C\\x62\\x66");
    DeviceDefinition definition =
        Definitions.parse(Definitions.text("{load} {unit}", escaped, LOAD + UNIT));
    String stream = STREAM + "\u0003\r+1 lbf\u0003+2 lbf\u0003";
    Frames whole = split(definition, stream);
    assertThat(whole.found).isNotEmpty();
    int[] everyByte = new int[stream.length()];
    for (int cut = 0; cut < stream.length(); cut++) {
      everyByte[cut] = cut;
      assertThat(split(definition, stream, cut).found).isEqualTo(whole.found);
    }
    assertThat(split(definition, stream, everyByte).found).isEqualTo(whole.found);
  }

  @Test
  void accept_lineOverSeveralChunks_isStampedWithItsTerminator() {
    FrameDecoder decoder = SIGNED.newDecoder();
    Frames frames = new Frames();
    byte[] bytes = Frames.bytes("+1 lbf\r\n+2 lbf\r\n");
    decoder.accept(bytes, 0, 7, 100, frames);
    decoder.accept(bytes, 7, 0, 150, frames);
    assertThat(frames.found).isEmpty();
    decoder.accept(bytes, 7, 3, 200, frames);
    decoder.accept(bytes, 10, 6, 300, frames);
    assertThat(frames.arrivals).containsExactly(200L, 300L);
  }

  @Test
  void accept_partOfAnArray_looksAtNothingElse() {
    Frames frames = new Frames();
    byte[] bytes = Frames.bytes("+9\r\n+1 lbf\r\n+2");
    SIGNED.newDecoder().accept(bytes, 4, 8, 0, frames);
    assertThat(frames.found).containsExactly("+1 lbf -> 0: 1.0 lbf ok");
  }

  /** A device set to send CR LF where the definition states one of them, and the reverse. */
  @ParameterizedTest
  @CsvSource({
    "LF,   '+1 lbf\n+2 lbf\n',         true",
    "LF,   '+1 lbf\r\n+2 lbf\r\n',     true",
    "LF,   '\n\r\n+1 lbf\r\n\n+2 lbf\n', true",
    "LF,   '+1 lbf\r\r\n+2 lbf\r\r\n', false",
    "CR,   '+1 lbf\r+2 lbf\r',         true",
    "CR,   '+1 lbf\r\n+2 lbf\r\n',     true",
    "CR,   '\r\n\r+1 lbf\r\r\n+2 lbf\r', true",
    "CR,   '+1 lbf\n\r+2 lbf\n\r',     false",
    "CRLF, '+1 lbf\r\n+2 lbf\r\n',     true",
    "CRLF, '+1 lbf\n\r\n+2 lbf\n\r\n', false",
    "'\\x03\\x0D', '+1 lbf\u0003\r+2 lbf\u0003\r', true",
    "'\r\n', '+1 lbf\r\n+2 lbf\r\n',   true",
  })
  void accept_terminatorVariant_takesItsOwnCompanionAlong(
      String terminator, String stream, boolean read) {
    String stated = terminator.equals("\r\n") ? "\\x0D\\x0A" : terminator;
    DeviceDefinition definition =
        Definitions.parse(Definitions.text("{load} {unit}", stated, LOAD + UNIT));
    Frames frames = Frames.of(definition, stream);
    if (read) {
      assertThat(frames.values).containsExactly(1.0, 2.0);
      assertThat(frames.found).hasSize(2);
    } else {
      assertThat(frames.values).isEmpty();
      assertThat(frames.found).hasSize(2);
    }
    assertThat(definition.countFrames(Frames.bytes(stream))).isGreaterThanOrEqualTo(2);
  }

  @Test
  void accept_overlongLineWithLoneFeed_isCutToLongest() {
    DeviceDefinition definition =
        Definitions.parse(Definitions.text("{load} {unit}", "LF", LOAD + UNIT));
    Frames frames = Frames.of(definition, "1".repeat(41) + "\n" + "2".repeat(40) + "\r\n+3 lbf\n");
    assertThat(frames.found)
        .containsExactly(
            "1".repeat(40) + " -> garbled",
            "2".repeat(40) + " -> garbled",
            "+3 lbf -> 0: 3.0 lbf ok");
  }

  /** The number of the torn line would be wrong by a factor of a hundred. */
  @Test
  void accept_firstLineThatMayBeTorn_isSuspect() {
    assertThat(Frames.of(PLAIN, "0345 lbf\r\n0345 lbf\r\n").found)
        .containsExactly("0345 lbf -> 0: 345.0 lbf suspect", "0345 lbf -> 0: 345.0 lbf ok");
  }

  @Test
  void accept_firstLineGarbledOrEmpty_leavesTheNextOk() {
    assertThat(Frames.of(PLAIN, "f\r\n1 lbf\r\n").found)
        .containsExactly("f -> garbled", "1 lbf -> 0: 1.0 lbf ok");
    assertThat(Frames.of(PLAIN, "\r\n1 lbf\r\n").found).containsExactly("1 lbf -> 0: 1.0 lbf ok");
  }

  @Test
  void cut_halfReadLine_isGarbledAndTheNextSuspect() {
    FrameDecoder decoder = PLAIN.newDecoder();
    Frames frames = new Frames();
    Frames.feed(decoder, "1 lbf\r\n2 lbf\r\n33", frames);
    decoder.cut(frames);
    decoder.cut(frames);
    Frames.feed(decoder, "4 lbf\r\n5 lbf\r\n", frames);
    assertThat(frames.found)
        .containsExactly(
            "1 lbf -> 0: 1.0 lbf suspect",
            "2 lbf -> 0: 2.0 lbf ok",
            "33 -> garbled",
            "4 lbf -> 0: 4.0 lbf suspect",
            "5 lbf -> 0: 5.0 lbf ok");
  }

  @Test
  void cut_insideTerminator_doesNotJoinItsHalves() {
    FrameDecoder decoder = SIGNED.newDecoder();
    Frames frames = new Frames();
    Frames.feed(decoder, "+1 lbf\r", frames);
    decoder.cut(frames);
    Frames.feed(decoder, "\n+2 lbf\r\n+3 lbf\r\n", frames);
    assertThat(frames.found)
        .containsExactly("+1 lbf\r -> garbled", "\n+2 lbf -> garbled", "+3 lbf -> 0: 3.0 lbf ok");
  }

  @Test
  void cut_whilePassingOver_reportsNothingMore() {
    FrameDecoder decoder = SIGNED.newDecoder();
    Frames frames = new Frames();
    Frames.feed(decoder, "1".repeat(100), frames);
    decoder.cut(frames);
    Frames.feed(decoder, "+2 lbf\r\n", frames);
    assertThat(frames.found)
        .containsExactly("1".repeat(40) + " -> garbled", "+2 lbf -> 0: 2.0 lbf ok");
  }

  @Test
  void accept_sinkThrows_decoderGoesOnWithTheNextLine() {
    FrameDecoder decoder = SIGNED.newDecoder();
    byte[] bytes = Frames.bytes("+1 lbf\r\n");
    assertThatThrownBy(() -> decoder.accept(bytes, 0, bytes.length, 0, null))
        .isInstanceOf(NullPointerException.class);
    Frames frames = new Frames();
    Frames.feed(decoder, "+2 lbf\r\n", frames);
    assertThat(frames.found).containsExactly("+2 lbf -> 0: 2.0 lbf ok");
  }

  /**
   * Whatever a layout that shows torn lines lets through of the rear part of a line is the line's
   * own reading.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "' {load} {unit}' | sign = 'required'           | '  +  00123.4 lbf'  | true",
        "{load} {unit}    | digits = 6; sign = 'required' | '-00123.4 lbf'    | true",
        "*{load} {unit}   | sign = 'optional'           | '*-00123.4 lbf'     | true",
        "\\x02{load} {unit} | sign = 'optional'         | '\u0002-001.4 lbf'  | true",
        "{load}{unit}     | width = 8                   | ' -0123.4lbf'       | false",
        "W{load} {unit}   | sign = 'required'; over = ['OL'] | 'W-00123.4 kN' | true",
        "{load} {unit}    | sign = 'required'; exponent = true | '-1.5E+2 kN' | false",
        "{load} {unit}    | digits = 6                  | '-00123.4 lbf'      | false",
        "{load} {unit}    | digits = 6; sign = 'none'   | '00123.4 lbf'       | false",
        "{load} {unit}    | sign = 'required'; over = ['---'] | '-00123.4 lbf' | false",
        "b{load} {unit}   | sign = 'required'           | 'b-00123.4 lbf'     | false",
      })
  void accept_rearPartOfALine_isNeverAnotherOkReading(
      String layout, String keys, String sent, boolean shown) {
    DeviceDefinition definition =
        line(layout, field("load", "number", "unit = 'lbf'; " + keys) + UNIT);
    assertThat(Frames.of(definition, sent + "\r\n").found.get(0))
        .endsWith(shown ? " ok" : " suspect");
    double whole = Frames.of(definition, sent + "\r\n").values.get(0);
    for (int from = 1; from < sent.length(); from++) {
      Frames rear = Frames.of(definition, sent.substring(from) + "\r\n");
      for (int i = 0; i < rear.values.size(); i++) {
        if (rear.qualities.get(i) == Quality.OK) {
          assertThat(rear.values.get(i)).isEqualTo(whole);
        }
      }
    }
  }

  @Test
  void accept_everyPieceOfFixedLength_firstLineIsOk() {
    String load = field("load", "number", "unit = 'lbf'; width = 9");
    String unit = field("unit", "unit", "width = 3; spellings = { 'lbf' = 'lbf', 'kN' = 'kN' }");
    DeviceDefinition definition = line("{load}\\x20{unit}", load + unit);
    assertThat(Frames.of(definition, "    345.1 kN \r\n").found)
        .containsExactly("    345.1 kN  -> 0: 345.1 kN ok");
    assertThat(Frames.of(definition, "  345.1 kN \r\n").found)
        .containsExactly("  345.1 kN  -> garbled");
  }

  @ParameterizedTest
  @CsvSource({
    "CRLF, 'a\r\nb\r\nc',     2",
    "CRLF, '\r\nb\r\n',       2",
    "CRLF, 'a\r\n\r\n\r\nb',  1",
    "CRLF, 'a\r\r\nb\n\r',    1",
    "LF,   'a\r\nb\nc\r',     2",
    "CR,   'a\r\nb\r\n',      2",
    "CR,   'a\rb\r\r\n\r',    2",
    "'\\x03', 'a\u0003\r\nb\u0003\r\n', 2",
    "'\\x0D\\x0D\\x0A', 'a\r\r\r\nb\r\r\n', 2",
    "CRLF, '',                0",
  })
  void countFrames_lostBytes_countsLinesThatEnd(String terminator, String lost, int lines) {
    DeviceDefinition definition =
        Definitions.parse(Definitions.text("{load} {unit}", terminator, LOAD + UNIT));
    assertThat(definition.countFrames(Frames.bytes(lost))).isEqualTo(lines);
  }

  @Property(tries = 300)
  void accept_randomBytes_neverThrowsAndKeepsToLongest(
      @ForAll @Size(max = 600) byte[] noise, @ForAll @IntRange(max = 600) int cut) {
    for (DeviceDefinition definition : new DeviceDefinition[] {SIGNED, PLAIN}) {
      FrameDecoder decoder = definition.newDecoder();
      Frames frames = new Frames();
      int first = Math.min(cut, noise.length);
      decoder.accept(noise, 0, first, 0, frames);
      decoder.accept(noise, first, noise.length - first, 0, frames);
      assertThat(frames.longestGarbled).isLessThanOrEqualTo(40);
      Frames.feed(decoder, "\r\n+1 lbf\r\n", frames);
      assertThat(frames.found).last().isEqualTo("+1 lbf -> 0: 1.0 lbf ok");
    }
  }

  /** Lines made of the right characters in the wrong order find more than plain noise. */
  @Property(tries = 300)
  void accept_shuffledCharacters_splitsAlike(
      @ForAll long seed, @ForAll @IntRange(max = 200) int cut) {
    Random random = new Random(seed);
    String alphabet = "+-0129.. lbfkNOL\r\n\r\n\r\n";
    StringBuilder stream = new StringBuilder();
    for (int i = 0; i < 200; i++) {
      stream.append(alphabet.charAt(random.nextInt(alphabet.length())));
    }
    assertThat(split(PLAIN, stream.toString(), cut).found)
        .isEqualTo(split(PLAIN, stream.toString()).found);
  }

  /** What a device would print is read back as the number it printed. */
  @Property
  void accept_printedReading_comesBack(
      @ForAll @IntRange(min = -99_999_999, max = 99_999_999) int hundredths,
      @ForAll boolean kilonewtons,
      @ForAll @IntRange(max = 3) int padding) {
    double value = hundredths / 100.0;
    String sent =
        String.format(Locale.ROOT, "%+012.2f", value)
            + " ".repeat(padding)
            + (kilonewtons ? "kN" : "lbf");
    Frames frames = Frames.of(SIGNED, sent + "\r\n");
    assertThat(frames.found)
        .containsExactly(sent + " -> 0: " + (value + 0.0) + (kilonewtons ? " kN" : " lbf") + " ok");
  }
}
