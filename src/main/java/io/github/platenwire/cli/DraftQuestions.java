package io.github.platenwire.cli;

import io.github.platenwire.commission.Hints;
import io.github.platenwire.commission.Question;
import io.github.platenwire.commission.Sample;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.terminal.Choice;
import io.github.platenwire.terminal.Questions;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Asks what a device's bytes do not tell. Confined to one thread. */
final class DraftQuestions {
  private static final int MOST_LINES = 20;
  private static final Map<String, String> ENDS = Map.of("1", "\r\n", "2", "\r", "3", "\n");

  private final Questions questions;

  DraftQuestions(Face face) {
    this.questions = face.questions();
  }

  /** Lines as a person has seen them, with the end that the device puts behind each. */
  Sample lines() throws CommandException {
    List<String> lines = new ArrayList<>();
    String question =
        "Type a line just as the device sends it. Three or more with different loads serve best,"
            + " also a negative one.";
    Optional<String> answer = questions.line(question);
    while (answer.isPresent() && lines.size() < MOST_LINES) {
      lines.add(answer.get());
      answer = questions.line("The next one?");
    }
    if (lines.size() < 3) {
      throw new CommandException(
          ExitCode.USAGE, "at least three lines are needed; nothing was written");
    }
    String end =
        questions
            .choice(
                "What does the device send at the end of a line?",
                List.of(
                    new Choice("1", "CR and LF (most do)"),
                    new Choice("2", "CR alone"),
                    new Choice("3", "LF alone")))
            .map(key -> ENDS.getOrDefault(key, "\r\n"))
            .orElse("\r\n");
    String stream = String.join(end, lines) + end;
    return Sample.of("the typed lines", stream.getBytes(StandardCharsets.UTF_8));
  }

  /** The hints with what was answered; what was left out stays open. */
  Hints answer(List<Question> open, Hints hints) {
    List<String> units = new ArrayList<>(hints.units());
    Map<String, String> spellings = new LinkedHashMap<>(hints.spellings());
    for (Question question : open) {
      Optional<String> unit = unit(question);
      if (question.kind() == Question.Kind.SPELLING) {
        unit.ifPresent(symbol -> spellings.put(question.about(), symbol));
      } else {
        units.add(unit.orElse(Hints.PASS_OVER));
      }
    }
    return hints.withUnits(units).withSpellings(spellings);
  }

  private Optional<String> unit(Question question) {
    String possible =
        "A load: "
            + DeviceNewCommand.symbols(Quantity.FORCE)
            + "; a gauge: "
            + DeviceNewCommand.symbols(Quantity.LENGTH);
    Optional<String> answer = questions.text(question.words() + " " + possible + ".");
    while (answer.isPresent() && unit(answer.get()).isEmpty()) {
      answer = questions.text("'" + answer.get() + "' is none of these. " + possible + ".");
    }
    return answer.flatMap(text -> unit(text)).map(Unit::symbol);
  }

  /** A unit of a load or a gauge. */
  static Optional<Unit> unit(String symbol) {
    for (Quantity quantity : List.of(Quantity.FORCE, Quantity.LENGTH)) {
      try {
        return Optional.of(Unit.parse(symbol, quantity));
      } catch (IllegalArgumentException e) {
        // the next quantity may have it
      }
    }
    return Optional.empty();
  }
}
