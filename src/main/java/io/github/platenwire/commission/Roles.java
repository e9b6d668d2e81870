package io.github.platenwire.commission;

import io.github.platenwire.commission.Question.Kind;
import io.github.platenwire.quantity.Quantity;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Finds out what each column is. Used once; not thread-safe. */
final class Roles {
  private static final int MOST_STATES = 8;
  private static final String COUNTER = "a running number";

  private final Table table;
  private final char mark;
  private final Hints hints;
  private final UnitSpellings units;
  private final StateCodes states;
  private final Map<Column, Role> roles = new LinkedHashMap<>();
  private final Map<Column, Column> unitColumns = new HashMap<>();
  private final Map<Column, String> unitOf = new HashMap<>();
  private final Map<Column, String> passed = new HashMap<>();
  private final List<Question> questions = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();
  private final Set<String> names = new LinkedHashSet<>();

  Roles(Table table, char mark, Hints hints, String checkWords) {
    this.table = table;
    this.mark = mark;
    this.hints = hints;
    this.units = new UnitSpellings(hints.spellings());
    this.states = new StateCodes(hints.states());
    table.splitUnits(units);
    findUnits();
    findRunning();
    chooseValues();
    if (questions.isEmpty()) {
      table.columns().forEach(column -> roles.put(column, role(column, checkWords)));
    }
  }

  /** The role of each column, in their order; empty while questions are open. */
  Map<Column, Role> roles() {
    return roles;
  }

  List<Question> questions() {
    return questions;
  }

  List<String> notes() {
    return notes;
  }

  private List<Column> numbers() {
    return table.columns().stream().filter(c -> c.kind() == Token.Kind.NUMBER).toList();
  }

  /** A unit belongs to the number before it, else to the one after it. */
  private void findUnits() {
    List<Column> columns = table.columns();
    for (int i = 0; i < columns.size(); i++) {
      Column column = columns.get(i);
      boolean words =
          column.kind() == Token.Kind.WORD
              && column.texts().keySet().stream().allMatch(units::isUnit);
      Column number = words ? numberNear(i) : null;
      if (number != null) {
        unitColumns.put(column, number);
        unitOf.put(number, units.unit(column.commonest()).orElseThrow());
      }
    }
  }

  private @Nullable Column numberNear(int index) {
    List<Column> columns = table.columns();
    for (int i = index - 1; i >= 0 && i >= index - 2; i--) {
      if (isFree(columns.get(i))) {
        return columns.get(i);
      }
    }
    for (int i = index + 1; i < columns.size() && i <= index + 2; i++) {
      if (isFree(columns.get(i))) {
        return columns.get(i);
      }
    }
    return null;
  }

  private boolean isFree(Column column) {
    return column.kind() == Token.Kind.NUMBER && !unitOf.containsKey(column);
  }

  /** Counters, clocks, and numbers that never change beside others that carry a unit. */
  private void findRunning() {
    for (Column column : numbers()) {
      if (unitOf.containsKey(column)) {
        continue;
      }
      double[] values =
          column.own().stream().mapToDouble(text -> NumberShape.value(text, mark)).toArray();
      boolean alone = numbers().size() == 1;
      if (!alone && Running.isCounter(values)) {
        passed.put(column, COUNTER);
      } else if (!unitOf.isEmpty() && Running.isClock(values)) {
        passed.put(column, "a time that runs on evenly");
      } else if (column.isConstant() && !unitOf.isEmpty()) {
        passed.put(column, "a number that never changed");
      }
    }
  }

  private void chooseValues() {
    List<String> told = new ArrayList<>(hints.units());
    for (Column column : numbers()) {
      if (unitOf.containsKey(column) || passed.containsKey(column)) {
        continue;
      }
      if (!told.isEmpty()) {
        String unit = told.remove(0);
        if (unit.equals(Hints.PASS_OVER)) {
          passed.put(column, "a number without a unit");
        } else {
          tell(column, unit);
        }
      } else if (unitOf.isEmpty()) {
        ask(column);
      } else {
        passed.put(column, "a number without a unit");
      }
    }
    passed.forEach(
        (column, why) ->
            notes.add("'" + column.commonest() + "' is passed over: it seems to be " + why + "."));
  }

  /** A unit that a person named; a word just behind the number is then its spelling. */
  private void tell(Column number, String unit) {
    unitOf.put(number, unit);
    Column word = wordBehind(number);
    if (word != null) {
      unitColumns.put(word, number);
    }
  }

