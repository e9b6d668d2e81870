package io.github.platenwire.terminal;

import java.util.ArrayList;
import java.util.List;

/** The usual cautions, shown before each test that a person attends. Pure. */
public final class Cautions {
  private static final List<String> SENTENCES =
      List.of(
          "Guards closed, eye protection on, hands away from the platens.",
          "Stay clear of a loaded specimen; it can break without warning.",
          "Platenwire only listens. It does not drive, hold or stop the machine:"
              + " the emergency stop is the machine's own.");

  private Cautions() {}

  /**
   * The lines.
   *
   * @param standard the standard that the test is done by, as its method names it
   * @param columns width of the terminal
   * @param look how they look
   */
  public static List<String> lines(String standard, int columns, Look look) {
    List<String> sentences = new ArrayList<>(SENTENCES);
    sentences.add(
        "What counts is "
            + standard
            + " and whatever else is specified; acceptance is for a"
            + " licensed engineer to decide.");
    int room = Math.max(20, columns - 1);
    List<String> lines = new ArrayList<>();
    lines.add(new Line(look).add(" ").add(Style.STRONG, "Before you load").render(room));
    for (String sentence : sentences) {
      String lead = "   - ";
      for (String part : TextWidth.wrap(look.glyphs().text(sentence), room - 5)) {
        lines.add(lead + part);
        lead = "     ";
      }
    }
    return lines;
  }
}
