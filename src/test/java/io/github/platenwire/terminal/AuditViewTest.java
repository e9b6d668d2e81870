package io.github.platenwire.terminal;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.audit.AuditReport;
import io.github.platenwire.audit.AuditReport.RecordSeen;
import io.github.platenwire.audit.AuditReport.RegisterSeen;
import io.github.platenwire.audit.Check;
import io.github.platenwire.audit.Checks;
import io.github.platenwire.audit.Finding;
import io.github.platenwire.audit.Location;
import io.github.platenwire.audit.Severity;
import io.github.platenwire.quantity.UnitSystem;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class AuditViewTest {
  private static final String TEST = "20261125T071502Z_RA-07-2";
  private static final String RAW = "records/2026-11/" + TEST + ".raw.csv";
  private static final Look COLOURED = new Look(Palette.COLOURS, Glyphs.UNICODE, UnitSystem.SI);
  private static final Look BARE = new Look(Palette.PLAIN, Glyphs.ASCII, UnitSystem.SI);

  private static Check check(String id) {
    return Checks.all().stream().filter(one -> one.id().equals(id)).findFirst().orElseThrow();
  }

  private static AuditReport report(List<Finding> findings) {
    return new AuditReport(
        "Alder Weir lab",
        ZoneId.of("Europe/Vienna"),
        "the whole archive",
        Instant.parse("2026-11-25T12:00:00Z"),
        "test",
        412,
        1_234_567,
        61_200_000,
        List.of(
            new RecordSeen(
                TEST,
                RAW,
                Optional.of(Instant.parse("2026-11-25T07:15:02Z")),
                Optional.of(Instant.parse("2026-11-25T07:17:31Z")),
                Optional.of("frame-1"),
                Optional.of("RA-07-2"),
                Optional.of("RA-07"),
                4436,
                Optional.of(Severity.FAULT))),
        List.of(new RegisterSeen("frame-1", 203, Optional.of("3f5a2c6be1d09417"))),
        findings);
  }

  private static List<Finding> findings() {
    return List.of(
        new Finding(
            check("seal-broken"),
            Location.of(RAW, 412, 10_240),
            Optional.of(TEST),
            "the bytes before this line have sha256=" + "0a".repeat(32),
            "it says " + "b1".repeat(32)),
        new Finding(
            check("rate-outside"),
            Location.of(RAW),
            Optional.of(TEST),
            "the method's check 'rate' met",
            "the rate was within 0.20 to 0.30 MPa/s for 71 % of the 40.5 s"),
        new Finding(
            check("foreign-file"),
            Location.of("records/2026-11/lunch.txt"),
            Optional.empty(),
            "raw files, summaries and torn ends",
            "a file of another kind"));
  }

  @Test
  void view_findings_heaviestFirst() throws Exception {
    Golden.compare("audit-colour", AuditView.lines(report(findings()), 80, COLOURED));
    Golden.compare("audit-bare-60", AuditView.lines(report(findings()), 60, BARE));
  }

  @Test
  void view_nothingFound_saysSo() throws Exception {
    Golden.compare("audit-clean", AuditView.lines(report(List.of()), 80, BARE));
  }

  @Test
  void view_manyOfAKind_areCounted() {
    List<Finding> many = new ArrayList<>();
    for (int i = 0; i < 100; i++) {
      many.add(
          new Finding(
              check("foreign-file"),
              Location.of("records/" + (1000 + i)),
              Optional.empty(),
              "a",
              "b"));
    }
    String text = String.join("\n", AuditView.lines(report(many), 80, BARE));
    assertThat(text).contains("100 notes", "records/1011", "and 88 more; --csv");
    assertThat(text).doesNotContain("records/1012");
  }

  @Test
  void view_anyWidth_neverRunsOver() {
    for (int columns = 41; columns < 140; columns += 7) {
      int room = columns;
      assertThat(AuditView.lines(report(findings()), columns, BARE))
          .allMatch(line -> line.length() < room);
    }
  }

  @Test
  void bar_aSecondLater_comesUpAndIsWipedAway() {
    AtomicLong nanos = new AtomicLong();
    ByteArrayOutputStream written = new ByteArrayOutputStream();
    TerminalTraits traits = new TerminalTraits(/* redraws= */ true, Palette.PLAIN, Glyphs.ASCII);
    TerminalOut out = new TerminalOut(written, StandardCharsets.US_ASCII);
    try (ProgressBar bar = new ProgressBar(out, traits, 60, nanos::get, "Reading records")) {
      bar.bytes(10_000_000, 100_000_000);
      assertThat(written.size()).as("nothing within a second").isZero();
      nanos.set(1_100_000_000L);
      bar.bytes(50_000_000, 100_000_000);
      String shown = written.toString(StandardCharsets.US_ASCII);
      assertThat(shown)
          .contains("Reading records ####")
          .contains("....", " 50 %  50.0 of 100.0 MB");
      assertThat(shown.replace("\r\u001b[K", "").length()).isLessThan(60);
      bar.bytes(51_000_000, 100_000_000);
      assertThat(written.toString(StandardCharsets.US_ASCII))
          .as("ten times a second")
          .isEqualTo(shown);
    }
    assertThat(written.toString(StandardCharsets.US_ASCII)).endsWith("\r\u001b[K");
  }

  @Test
  void bar_noTerminal_writesNothing() {
    ByteArrayOutputStream written = new ByteArrayOutputStream();
    AtomicLong nanos = new AtomicLong();
    TerminalTraits traits = new TerminalTraits(/* redraws= */ false, Palette.PLAIN, Glyphs.ASCII);
    TerminalOut out = new TerminalOut(written, StandardCharsets.US_ASCII);
    try (ProgressBar bar = new ProgressBar(out, traits, 60, nanos::get, "Reading records")) {
      nanos.set(5_000_000_000L);
      bar.bytes(1, 2);
    }
    assertThat(written.size()).isZero();
  }
}
