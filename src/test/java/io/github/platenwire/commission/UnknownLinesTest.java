package io.github.platenwire.commission;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.device.DeviceDefinition;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;

/** Line formats unlike the shipped ones, invented here: what is drafted from them decodes them. */
class UnknownLinesTest {
  private static String lines(int count, String end, IntFunction<String> line) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < count; i++) {
      text.append(line.apply(i)).append(end);
    }
    return text.toString();
  }

  private static String f(String format, Object... args) {
    return String.format(Locale.ROOT, format, args);
  }

  static SampleReport check(String stream, Hints hints) throws Exception {
    Sample sample = Sample.of("test", stream.getBytes(StandardCharsets.ISO_8859_1));
    Draft draft = DefinitionDraft.of(sample, hints);
    assertThat(draft.questions()).isEmpty();
    assertThat(draft.text()).as("%s", draft.notes()).isNotEmpty();
    DeviceDefinition definition = DeviceDefinition.parse(draft.text(), "draft");
    SampleReport report = SampleDecoder.decode(definition, sample);
    assertThat(report.undecoded())
        .as("%s%n%s", draft.text(), report.undecoded().stream().map(Undecoded::fault).toList())
        .isEmpty();
    assertThat(report.isComplete()).isTrue();
    assertThat(report.explainedBytes() + report.tornHeadBytes() + report.unfinishedBytes())
        .isEqualTo(sample.bytes().length);
    return report;
  }

  private static double load(int i) {
    return 3.7 * i + 0.13 * (i % 7);
  }

  /** A time stamp, a counter, load and gauge in columns, a state letter. */
  @Test
  void draft_timeCounterLoadGaugeState_decodesEveryLine() throws Exception {
    String stream =
        lines(
            60,
            "\r\n",
            i ->
                f(
                    "%02d:%02d:%06.3f;%d;%8.2f;kN;%+.4f;mm;%s",
                    9,
                    i / 60,
                    i % 60 + 0.25,
                    870 + i,
                    load(i),
                    -0.01 + i * 0.003,
                    i % 5 == 3 ? "U" : "S"));
    SampleReport report = check(stream, Hints.none("bench"));
    assertThat(report.frames()).isEqualTo(60);
    assertThat(report.channels()).extracting(ChannelRange::name).containsExactly("load", "gauge");
    assertThat(report.channels().get(0).greatest())
        .isEqualTo(Double.parseDouble(f("%.2f", load(59))));
    assertThat(report.channels().get(1).least()).isEqualTo(-0.01);
  }

  /** Start and end of text, the sign behind the number, zeros in front, a decimal comma. */
  @Test
  void draft_signBehindZerosInFrontBetweenStxAndEtx_decodesEveryLine() throws Exception {
    String stream =
        lines(
            40,
            "\u0003",
            i ->
                f("\u0002L%07.1f%s KN", Math.abs(load(i) - 20), load(i) < 20 ? "-" : "+")
                    .replace('.', ','));
    SampleReport report = check(stream, Hints.none("bench"));
    assertThat(report.channels().get(0).least()).isEqualTo(-20);
    assertThat(report.channels().get(0).unit().symbol()).isEqualTo("kN");
  }

  /** Blanks in a fixed width, dashes at overload, a letter that is there only while it moves. */
  @Test
  void draft_fixedWidthWithOptionalLetterAndOverload_decodesEveryLine() throws Exception {
    String stream =
        lines(
            50,
            "\r",
            i ->
                f(
                    "#1 %9s lb %s#2 %8.3f in ",
                    i > 45 ? "-------" : f("%.0f", load(i) * 100),
                    i % 4 == 1 ? "M" : " ",
                    i / 900.0));
    SampleReport report = check(stream, Hints.none("bench"));
    assertThat(report.channels()).hasSize(2);
    assertThat(report.channels().get(0).unit().symbol()).isEqualTo("lbf");
  }

  @Test
  void draft_numbersWithoutUnit_areAskedForAndThenTaken() throws Exception {
    String stream = lines(20, "\n", i -> f("%d,%.3f,%.4f", i + 17, load(i), 0.5 - i * i * 0.01));
    Draft asked =
        DefinitionDraft.of(
            Sample.of("test", stream.getBytes(StandardCharsets.ISO_8859_1)), Hints.none("bench"));
    assertThat(asked.questions())
        .extracting(Question::kind)
        .containsOnly(Question.Kind.UNIT)
        .hasSize(2);
    SampleReport report = check(stream, Hints.none("bench").withUnits(List.of("kN", "mm")));
    assertThat(report.channels().get(0).greatest())
        .isEqualTo(Double.parseDouble(f("%.3f", load(19))));
  }

  @Test
  void draft_unknownSpelling_isAskedForAndThenMapped() throws Exception {
    String stream = lines(20, "\r\n", i -> f("F= %7.2f dabs", load(i)));
    Draft asked =
        DefinitionDraft.of(
            Sample.of("test", stream.getBytes(StandardCharsets.ISO_8859_1)), Hints.none("bench"));
    assertThat(asked.questions()).extracting(Question::about).containsExactly("dabs");
    SampleReport report = check(stream, Hints.none("bench").withSpellings(Map.of("dabs", "kgf")));
    assertThat(report.channels().get(0).unit().symbol()).isEqualTo("kgf");
  }

  @Test
  void draft_logThatBeginsAndEndsInMidLine_leavesTheTornEndsOut() throws Exception {
    String stream = lines(30, "\r\n", i -> f("ST;%+08.2f;kN", load(i)));
    SampleReport report = check(stream.substring(7, stream.length() - 5), Hints.none("bench"));
    assertThat(report.frames()).isBetween(28L, 29L);
    assertThat(report.unfinishedBytes()).isGreaterThan(0);
  }

  @Test
  void draft_pointBehindTheLastDigit_belongsToTheNumber() throws Exception {
    SampleReport report =
        check(lines(20, "\r\n", i -> f("%7d. lb", 40 * i - 100)), Hints.none("bench"));
    assertThat(report.channels().get(0).least()).isEqualTo(-100);
  }

  @Test
  void draft_checkValueAtTheEnd_isFoundAndSaid() throws Exception {
    List<String> all = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      String body = f("$LOAD,%.2f,kN", load(i));
      int xor = body.substring(1).chars().reduce(0, (a, b) -> a ^ b);
      all.add(body + f("*%02X", xor));
    }
    String stream = String.join("\r\n", all) + "\r\n";
    assertThat(
            DefinitionDraft.of(
                    Sample.of("test", stream.getBytes(StandardCharsets.ISO_8859_1)),
                    Hints.none("bench"))
                .text())
        .contains("exclusive or");
    check(stream, Hints.none("bench"));
  }
}
