package io.github.platenwire.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.toml.TomlException;
import org.junit.jupiter.api.Test;

/** Heads that share the files that they keep, and heads in which something is wrong. */
class HeaderParserTest {
  private static RawHeader parse(String text) throws TomlException {
    return HeaderParser.parse(text, "a.raw.csv");
  }

  private static void assertWrongAt(String good, String from, String to) {
    String bad = good.replace(from, to);
    assertThat(bad).isNotEqualTo(good);
    long line = good.substring(0, good.indexOf(from) + from.length()).lines().count();
    assertThatThrownBy(() -> parse(bad))
        .isInstanceOfSatisfying(
            TomlException.class, wrong -> assertThat((long) wrong.line()).isEqualTo(line));
  }

  @Test
  void parse_headsWithTheSameKeptFiles_giveEachItsOwn() throws Exception {
    RawHeader first = Samples.header();
    String text = HeaderText.write(first);
    assertThat(parse(text)).isEqualTo(first).isEqualTo(parse(text));
    String other = text.replace(first.test(), "20260101T000000Z_B-1");
    assertThat(parse(other).test()).isEqualTo("20260101T000000Z_B-1");
    assertThat(parse(other).method()).isEqualTo(first.method());
    String changed = text.replace(first.rig().name(), "another-rig");
    assertThat(parse(changed).rig().name()).isEqualTo("another-rig");
  }

  @Test
  void parse_tablesInAnotherOrder_readsTheSame() throws Exception {
    RawHeader header = Samples.header();
    String text = HeaderText.write(header);
    int kept = text.indexOf("\n[method]\n");
    int tables = text.indexOf("\n[specimen]\n");
    String turned = text.substring(0, tables) + text.substring(kept) + text.substring(tables, kept);
    assertThat(parse(turned)).isEqualTo(header);
  }

  @Test
  void parse_wrongKeyBeforeOrAmongTheKeptFiles_namesItsLineInTheHead() throws Exception {
    String text = HeaderText.write(Samples.header());
    assertThat(parse(text)).isNotNull();
    assertWrongAt(text, "zone = ", "zonne = ");
    assertWrongAt(text, "[rig]\nname", "[rig]\nnome");
    assertWrongAt(text, "[[device]]", "[[devise]]");
  }

  @Test
  void parse_tableTwice_isRefused() {
    String text = HeaderText.write(Samples.header());
    assertThatThrownBy(() -> parse(text + "\n[specimen]\nname = \"B\"\n"))
        .isInstanceOf(TomlException.class);
  }
}
