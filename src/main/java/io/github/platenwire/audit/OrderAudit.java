package io.github.platenwire.audit;

import io.github.platenwire.audit.RecordFacts.Closed;
import io.github.platenwire.audit.RecordFacts.Head;
import io.github.platenwire.audit.RecordFacts.Zero;
import io.github.platenwire.audit.RegisterBook.Entry;
import io.github.platenwire.audit.RegisterBook.RigRegister;
import io.github.platenwire.lab.RegisterLine.Kind;
import io.github.platenwire.record.CloseReason;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Holds the tests against each other: their order, their rigs, their specimens. Stateless. */
final class OrderAudit {
  private final RegisterBook book;
  private final Findings findings;

  OrderAudit(RegisterBook book, Findings findings) {
    this.book = book;
    this.findings = findings;
  }

  /** A record whose head is known. */
  private record Known(RecordFacts record, Head head) {}

  /**
   * Looks at all of them.
   *
   * @param records one for each test
   */
  void run(List<RecordFacts> records) {
    Map<String, List<Known>> byRig = new TreeMap<>();
    Map<String, Known> byTest = new HashMap<>();
    List<Known> inOrder = new ArrayList<>();
    for (RecordFacts record : records) {
      record.head().ifPresent(head -> inOrder.add(new Known(record, head)));
    }
    inOrder.sort(
        Comparator.comparing((Known known) -> known.head().start())
            .thenComparing(known -> known.record().file()));
    for (Known known : inOrder) {
      byRig.computeIfAbsent(known.head().rig(), rig -> new ArrayList<>()).add(known);
      byTest.put(known.head().test(), known);
    }
    byRig.values().forEach(this::overlaps);
    byRig.values().forEach(this::zeros);
    twice(inOrder);
    for (RigRegister register : book.registers()) {
      registered(RegisterBook.entries(register), byTest);
    }
  }

  private void overlaps(List<Known> tests) {
    Optional<Known> running = Optional.empty();
    for (Known test : tests) {
      Optional<Instant> end = running.flatMap(OrderAudit::end);
      if (end.isPresent() && test.head().start().isBefore(end.get())) {
        findings.add(
            TestCheck.OVERLAP,
            test.record().location(),
            test.head().test(),
            "a start after " + end.get() + ", the end of " + running.get().head().test(),
            "a start at " + test.head().start() + " on rig " + test.head().rig());
      }
      Optional<Instant> own = end(test);
      if (own.isPresent() && (end.isEmpty() || own.get().isAfter(end.get()))) {
        running = Optional.of(test);
      }
    }
  }

  private static Optional<Instant> end(Known test) {
    return test.record().closed().map(Closed::ended);
  }

  private void zeros(List<Known> tests) {
    Map<String, Known> last = new HashMap<>();
    for (Known test : tests) {
      test.head()
          .zeros()
          .forEach(
              (channel, zero) -> {
                Known before = last.put(channel, test);
                Zero was = before == null ? null : before.head().zeros().get(channel);
                if (before != null && was != null) {
                  drift(test, channel, before, was, zero);
                }
              });
    }
  }

  private void drift(Known test, String channel, Known before, Zero was, Zero is) {
    if (was.unit().equals(is.unit()) && Math.abs(is.value() - was.value()) > is.tolerance() / 2) {
      findings.add(
          TestCheck.ZERO_DRIFT,
          test.record().location(),
          test.head().test(),
          "a zero of " + channel + " near " + words(was) + ", as in " + before.head().test(),
          words(is));
    }
  }

  private static String words(Zero zero) {
    return String.format(Locale.ROOT, "%.4g %s", zero.value(), zero.unit());
  }

  private void twice(List<Known> tests) {
    Map<String, Known> broken = new HashMap<>();
    for (Known test : tests) {
      boolean broke =
          test.record().closed().map(Closed::reason).equals(Optional.of(CloseReason.BREAK));
      Known before = broke ? broken.putIfAbsent(test.head().specimen(), test) : null;
      if (before != null) {
        findings.add(
            TestCheck.TESTED_TWICE,
            test.record().location(),
            test.head().test(),
            "a specimen that is still whole",
            test.head().specimen() + " was broken in " + before.head().test() + " already");
      }
    }
  }

  private void registered(List<Entry> entries, Map<String, Known> byTest) {
    Known before = null;
    for (Entry entry : entries) {
      Known test = entry.closes() ? byTest.get(entry.line().test()) : null;
      if (test == null) {
        continue;
      }
      if (entry.line().time().isBefore(test.head().start())) {
        findings.add(
            TestCheck.CLOSED_BEFORE_START,
            entry.location(),
            test.head().test(),
            "a time after the start, " + test.head().start(),
            String.valueOf(entry.line().time()));
      }
      if (entry.line().kind() == Kind.CLOSE) {
        if (before != null && test.head().start().isBefore(before.head().start())) {
          findings.add(
              TestCheck.START_BACKWARD,
              entry.location(),
              test.head().test(),
              "a start after " + before.head().start() + ", that of " + before.head().test(),
              String.valueOf(test.head().start()));
        }
        before = test;
      }
    }
  }
}
