package io.github.platenwire.audit;

import io.github.platenwire.method.MethodResult;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.ChannelTally;
import io.github.platenwire.record.CloseReason;
import io.github.platenwire.record.Closing;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawHeader.HeaderCheck;
import io.github.platenwire.record.Summary;
import io.github.platenwire.recorder.Reduction;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Audits what a test was: its method, its links, its times, its specimen. Confined to one thread.
 */
final class TestAudit {
  /** A checklist's word for what did not pass but was let through. */
  private static final String WARNING = "warning";

  private static final String ZERO_CHECK = "zero";

  /** Silences are judged by their end: so much longer than allowed cannot have been overseen. */
  private static final double SURELY_LATE = 2;

  private final AuditContext context;
  private final Location whole;
  private final Reduction reduction;
  private final RawHeader header;
  private final RowWatch watch;
  private final Findings findings;

  TestAudit(
      AuditContext context, String file, Reduction reduction, RowWatch watch, Findings findings) {
    this.context = context;
    this.whole = Location.of(file);
    this.reduction = reduction;
    this.header = reduction.test().header();
    this.watch = watch;
    this.findings = findings;
  }

  /**
   * Looks at everything.
   *
   * @param summary the newest, computed again; empty if the record was not closed
   * @param corrected the specimen with every correction, if there was one
   */
  void run(Optional<Summary> summary, Optional<Specimen> corrected) {
    summary.ifPresent(known -> method(known.result()));
    warnings(summary);
    links();
    for (int channel = 0; channel < header.channels().size(); channel++) {
      channel(header.channels().get(channel), reduction.test().channels().get(channel));
    }
    times();
    new CalibrationAudit(context.tables(), whole, header, watch, findings).run();
    specimen(corrected.orElse(header.specimen()));
  }

  private void add(Check check, Location location, String expected, String seen) {
    findings.add(check, location, header.test(), expected, seen);
  }

  private void method(MethodResult result) {
    for (MethodResult.Check check : result.checks()) {
      if (!check.met()) {
        add(
            checkOf(check.name()),
            whole,
            "the method's check '" + check.name() + "' met",
            check.words());
      }
    }
  }

  private static Check checkOf(String name) {
    return switch (name) {
      case "rate" -> TestCheck.RATE_OUTSIDE;
      case "age" -> TestCheck.AGE_OUTSIDE;
      case ZERO_CHECK -> TestCheck.ZERO_OUTSIDE;
      case "range" -> TestCheck.RANGE_EXCEEDED;
      default -> TestCheck.METHOD_NOT_MET;
    };
  }

  private void warnings(Optional<Summary> summary) {
    boolean told =
        summary
            .map(Summary::result)
            .map(result -> result.checks().stream().anyMatch(c -> isUnmetZero(c)))
            .orElse(false);
    for (HeaderCheck check : header.checklist()) {
      if (!told && check.state().equals(WARNING) && check.name().startsWith(ZERO_CHECK + " of ")) {
        add(TestCheck.ZERO_OUTSIDE, whole, "a zero within its tolerance", check.seen());
      }
    }
    header
        .overrideReason()
        .ifPresent(reason -> add(TestCheck.OVERRIDDEN, whole, "nothing against the test", reason));
    Optional<Closing> closing = reduction.test().closing();
    if (closing.isPresent() && closing.get().reason() == CloseReason.INTERRUPTED) {
      add(
          RawCheck.INTERRUPTED,
          whole,
          "a test that ended by itself or by its operator",
          last(watch.events("recovered "), watch.events("stop ")));
    }
  }

  private static boolean isUnmetZero(MethodResult.Check check) {
    return check.name().equals(ZERO_CHECK) && !check.met();
  }

  private static String last(List<RowWatch.Event> first, List<RowWatch.Event> otherwise) {
    List<RowWatch.Event> events = first.isEmpty() ? otherwise : first;
    return events.isEmpty() ? "interrupted" : events.get(events.size() - 1).text();
  }

