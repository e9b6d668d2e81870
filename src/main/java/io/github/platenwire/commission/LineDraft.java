package io.github.platenwire.commission;

import io.github.platenwire.toml.TomlText;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Writes a line definition out of the columns' roles. Used once; not thread-safe. */
final class LineDraft {
  private static final int LONGEST_UNSTATED = 80;
  private static final int LONGEST_POSSIBLE = 1024;
  private static final int EXAMPLES = 3;

  private final Table table;
  private final Map<Column, Role> roles;
  private final SampleLines lines;
  private final char mark;

  LineDraft(Table table, Map<Column, Role> roles, SampleLines lines, char mark) {
    this.table = table;
    this.roles = roles;
    this.lines = lines;
    this.mark = mark;
  }

  String text(Hints hints) {
    List<String> out = new ArrayList<>();
    out.add("# Inferred from " + lines.lines().size() + " lines. Hold a few readings against the");
    out.add("# device's own display before you trust it, also a negative one and an overload.");
    out.add("#");
    exampleLines().forEach(line -> out.add("#   sent:  " + line));
    out.add("");
    out.add("format = \"platenwire-device 1\"");
    out.add("name = " + TomlText.quote(hints.name()));
    out.add("title = " + TomlText.quote(title()));
    out.add("kind = \"line\"");
    out.addAll(SerialLines.of(hints));
    out.add("");
    out.add("[line]");
    out.add("layout = " + TomlText.quote(layout()));
    out.add("terminator = " + TomlText.quote(lines.terminator()));
    longest(out);
    table.columns().forEach(column -> out.addAll(field(role(column))));
    return String.join("\n", out) + "\n";
  }

  private Role role(Column column) {
    return roles.getOrDefault(column, new Role.Literal(column.commonest()));
  }

  private List<String> exampleLines() {
    return lines.lines().stream()
        .skip(1)
        .distinct()
        .limit(EXAMPLES)
        .map(line -> SampleDecoder.shown(line.getBytes(StandardCharsets.ISO_8859_1), 70))
        .toList();
  }

  private String title() {
    return roles.values().stream()
            .filter(Role.Value.class::isInstance)
            .map(role -> ((Role.Value) role).name() + " in " + ((Role.Value) role).unit())
            .collect(Collectors.joining(", "))
        + ", lines sent unasked";
  }

  private void longest(List<String> out) {
    int longest = lines.lines().stream().mapToInt(String::length).max().orElse(0);
    if (longest > LONGEST_UNSTATED / 2) {
      out.add("longest = " + Math.min(LONGEST_POSSIBLE, 2 * longest));
    }
  }

  private String layout() {
    StringBuilder layout = new StringBuilder();
    for (int i = 0; i < table.columns().size(); i++) {
      layout.append(gap(i)).append(place(role(table.columns().get(i))));
    }
    boolean blanks = table.blanksAtEnd().keySet().stream().anyMatch(count -> count > 0);
    return layout + (blanks ? " " : "");
  }

  private String gap(int index) {
    Role role = role(table.columns().get(index));
    if (role instanceof Role.State state && state.blanksBefore() >= 0) {
      return "\\x20".repeat(state.blanksBefore());
    }
    Set<Integer> counts = table.blanksBefore(index).keySet();
    boolean ever = counts.stream().anyMatch(count -> count > 0);
    boolean first = index == 0;
    if (!ever || (first && role instanceof Role.Value)) {
      return "";
    }
    // a text goes on to the next blank or to the next literal; it cannot do either as it comes
    boolean afterText = !first && role(table.columns().get(index - 1)) instanceof Role.Passed;
    return afterText && counts.contains(0) && role instanceof Role.Literal ? "" : " ";
  }

  private static String place(Role role) {
    if (role instanceof Role.Literal literal) {
      return Escapes.literal(literal.text());
    }
    return "{" + name(role) + "}";
  }

  private static String name(Role role) {
    if (role instanceof Role.Value value) {
      return value.name();
    } else if (role instanceof Role.UnitWord unit) {
      return unit.name();
    } else if (role instanceof Role.State state) {
      return state.name();
    }
    return role instanceof Role.Passed passed ? passed.name() : "";
  }

  private List<String> field(Role role) {
    if (role instanceof Role.Literal) {
      return List.of();
    }
    List<String> out = new ArrayList<>();
    out.add("");
    if (role instanceof Role.Passed passed) {
      out.add("# passed over: " + passed.why());
    }
    out.add("[fields." + name(role) + "]");
    if (role instanceof Role.Value value) {
      out.addAll(value(value));
    } else if (role instanceof Role.UnitWord unit) {
      out.addAll(unit(unit));
    } else if (role instanceof Role.State state) {
      out.addAll(state(state));
    } else if (role instanceof Role.Passed passed) {
      out.add("kind = \"text\"");
      if (needsWidth(passed)) {
        out.add("width = " + passed.width());
      }
    }
    return out;
  }

  private List<String> value(Role.Value value) {
    List<String> out = new ArrayList<>();
    NumberShape shape = value.shape();
    out.add("kind = \"number\"");
    out.add("unit = " + TomlText.quote(value.unit()));
    if (mark != '.' && shape.marked()) {
      out.add("decimal = " + TomlText.quote(Character.toString(mark)));
    }
    if (shape.digits() > 0) {
      out.add("digits = " + shape.digits() + "  # padded with zeros to just so many");
    }
    if (!shape.sign().equals("optional")) {
      out.add("sign = " + TomlText.quote(shape.sign()));
    }
    if (shape.exponent()) {
      out.add("exponent = true");
    }
    if (!value.over().isEmpty()) {
      out.add("# stood in the number's place");
      out.add(
          "over = ["
              + value.over().stream()
                  .map(text -> TomlText.quote(Escapes.bytes(text)))
                  .collect(Collectors.joining(", "))
              + "]");
    }
    return out;
  }

  private List<String> unit(Role.UnitWord unit) {
    List<String> out = new ArrayList<>();
    out.add("kind = \"unit\"");
    boolean several = roles.values().stream().filter(Role.Value.class::isInstance).count() > 1;
    if (several) {
      out.add("of = " + TomlText.quote(name(role(unit.of()))));
    }
    out.add("# add what else the device can be set to, each = N, kN, lbf, mm, in …");
    out.add("spellings = " + words(unit.spellings()));
    return out;
  }

  private static List<String> state(Role.State state) {
    List<String> out = new ArrayList<>();
    out.add("kind = \"status\"");
    out.add("# a guess: what does each mean? \"ok\", \"unstable\" or \"over\"");
    out.add("codes = " + words(state.codes()));
    if (state.width() > 0) {
      out.add("width = " + state.width());
    }
    return out;
  }

  private static String words(Map<String, String> words) {
    return words.entrySet().stream()
        .map(e -> TomlText.quote(Escapes.bytes(e.getKey())) + " = " + TomlText.quote(e.getValue()))
        .collect(Collectors.joining(", ", "{ ", " }"));
  }

  /** A text whose end nothing marks must have a width. */
  private boolean needsWidth(Role.Passed passed) {
    for (int i = 0; i + 1 < table.columns().size(); i++) {
      if (role(table.columns().get(i)).equals(passed)) {
        boolean field = !(role(table.columns().get(i + 1)) instanceof Role.Literal);
        return field && table.blanksBefore(i + 1).containsKey(0) && passed.width() > 0;
      }
    }
    return passed.name().startsWith("check") && passed.width() > 0;
  }
}
