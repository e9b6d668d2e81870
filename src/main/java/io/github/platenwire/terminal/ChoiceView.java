package io.github.platenwire.terminal;

import java.util.ArrayList;
import java.util.List;

/** Shows several answers to choose from, drawings side by side where there are any. Pure. */
final class ChoiceView {
  private static final int INDENT = 2;
  private static final int GAP = 3;
  private static final int NARROWEST = 18;

  private ChoiceView() {}

  static List<String> lines(List<Choice> choices, int columns, Look look) {
    boolean drawn = choices.stream().anyMatch(choice -> !choice.sketch().isEmpty());
    int room = Math.max(NARROWEST + INDENT, columns - 1);
    int widest = drawn ? Math.min(widestSketch(choices), room - INDENT) : room - INDENT;
    int perRow = drawn ? Math.max(1, (room - INDENT + GAP) / (widest + GAP)) : 1;
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < choices.size(); i += perRow) {
      List<Choice> row = choices.subList(i, Math.min(choices.size(), i + perRow));
      addRow(lines, row, widest, look);
      if (drawn) {
        lines.add("");
      }
    }
    return lines;
  }

  private static int widestSketch(List<Choice> choices) {
    return choices.stream()
        .flatMap(choice -> choice.sketch().stream())
        .mapToInt(TextWidth::columns)
        .reduce(NARROWEST, Math::max);
  }

  private static void addRow(List<String> lines, List<Choice> row, int widest, Look look) {
    List<List<String>> cells = new ArrayList<>();
    int sketchLines = row.stream().mapToInt(choice -> choice.sketch().size()).max().orElse(0);
    int captionLines = 0;
    for (Choice choice : row) {
      List<String> caption = caption(choice, widest, look);
      captionLines = Math.max(captionLines, caption.size());
      List<String> cell = new ArrayList<>(choice.sketch());
      while (cell.size() < sketchLines) {
        cell.add("");
      }
      cell.addAll(caption);
      cells.add(cell);
    }
    for (int i = 0; i < sketchLines + captionLines; i++) {
      Line line = new Line(look);
      for (int c = 0; c < cells.size(); c++) {
        line.to(INDENT + c * (widest + GAP));
        line.add(i < cells.get(c).size() ? cells.get(c).get(i) : "");
      }
      lines.add(line.render(Integer.MAX_VALUE));
    }
  }

  private static List<String> caption(Choice choice, int widest, Look look) {
    String key = look.glyphs().text(choice.key());
    String hang = " ".repeat(TextWidth.columns(key) + 2);
    List<String> caption = new ArrayList<>();
    for (String text : TextWidth.wrap(look.glyphs().text(choice.words()), widest - hang.length())) {
      caption.add((caption.isEmpty() ? key + "  " : hang) + text);
    }
    return caption;
  }
}