  private void links() {
    for (RowWatch.Event event : watch.events("clock step ")) {
      add(TestCheck.CLOCK_STEP, at(event), "one time of day throughout", event.text());
    }
    for (RowWatch.Event event : watch.events("link lost ")) {
      add(TestCheck.LINK_LOST, at(event), "a link throughout", event.text());
    }
    List<RowWatch.Event> lost = watch.events("lost ");
    long count = reduction.test().closing().map(Closing::lost).orElse(0L);
    if (count > 0 || !lost.isEmpty()) {
      add(
          TestCheck.READINGS_LOST,
          lost.isEmpty() ? whole : at(lost.get(0)),
          "no reading lost",
          count + " readings by the last line; " + lost.size() + " events tell of losses");
    }
  }

  private Location at(RowWatch.Event event) {
    return Location.of(whole.file(), event.line());
  }

  private void channel(HeaderChannel channel, ChannelTally tally) {
    String name = channel.facts().name();
    long late = tally.of(Quality.LATE);
    if (late > 0) {
      add(
          TestCheck.SILENCE,
          whole,
          name + " at least every " + millis(channel.lateAfterMillis()),
          late + (late == 1 ? " silence" : " silences") + ", the longest " + longest(tally));
    } else if (tally.longestGapMillis() > SURELY_LATE * channel.lateAfterMillis()
        && watch.events("link lost " + name).isEmpty()
        && watch.events("lost " + name).isEmpty()) {
      add(
          TestCheck.GAP_UNMARKED,
          whole,
          name + " at least every " + millis(channel.lateAfterMillis()) + ", or a row 'late'",
          "a silence of " + longest(tally));
    }
    marked(name, tally);
  }

  private static String longest(ChannelTally tally) {
    return millis(tally.longestGapMillis());
  }

  private static String millis(double millis) {
    return String.format(Locale.ROOT, "%.1f s", millis / 1000);
  }

  /** The first frame after a stream was joined is marked as a matter of course. */
  private void marked(String name, ChannelTally tally) {
    long joins = 1L + watch.events("link back " + name).size();
    long marked = tally.marked() - tally.of(Quality.LATE);
    if (marked > joins) {
      List<String> parts = new ArrayList<>();
      for (Quality quality : Quality.values()) {
        if (quality != Quality.OK && quality != Quality.LATE && tally.of(quality) > 0) {
          parts.add(tally.of(quality) + " " + quality.word());
        }
      }
      add(
          TestCheck.MARKED_READINGS,
          whole,
          "readings of " + name + " that are ok",
          String.join(", ", parts) + " of " + tally.received());
    }
  }

  private void times() {
    reduction
        .test()
        .closing()
        .filter(closing -> closing.ended().isBefore(header.start()))
        .ifPresent(
            closing ->
                add(
                    TestCheck.ENDED_BEFORE_START,
                    whole,
                    "an end after " + header.start(),
                    String.valueOf(closing.ended())));
  }

  private void specimen(Specimen corrected) {
    LabTables tables = context.tables();
    Specimen then = header.specimen();
    Location row = Location.of("specimens.csv");
    if (!tables.hasSpecimens()) {
      return;
    }
    Optional<Specimen> now = tables.specimen(then.name());
    if (now.isEmpty()) {
      add(TestCheck.SPECIMEN_CHANGED, row, "a row of " + then.name(), "there is none any more");
      return;
    }
    var differences = SpecimenComparison.of(then, corrected, now.get());
    if (!differences.isEmpty()) {
      add(
          TestCheck.SPECIMEN_CHANGED,
          row,
          differences.stream()
              .map(d -> d.what() + " " + d.then())
              .collect(Collectors.joining(", ")),
          differences.stream()
              .map(d -> d.what() + " " + d.now())
              .collect(Collectors.joining(", ")));
    }
  }
}
