package io.github.platenwire.terminal;

import java.io.BufferedReader;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * Asks the operator. An empty answer leaves a question out, and so does the end of the input; an
 * answer that is not possible is explained and asked again. Confined to one thread.
 */
public final class Questions {
  private final BufferedReader in;
  private final TerminalOut out;
  private final Supplier<TerminalSize> sizes;
  private final Look look;

  /**
   * Prepares; asks nothing yet.
   *
   * @param in where the answers come from, one a line
   * @param out where the questions go
   * @param sizes how wide they may be
   * @param look how they look
   */
  public Questions(BufferedReader in, TerminalOut out, Supplier<TerminalSize> sizes, Look look) {
    this.in = in;
    this.out = out;
    this.sizes = sizes;
    this.look = look;
  }

  /** Yes or no; {@code y}, {@code yes}, {@code n} and {@code no} are understood. */
  public Optional<Boolean> yesNo(String question) {
    ask(question);
    while (true) {
      Optional<String> answer = answer("y or n");
      if (answer.isEmpty()) {
        return Optional.empty();
      }
      switch (answer.get().toLowerCase(Locale.ROOT)) {
        case "y", "yes" -> {
          return Optional.of(true);
        }
        case "n", "no" -> {
          return Optional.of(false);
        }
        default -> refuse(answer.get(), "y for yes, n for no");
      }
    }
  }

  /**
   * One of several.
   *
   * @param choices what is offered; keys must differ
   * @return the key of the chosen one; upper and lower case are alike
   */
  public Optional<String> choice(String question, List<Choice> choices) {
    ask(question);
    out.lines(ChoiceView.lines(choices, sizes.get().columns(), look));
    String keys = choices.stream().map(Choice::key).collect(Collectors.joining(", "));
    while (true) {
      Optional<String> answer = answer(keys);
      if (answer.isEmpty()) {
        return Optional.empty();
      }
      String wanted = answer.get();
      Optional<Choice> chosen =
          choices.stream().filter(choice -> choice.key().equalsIgnoreCase(wanted)).findFirst();
      if (chosen.isPresent()) {
        return chosen.map(Choice::key);
      }
      refuse(wanted, keys);
    }
  }

  /** Any words; spaces around them are dropped. */
  public Optional<String> text(String question) {
    ask(question);
    return answer("words");
  }

  /** One line as typed, without a question; empty when there is no more. */
  public Optional<String> line() {
    try {
      return Optional.ofNullable(in.readLine());
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** A line as it is typed, its spaces kept. */
  public Optional<String> line(String question) {
    ask(question);
    return rawAnswer("a line").filter(text -> !text.isBlank());
  }

  private void ask(String question) {
    out.print("\n");
    for (String line : TextWidth.wrap(look.glyphs().text(question), columns())) {
      out.print(" " + look.palette().paint(Style.STRONG, line) + "\n");
    }
  }

  private void refuse(String answer, String possible) {
    String text = "'" + answer + "' is not among the answers; possible: " + possible;
    out.lines(
        TextWidth.wrap(look.glyphs().text(text), columns()).stream().map(l -> " " + l).toList());
  }

  private int columns() {
    return Math.max(20, sizes.get().columns() - 2);
  }

  private Optional<String> answer(String possible) {
    return rawAnswer(possible).map(String::strip).filter(text -> !text.isEmpty());
  }

  private Optional<String> rawAnswer(String possible) {
    out.print(look.glyphs().text(" [" + possible + "; Enter leaves it out] > "));
    try {
      String line = in.readLine();
      if (line == null) {
        out.print("\n");
        return Optional.empty();
      }
      return Optional.of(line);
    } catch (IOException e) {
      out.print("\n");
      return Optional.empty();
    }
  }
}