  private @Nullable Column wordBehind(Column number) {
    int at = table.columns().indexOf(number) + 1;
    if (at >= table.columns().size()) {
      return null;
    }
    Column next = table.columns().get(at);
    boolean word = next.kind() == Token.Kind.WORD && next.isConstant();
    boolean free = !unitColumns.containsKey(next) && !states.isKnown(next.commonest());
    return word && free ? next : null;
  }

  private void ask(Column number) {
    Column word = wordBehind(number);
    String example = number.commonest().strip();
    if (word != null) {
      String spelling = word.commonest();
      questions.add(
          new Question(
              Kind.SPELLING,
              spelling,
              "Which unit does '"
                  + spelling
                  + "' stand for, in '"
                  + example
                  + " "
                  + spelling
                  + "'?"));
    } else {
      questions.add(
          new Question(
              Kind.UNIT,
              example,
              "The line carries no unit for the number '" + example + "'. In which unit is it?"));
    }
  }

  private Role role(Column column, String checkWords) {
    return switch (column.kind()) {
      case NUMBER -> number(column);
      case TIME -> passed(column, "time", "a date or time of day");
      case CHECK -> passed(column, "check", checkWords);
      case WORD, MARK, DASHES -> word(column);
    };
  }

  private Role number(Column column) {
    String unit = unitOf.get(column);
    if (unit != null && !passed.containsKey(column)) {
      NumberShape shape = NumberShape.of(column.own(), mark, table.isSignedAfter(column));
      String name =
          UnitSpellings.quantity(unit).equals(Optional.of(Quantity.LENGTH)) ? "gauge" : "load";
      return new Role.Value(name(name), unit, shape, column.strange());
    }
    if (column.isConstant() && isAttached(column)) {
      return new Role.Literal(column.commonest());
    }
    String why = passed.getOrDefault(column, "a number");
    return passed(column, why.equals(COUNTER) ? "count" : "number", why);
  }

  /** Whether a number clings to the word before it, as in {@code CH1}. */
  private boolean isAttached(Column column) {
    int at = table.columns().indexOf(column);
    return at > 0
        && table.columns().get(at - 1).kind() == Token.Kind.WORD
        && table.blanksBefore(at).keySet().equals(Set.of(0));
  }

  private Role word(Column column) {
    Column number = unitColumns.get(column);
    if (number != null) {
      Map<String, String> spellings = new LinkedHashMap<>();
      for (String text : column.texts().keySet()) {
        spellings.put(text, units.unit(text).orElse(Objects.requireNonNull(unitOf.get(number))));
      }
      return new Role.UnitWord(name("unit"), number, spellings);
    }
    boolean everywhere = column.count() == table.size();
    if (column.isConstant() && everywhere && !states.isKnown(column.commonest())) {
      return new Role.Literal(column.commonest());
    }
    if (column.texts().size() > MOST_STATES) {
      return passed(column, "text", "a text that changes");
    }
    return state(column, everywhere);
  }

  private Role state(Column column, boolean everywhere) {
    Set<String> codes = new LinkedHashSet<>(column.texts().keySet());
    String commonest = column.commonest();
    int width = 0;
    int blanks = -1;
    if (!everywhere) {
      codes.add("");
      commonest = column.count() * 2 > table.size() ? commonest : "";
      width = codes.stream().mapToInt(String::length).max().orElse(1);
      Map<Integer, Integer> before = table.blanksBefore(table.columns().indexOf(column));
      blanks = before.keySet().stream().min(Integer::compare).orElse(0);
    }
    Map<String, String> meanings = states.meanings(codes, commonest);
    notes.add("The states " + inQuotes(meanings) + " are a guess: check them against the manual.");
    return new Role.State(name("state"), meanings, width, blanks);
  }

  private static String inQuotes(Map<String, String> meanings) {
    List<String> words = new ArrayList<>();
    meanings.forEach((code, meaning) -> words.add("'" + code + "' = " + meaning));
    return String.join(", ", words);
  }

  private Role passed(Column column, String name, String why) {
    boolean everywhere = column.count() == table.size();
    return new Role.Passed(name(name), why, everywhere ? column.width() : 0);
  }

  private String name(String wanted) {
    String name = wanted;
    for (int i = 2; !names.add(name); i++) {
      name = wanted + "-" + i;
    }
    return name;
  }
}
