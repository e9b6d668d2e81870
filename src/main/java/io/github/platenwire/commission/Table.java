package io.github.platenwire.commission;

import io.github.platenwire.commission.Token.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Lines of one format with their columns, and the blanks between these. Signs that stand apart from
 * their number are put together with it, and units from the states that cling to them. Not
 * thread-safe.
 */
final class Table {
  private final List<String> lines;
  private final List<Column> columns;
  private final Set<Integer> aside;
  private final List<Column> signedAfter = new ArrayList<>();

  Table(List<String> lines, Alignment alignment) {
    this.lines = lines;
    this.columns = new ArrayList<>(alignment.columns());
    this.aside = alignment.aside();
    joinSigns();
  }

  List<Column> columns() {
    return columns;
  }

  /** How many lines are in the columns. */
  int size() {
    return lines.size() - aside.size();
  }

  boolean isSignedAfter(Column column) {
    return signedAfter.contains(column);
  }

  private void joinSigns() {
    for (int i = 1; i < columns.size(); i++) {
      Column sign = columns.get(i);
      Column before = columns.get(i - 1);
      boolean signs = sign.texts().keySet().stream().allMatch(t -> t.equals("+") || t.equals("-"));
      if (sign.kind() != Kind.MARK || before.kind() != Kind.NUMBER || !signs || isLoose(i)) {
        continue;
      }
      Column next = i + 1 < columns.size() ? columns.get(i + 1) : sign;
      if (next.kind() == Kind.NUMBER && !isLoose(i + 1)) {
        each((line, text) -> prefix(line, sign, next));
      } else {
        each((line, text) -> append(line, text, sign, before));
        signedAfter.add(before);
      }
      columns.remove(i);
    }
  }

  /** Whether blanks ever stand before a column. */
  private boolean isLoose(int index) {
    return blanksBefore(index).keySet().stream().anyMatch(count -> count > 0);
  }

  private static void prefix(int line, Column sign, Column number) {
    Token first = sign.token(line);
    Token digits = number.token(line);
    if (first != null && digits != null) {
      number.remove(line);
      number.put(line, new Token(digits.kind(), first.text() + digits.text(), first.from()));
    }
  }

  /** A blank in the sign's place is a plus. */
  private static void append(int line, String text, Column sign, Column number) {
    Token digits = number.token(line);
    if (digits == null || digits.kind() != Kind.NUMBER) {
      return;
    }
    Token after = sign.token(line);
    boolean blank = digits.to() < text.length() && text.charAt(digits.to()) == ' ';
    if (after != null || blank) {
      String place = after == null ? " " : after.text();
      number.remove(line);
      number.put(line, new Token(digits.kind(), digits.text() + place, digits.from()));
    }
  }

  /** Takes a state off that clings to a unit: {@code kNS} is {@code kN} and {@code S}. */
  void splitUnits(UnitSpellings units) {
    for (int i = 0; i < columns.size(); i++) {
      Column column = columns.get(i);
      boolean cling =
          column.kind() == Kind.WORD
              && column.texts().size() > 1
              && column.texts().keySet().stream()
                  .allMatch(text -> !units.isUnit(text) && units.beginning(text).isPresent());
      if (cling) {
        Column rest = new Column(Kind.WORD);
        each((line, text) -> split(line, column, rest, units));
        columns.add(i + 1, rest);
      }
    }
  }

  private static void split(int line, Column column, Column rest, UnitSpellings units) {
    Token word = column.token(line);
    if (word != null) {
      int length = units.beginning(word.text()).orElse("").length();
      column.remove(line);
      column.put(line, new Token(Kind.WORD, word.text().substring(0, length), word.from()));
      rest.put(line, new Token(Kind.WORD, word.text().substring(length), word.from() + length));
    }
  }

  /** Does something with each line that is in the columns. */
  void each(LineAction action) {
    for (int line = 0; line < lines.size(); line++) {
      if (!aside.contains(line)) {
        action.take(line, lines.get(line));
      }
    }
  }

  /** Takes a line. */
  @FunctionalInterface
  interface LineAction {
    /** Takes a line and its number, from 0. */
    void take(int line, String text);
  }

  /** Counts of blanks before a column, each with how many lines have so many. */
  Map<Integer, Integer> blanksBefore(int index) {
    Map<Integer, Integer> counts = new TreeMap<>();
    each(
        (line, text) -> {
          Token token = columns.get(index).token(line);
          if (token != null) {
            counts.merge(token.from() - endBefore(line, index), 1, Integer::sum);
          }
        });
    return counts;
  }

  /** Counts of blanks that stand in a column's place, with those around it, where it is absent. */
  Map<Integer, Integer> blanksInstead(int index) {
    Map<Integer, Integer> counts = new TreeMap<>();
    each(
        (line, text) -> {
          if (columns.get(index).token(line) == null) {
            Token after = after(line, index);
            int to = after == null ? text.length() : after.from();
            counts.merge(to - endBefore(line, index), 1, Integer::sum);
          }
        });
    return counts;
  }

  /** Counts of blanks at the ends of the lines. */
  Map<Integer, Integer> blanksAtEnd() {
    Map<Integer, Integer> counts = new TreeMap<>();
    each(
        (line, text) ->
            counts.merge(text.length() - endBefore(line, columns.size()), 1, Integer::sum));
    return counts;
  }

  private int endBefore(int line, int index) {
    for (int i = index - 1; i >= 0; i--) {
      Token token = columns.get(i).token(line);
      if (token != null) {
        return token.to();
      }
    }
    return 0;
  }

  private @Nullable Token after(int line, int index) {
    for (int i = index + 1; i < columns.size(); i++) {
      Token token = columns.get(i).token(line);
      if (token != null) {
        return token;
      }
    }
    return null;
  }
}
