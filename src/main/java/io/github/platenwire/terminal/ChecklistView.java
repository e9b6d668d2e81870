package io.github.platenwire.terminal;

import io.github.platenwire.recorder.ChecklistItem;
import java.util.ArrayList;
import java.util.List;

/** Shows what was looked at before a test, and what to do where it does not stand well. Pure. */
public final class ChecklistView {
  private static final int STATE_COLUMNS = 11;
  private static final int LONGEST_NAME = 24;

  private ChecklistView() {}

  /** The lines, in the order of the items. */
  public static List<String> lines(List<ChecklistItem> items, int columns, Look look) {
    int names = items.stream().mapToInt(item -> TextWidth.columns(item.name())).max().orElse(0) + 2;
    int seenColumn = STATE_COLUMNS + Math.min(names, LONGEST_NAME);
    List<String> lines = new ArrayList<>();
    for (ChecklistItem item : items) {
      add(lines, item, seenColumn, Math.max(20, columns - 1), look);
    }
    return lines;
  }

  private static void add(
      List<String> lines, ChecklistItem item, int seenColumn, int room, Look look) {
    String name = look.glyphs().text(item.name());
    boolean beside =
        seenColumn + 12 <= room && STATE_COLUMNS + TextWidth.columns(name) + 2 <= seenColumn;
    Line line = new Line(look).add(" ").add(style(item), mark(item, look) + " " + word(item));
    line.to(STATE_COLUMNS).add(name);
    int column = beside ? seenColumn : STATE_COLUMNS + 2;
    List<String> seen = TextWidth.wrap(look.glyphs().text(item.seen()), room - column);
    if (beside) {
      line.to(column).add(seen.get(0));
    }
    lines.add(line.render(room));
    seen.stream()
        .skip(beside ? 1 : 0)
        .map(text -> new Line(look).to(column).add(text).render(room))
        .forEach(lines::add);
    if (item.state() != ChecklistItem.State.PASSED) {
      item.remedy().ifPresent(remedy -> addRemedy(lines, remedy, room, look));
    }
  }

  private static void addRemedy(List<String> lines, String remedy, int room, Look look) {
    String arrow = look.glyphs().arrow() + " ";
    int column = STATE_COLUMNS + TextWidth.columns(arrow);
    String lead = arrow;
    for (String text : TextWidth.wrap(look.glyphs().text(remedy), room - column)) {
      Line line = new Line(look).to(STATE_COLUMNS).add(lead).to(column);
      lines.add(line.add(Style.STRONG, text).render(room));
      lead = "";
    }
  }

  private static String mark(ChecklistItem item, Look look) {
    return switch (item.state()) {
      case PASSED -> look.glyphs().passed();
      case WARNING -> "!";
      case FAILED -> look.glyphs().failed();
    };
  }

  private static String word(ChecklistItem item) {
    return switch (item.state()) {
      case PASSED -> "ok";
      case WARNING -> "warning";
      case FAILED -> "failed";
    };
  }

  private static Style style(ChecklistItem item) {
    return switch (item.state()) {
      case PASSED -> Style.GOOD;
      case WARNING -> Style.WARNING;
      case FAILED -> Style.BAD;
    };
  }
}
