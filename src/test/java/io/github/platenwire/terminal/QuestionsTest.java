package io.github.platenwire.terminal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class QuestionsTest {
  private static final List<Choice> CHOICES =
      List.of(
          new Choice(
              "a", "cones at both ends", List.of("+------+", "| \\  / |", "| /  \\ |", "+------+")),
          new Choice(
              "b",
              "split lengthwise through both ends",
              List.of("+------+", "|  ||  |", "+------+")),
          new Choice("c", "something else"));

  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();

  private Questions answering(Reader in) {
    return new Questions(
        new BufferedReader(in),
        new TerminalOut(bytes, StandardCharsets.UTF_8),
        () -> new TerminalSize(80, 24),
        Samples.PLAIN);
  }

  private Questions answering(String in) {
    return answering(new StringReader(in));
  }

  private String asked() {
    return bytes.toString(StandardCharsets.UTF_8);
  }

  @Test
  void yesNo_eachWord_isUnderstood() {
    Questions questions = answering("y\n YES \nn\nNo\n");
    assertThat(questions.yesNo("Is the guard closed?")).contains(true);
    assertThat(questions.yesNo("Is the guard closed?")).contains(true);
    assertThat(questions.yesNo("Is the guard closed?")).contains(false);
    assertThat(questions.yesNo("Is the guard closed?")).contains(false);
    assertThat(asked()).contains("Is the guard closed?").contains("Enter leaves it out");
  }

  @Test
  void yesNo_impossibleAnswer_isExplainedAndAskedAgain() {
    assertThat(answering("perhaps\ny\n").yesNo("Sure?")).contains(true);
    assertThat(asked()).contains("'perhaps' is not among the answers; possible: y for yes");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "\n", "   \n", "nonsense"})
  void answers_leftOut_areEmpty(String in) {
    assertThat(answering(in).yesNo("Sure?")).isEmpty();
    assertThat(answering(in).choice("Which?", CHOICES)).isEmpty();
  }

  @Test
  void text_answer_isStripped() {
    assertThat(answering("  honeycombed at the foot \n").text("Remarks?"))
        .contains("honeycombed at the foot");
    assertThat(answering("\n").text("Remarks?")).isEmpty();
    assertThat(answering("").text("Remarks?")).isEmpty();
  }

  @Test
  void choice_key_inEitherCase() {
    assertThat(answering("d\nB\n").choice("How did it break?", CHOICES)).contains("b");
    assertThat(asked()).contains("'d' is not among the answers; possible: a, b, c");
  }

  @Test
  void choice_failingInput_isLeftOut() {
    Reader failing =
        new Reader() {
          @Override
          public int read(char[] chars, int offset, int length) throws IOException {
            throw new IOException("gone");
          }

          @Override
          public void close() {}
        };
    assertThat(answering(failing).choice("Which?", CHOICES)).isEmpty();
  }

  @Test
  void lines_sketches_looksAsKept() throws IOException {
    Golden.compare("choice-80", ChoiceView.lines(CHOICES, 80, Samples.PLAIN));
    Golden.compare("choice-45", ChoiceView.lines(CHOICES, 45, Samples.PLAIN));
    Golden.compare(
        "choice-words-40",
        ChoiceView.lines(
            List.of(
                new Choice("1", "the reading was taken while the pump was still running"),
                new Choice("2", "something else")),
            40,
            Samples.PLAIN));
  }

  @Test
  void new_blankKey_isRefused() {
    assertThatThrownBy(() -> new Choice(" ", "words")).hasMessageContaining("needs a key");
  }
}
