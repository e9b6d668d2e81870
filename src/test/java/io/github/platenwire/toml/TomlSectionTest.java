package io.github.platenwire.toml;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class TomlSectionTest {
  private static final String DOCUMENT =
      """
      # a comment
      text = "a"
      whole = 7
        real = 1.5
      flag = true
      day = 2026-11-25
      numbers = [1, 2.5]
      texts = ["a", "b"]
      rows = [[1, 2], [3.5, 4]]
      mixed = ["a", 1]
      [table]
      z = "1"
      a = "2"
      [table.inner]
      x = 1
      [[list]]
      n = 1
      [[list]]
      n = 2
      bad = "x"
      [units]
      "lb f" = 1
      "" = 2
      """;

  private interface Reading {
    Object read() throws TomlException;
  }

  private static TomlSection document() throws TomlException {
    return TomlSection.parse(DOCUMENT, "d.toml");
  }

  private static String problem(Reading reading) {
    TomlException problem = catchThrowableOfType(TomlException.class, reading::read);
    assertThat(problem).as("no error").isNotNull();
    assertThat(problem.source()).isEqualTo("d.toml");
    assertThat(problem.getMessage())
        .startsWith("d.toml:" + problem.line() + ":" + problem.column() + ": ");
    return problem.getMessage();
  }

  @Test
  void read_everyType_givesItsValue() throws TomlException {
    TomlSection d = document();
    assertThat(d.source()).isEqualTo("d.toml");
    assertThat(d.string("text")).isEqualTo("a");
    assertThat(d.whole("whole")).isEqualTo(7);
    assertThat(d.number("whole")).isEqualTo(7.0);
    assertThat(d.number("real")).isEqualTo(1.5);
    assertThat(d.flagOr("flag", false)).isTrue();
    assertThat(d.optionalDate("day")).contains(LocalDate.of(2026, 11, 25));
    assertThat(d.numbers("numbers")).containsExactly(1.0, 2.5);
    assertThat(d.strings("texts")).containsExactly("a", "b");
    assertThat(d.numberRows("rows")).containsExactly(List.of(1.0, 2.0), List.of(3.5, 4.0));
    assertThat(d.choice("text", "a", "b")).isEqualTo("a");
    assertThat(d.section("table").section("inner").whole("x")).isEqualTo(1);
    assertThat(d.sections("list")).extracting(s -> s.whole("n")).containsExactly(1L, 2L);
    assertThat(d.section("units").numberMap()).containsEntry("lb f", 1.0).containsEntry("", 2.0);
  }

  @Test
  void read_absentKeys_giveTheirStandIns() throws TomlException {
    TomlSection d = document();
    assertThat(d.has("none")).isFalse();
    assertThat(d.optionalString("none")).isEmpty();
    assertThat(d.optionalNumber("none")).isEmpty();
    assertThat(d.optionalWhole("none")).isEmpty();
    assertThat(d.optionalDate("none")).isEmpty();
    assertThat(d.optionalSection("none")).isEmpty();
    assertThat(d.flagOr("none", true)).isTrue();
    assertThat(d.choiceOr("none", "b", "a", "b")).isEqualTo("b");
    assertThat(d.numbers("none")).isEmpty();
    assertThat(d.strings("none")).isEmpty();
    assertThat(d.numberRows("none")).isEmpty();
    assertThat(d.sections("none")).isEmpty();
  }

  @Test
  void read_wrongType_saysWhereAndWhatItIs() throws TomlException {
    TomlSection d = document();
    assertThat(problem(() -> d.string("whole")))
        .isEqualTo("d.toml:3:1: 'whole' must be a text in double quotes, but it is 7");
    assertThat(problem(() -> d.whole("real")))
        .isEqualTo("d.toml:4:3: 'real' must be a whole number, but it is 1.5");
    assertThat(problem(() -> d.number("text")))
        .isEqualTo("d.toml:2:1: 'text' must be a number, but it is the text \"a\"");
    assertThat(problem(() -> d.flagOr("text", true))).startsWith("d.toml:2:1: 'text' must be true");
    assertThat(problem(() -> d.optionalDate("text")))
        .startsWith("d.toml:2:1: 'text' must be a date");
    assertThat(problem(() -> d.section("text"))).startsWith("d.toml:2:1: 'text' must be a table");
    assertThat(problem(() -> d.string("table"))).contains(":11:1: ").endsWith("but it is a table");
    assertThat(problem(() -> d.string("texts"))).contains(":8:1: ").endsWith("but it is a list");
    assertThat(problem(() -> d.numbers("texts")))
        .startsWith("d.toml:8:1: 'texts' must be a number");
    assertThat(problem(() -> d.strings("mixed"))).startsWith("d.toml:10:1: 'mixed' must be texts");
    assertThat(problem(() -> d.numberRows("numbers")))
        .startsWith("d.toml:7:1: 'numbers' must be rows");
    assertThat(problem(() -> d.sections("texts"))).startsWith("d.toml:8:1: 'texts' must be tables");
    assertThat(problem(() -> d.sections("text"))).startsWith("d.toml:2:1: 'text' must be tables");
  }

  @Test
  void read_missingKey_namesTheTable() throws TomlException {
    TomlSection d = document();
    assertThat(problem(() -> d.string("none")))
        .isEqualTo("d.toml:1:1: 'none' is missing; it must be a text, such as none = \"…\"");
    assertThat(problem(() -> d.section("table").number("none")))
        .isEqualTo(
            "d.toml:11:1: 'none' is missing in [table]; it must be a number, such as none = 1.5");
    assertThat(problem(() -> d.section("table").section("inner").whole("none")))
        .startsWith("d.toml:14:1: 'none' is missing in [table.inner]");
    assertThat(problem(() -> d.section("table").section("none")))
        .endsWith("it must be a table [table.none]");
  }

  @Test
  void sections_errorInSecondTable_pointsIntoIt() throws TomlException {
    TomlSection second = document().sections("list").get(1);
    assertThat(problem(() -> second.whole("bad"))).startsWith("d.toml:20:1: ");
    assertThat(problem(() -> second.whole("none"))).startsWith("d.toml:18:");
  }

  @Test
  void allow_unknownKey_suggestsOrLists() throws TomlException {
    TomlSection inner = document().section("table");
    assertThat(problem(() -> allow(inner, "z", "a", "iner")))
        .isEqualTo("d.toml:14:1: unknown key 'inner', did you mean 'iner'?");
    assertThat(problem(() -> allow(inner, "z", "inner")))
        .isEqualTo("d.toml:13:1: unknown key 'a'; known here: inner, z");
    allow(inner, "z", "a", "inner");
  }

  private static Object allow(TomlSection section, String... keys) throws TomlException {
    section.allow(keys);
    return section;
  }

  @Test
  void allow_severalUnknownKeys_namesTheFirstInTheFile() throws TomlException {
    TomlSection inner = document().section("table");
    assertThat(problem(() -> allow(inner, "inner"))).startsWith("d.toml:12:1: unknown key 'z'");
  }

  @Test
  void choice_otherWord_suggestsAndLists() throws TomlException {
    TomlSection d = TomlSection.parse("parity = \"evn\"\n", "d.toml");
    assertThat(problem(() -> d.choice("parity", "none", "even", "odd")))
        .isEqualTo(
            "d.toml:1:1: 'evn' is not possible for parity, did you mean 'even'? Possible: none, even, odd");
  }

  @Test
  void namedSections_tables_comeInFileOrder() throws TomlException {
    String text = "[f.zebra]\nk = 1\n[f.ape]\nk = 2\n[f]\n";
    TomlSection fields =
        TomlSection.parse(text.substring(0, text.length() - 4), "d.toml").section("f");
    assertThat(fields.namedSections().keySet()).containsExactly("zebra", "ape");
    TomlSection mixed = TomlSection.parse("[f]\na = 1\n[f.b]\n", "d.toml").section("f");
    assertThat(problem(mixed::namedSections)).startsWith("d.toml:2:1: 'a' must be a table [f.a]");
  }

  @Test
  void stringMap_keys_comeInOrder() throws TomlException {
    TomlSection section = TomlSection.parse("z = \"1\"\na = \"2\"\n", "d.toml");
    assertThat(section.stringMap()).containsExactly(Map.entry("a", "2"), Map.entry("z", "1"));
  }

  @Test
  void parse_brokenDocument_pointsAtTheFault() {
    assertThat(problem(() -> TomlSection.parse("a = 1\nb = \n", "d.toml"))).startsWith("d.toml:2:");
    assertThat(problem(() -> TomlSection.parse("a = 1\na = 2\n", "d.toml")))
        .startsWith("d.toml:2:1: ");
    assertThat(problem(() -> TomlSection.parse("a = 4uoxyz\n", "d.toml"))).startsWith("d.toml:1:");
  }

  @Test
  void number_notFinite_isRefused() throws TomlException {
    TomlSection d = TomlSection.parse("a = nan\nb = inf\n", "d.toml");
    assertThat(problem(() -> d.number("a"))).startsWith("d.toml:1:1: 'a' must be a number");
    assertThat(problem(() -> d.number("b"))).startsWith("d.toml:2:1: 'b' must be a number");
  }

  @Test
  void error_ofWholeTable_pointsAtItsHead() throws TomlException {
    assertThat(document().section("table").error("odd").getMessage()).isEqualTo("d.toml:11:1: odd");
    assertThat(document().error("none", "odd").getMessage()).isEqualTo("d.toml:1:1: odd");
    assertThat(new TomlException("d.toml", 0, 0, "odd").getMessage()).isEqualTo("d.toml: odd");
  }
}
