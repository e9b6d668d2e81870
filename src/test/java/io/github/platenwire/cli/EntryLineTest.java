package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.quantity.Unit;
import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class EntryLineTest {
  private static final Instant NOW = Instant.parse("2026-11-25T10:30:00Z");
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

  private static String canonical(String typed) throws Exception {
    return EntryLine.canonical(typed, Unit.MILLIMETRE, BERLIN, NOW);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      value = {
        "45.2 | >45.2 mm;",
        "45,2 | >45.2 mm;",
        "1.78 in | >1.78 in;",
        "1.78in | >1.78 in;",
        "-0.5 | >-0.5 mm;",
        "45.2 after 95 min | >45.2 mm; after 5700 s",
        "45.2 after 1.5 h | >45.2 mm; after 5400 s",
        "45.2 for 12 | >45.2 mm; for 12",
        "45.2 after 2 min for 12 | >45.2 mm; after 120 s for 12",
        "45.2 at 11:20 | >45.2 mm; at 2026-11-25T10:20:00Z",
        "45.2 at 11:20:30 | >45.2 mm; at 2026-11-25T10:20:30Z",
        "45.2 at 23:59 | >45.2 mm; at 2026-11-24T22:59:00Z",
        "45.2 at 2026-11-20 08:00 | >45.2 mm; at 2026-11-20T07:00:00Z",
      })
  void canonical_whatPeopleType_isTheOneForm(String typed, String line) throws Exception {
    assertThat(canonical(typed)).isEqualTo(line);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "deep",
        "45.2.1",
        "45 lbf",
        "45 g",
        "45 at 25:00",
        "45 at",
        "45 for",
        "45 for twelve",
        "45 at 2026-11-26 08:00",
        "45 after 5",
        "1e5",
        "45 mm mm"
      })
  void canonical_whatIsNoEntry_isRefusedWithAReason(String typed) {
    assertThatThrownBy(() -> canonical(typed))
        .isInstanceOf(EntryLine.NotAnEntry.class)
        .message()
        .isNotBlank();
  }

  @Test
  void canonical_massWithoutUnit_isInTheChannelsUnit() throws Exception {
    assertThat(EntryLine.canonical("1543.21", Unit.GRAM, BERLIN, NOW)).isEqualTo(">1543.21 g;");
  }
}
