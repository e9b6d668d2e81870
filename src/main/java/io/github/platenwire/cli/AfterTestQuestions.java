package io.github.platenwire.cli;

import io.github.platenwire.method.AfterTest;
import io.github.platenwire.method.AggregateBreak;
import io.github.platenwire.method.BreakPosition;
import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.FractureType;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.Enclosure;
import io.github.platenwire.record.Observations;
import io.github.platenwire.terminal.Choice;
import io.github.platenwire.terminal.Questions;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Asks what only a person can tell once the specimen is broken, as far as the method asks for it;
 * whatever is left out is left out. Confined to one thread.
 */
final class AfterTestQuestions {
  private static final String SATISFACTORY = "satisfactory";

  private final Questions questions;
  private final Set<AfterTest> asks;
  private final Specimen specimen;
  private final Path raw;

  AfterTestQuestions(Questions questions, Set<AfterTest> asks, Specimen specimen, Path raw) {
    this.raw = raw;
    this.questions = questions;
    this.asks = asks;
    this.specimen = specimen;
  }

  /** Where it broke; not recorded where nobody is asked or nobody answers. */
  BreakPosition breakPosition() {
    if (!asks.contains(AfterTest.BREAK_POSITION)) {
      return BreakPosition.NOT_RECORDED;
    }
    Optional<Boolean> within =
        questions.yesNo("Did it break within the middle third of the span, between the loads?");
    if (within.isEmpty()) {
      return BreakPosition.NOT_RECORDED;
    }
    return within.get() ? BreakPosition.MIDDLE_THIRD : outside();
  }

  private BreakPosition outside() {
    double span = specimen.dimension(Dimension.SPAN).orElse(Double.POSITIVE_INFINITY);
    String question =
        "How far from the nearer support, along the middle of the tension face? (such as 140 mm or"
            + " 5.5 in)";
    while (true) {
      Optional<String> answer = questions.text(question);
      if (answer.isEmpty()) {
        return BreakPosition.NOT_RECORDED;
      }
      Optional<Double> distance = distance(answer.get());
      if (distance.isPresent() && distance.get() > 0 && distance.get() <= span / 2) {
        return BreakPosition.outside(distance.get());
      }
      question =
          "'"
              + answer.get()
              + "' cannot be: a number with its unit, mm or in, above 0 and at most half of the"
              + " span. How far from the nearer support?";
    }
  }

  /** A distance in millimetres, written with its unit and a decimal point or comma. */
  static Optional<Double> distance(String answer) {
    for (Unit unit : Dimension.SPAN.units()) {
      if (answer.endsWith(unit.symbol())) {
        String number = answer.substring(0, answer.length() - unit.symbol().length()).strip();
        try {
          return Optional.of(unit.toBase(new BigDecimal(number.replace(',', '.')).doubleValue()));
        } catch (NumberFormatException e) {
          return Optional.empty();
        }
      }
    }
    return Optional.empty();
  }

  Observations observations() {
    Optional<String> fracture = Optional.empty();
    Optional<String> words = Optional.empty();
    if (asks.contains(AfterTest.FRACTURE_TYPE)) {
      fracture = fractureType();
      words = fracture.flatMap(FractureType::ofKey).map(FractureType::words);
    } else if (asks.contains(AfterTest.SATISFACTORY)) {
      fracture =
          questions
              .yesNo("Was the failure satisfactory?")
              .map(yes -> yes ? SATISFACTORY : "un" + SATISFACTORY);
      words = fracture.map(key -> key + " failure");
    }
    Optional<String> aggregate =
        asks.contains(AfterTest.AGGREGATE) ? aggregate() : Optional.empty();
    return new Observations(
        fracture,
        words,
        aggregate,
        asks.contains(AfterTest.BAR_IMPRINT) ? imprint() : Optional.empty(),
        asks.contains(AfterTest.VOIDS)
            ? questions.text("Voids or honeycombing in the break? (where, how large)")
            : Optional.empty(),
        questions.text("Anything else to note?"),
        asks.contains(AfterTest.PHOTOGRAPHS) ? enclosures() : List.of(),
        BreakPosition.NOT_RECORDED);
  }

  private Optional<String> imprint() {
    return questions
        .yesNo("Are the ribs of the bar seen in the concrete that came off it?")
        .map(yes -> yes ? "seen" : "not-seen");
  }

  /** Copied beside the record at once: what is answered here is kept. */
  private List<Enclosure> enclosures() {
    List<Enclosure> kept = new ArrayList<>();
    String question = "A photograph to keep with the record? (its file)";
    while (true) {
      Optional<String> answer = questions.text(question);
      if (answer.isEmpty()) {
        return kept;
      }
      try {
        kept.add(Enclosure.keep(raw, Path.of(answer.get())));
        question = "Kept as " + kept.get(kept.size() - 1).file() + ". Another one?";
      } catch (IOException | InvalidPathException e) {
        question = "It was not kept: " + e.getMessage() + ". Which file?";
      }
    }
  }

  private Optional<String> fractureType() {
    List<Choice> fractures =
        Arrays.stream(FractureType.values())
            .map(type -> new Choice(Integer.toString(type.number()), type.words(), type.sketch()))
            .toList();
    return questions.choice("How did it break?", fractures);
  }

  private Optional<String> aggregate() {
    List<Choice> aggregates = new ArrayList<>();
    for (AggregateBreak kind : AggregateBreak.values()) {
      aggregates.add(new Choice(Integer.toString(aggregates.size() + 1), kind.words()));
    }
    return questions
        .choice("Did the break go through the aggregate or around it?", aggregates)
        .map(key -> AggregateBreak.values()[Integer.parseInt(key) - 1].key());
  }
}
