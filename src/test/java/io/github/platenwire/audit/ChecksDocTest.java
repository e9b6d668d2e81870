package io.github.platenwire.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The table of checks in the documentation is the one in the code, word for word. */
class ChecksDocTest {
  private static final Path DOC = Path.of("src", "docs", "audit.md");
  private static final Pattern ROW =
      Pattern.compile("\\| `([a-z-]+)` \\| (\\w+) \\| (.+) \\| (.+) \\|");

  private static String row(Check check) {
    return "| `"
        + check.id()
        + "` | "
        + check.severity().word()
        + " | "
        + check.meaning()
        + " | "
        + check.advice()
        + " |";
  }

  @Test
  void documentation_everyCheck_isToldAsInTheCode() throws Exception {
    List<String> told =
        Files.readAllLines(DOC).stream().filter(line -> ROW.matcher(line).matches()).toList();
    assertThat(told)
        .containsExactlyElementsOf(Checks.all().stream().map(ChecksDocTest::row).toList());
  }

  @Test
  void checks_all_haveWordsOfTheirOwn() {
    assertThat(Checks.all()).extracting(Check::id).doesNotHaveDuplicates();
    assertThat(Checks.all()).extracting(Check::meaning).doesNotHaveDuplicates();
    for (Check check : Checks.all()) {
      assertThat(check.meaning()).as(check.id()).matches("[A-Z].{20,}\\.");
      assertThat(check.advice()).as(check.id()).matches("[A-Z].{20,}\\.").doesNotContain("|");
      Matcher word = Pattern.compile("[a-z]+(-[a-z]+)*").matcher(check.id());
      assertThat(word.matches()).as(check.id()).isTrue();
    }
  }
}
