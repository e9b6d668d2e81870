package io.github.platenwire.cli;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.method.BreakPosition;
import io.github.platenwire.record.Observations;
import io.github.platenwire.record.Summary;
import io.github.platenwire.record.SummaryFile;
import io.github.platenwire.recorder.ChecklistItem;
import io.github.platenwire.recorder.LabTest;
import io.github.platenwire.recorder.RecordedTest;
import io.github.platenwire.recorder.RecordedTest.Failure;
import io.github.platenwire.recorder.Recording;
import io.github.platenwire.recorder.TestClose;
import io.github.platenwire.terminal.Place;
import io.github.platenwire.terminal.Questions;
import io.github.platenwire.terminal.ResultView;
import io.github.platenwire.terminal.SystemTerminal;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * One test as a person goes through it at a terminal: checklist, running test, questions, result.
 * Confined to the command's thread.
 */
final class TestSession {
  private final LabTest test;
  private final TestClose close;
  private final Face face;
  private final Options options;
  private final Optional<Typing.Desk> desk;

  /**
   * What the command line said. Immutable.
   *
   * @param attended whether somebody is there to be asked
   * @param json whether the summary is printed for a program
   * @param operator who runs the test, if said
   * @param reason why to go on against an objection, if said
   * @param patience how long to wait for the first readings
   * @param giveUpAfter how long everything may be silent
   * @param lineEvery interval of plain lines
   */
  record Options(
      boolean attended,
      boolean json,
      Optional<String> operator,
      Optional<String> reason,
      Duration patience,
      Optional<Duration> giveUpAfter,
      Duration lineEvery) {}

  /** Why the test may start, and what stands in the record of it. */
  private record Clearance(List<ChecklistItem> checklist, Optional<String> reason) {}

  TestSession(
      LabTest test, TestClose close, Face face, Options options, Optional<Typing.Desk> desk) {
    this.desk = desk;
    this.test = test;
    this.close = close;
    this.face = face;
    this.options = options;
  }

  /** Runs it; the exit code. */
  int run() throws LabException, TomlException, IOException, CommandException {
    Questions questions = face.questions();
    if (options.attended()) {
      face.cautions(test.method().standard());
    }
    Optional<Clearance> clearance = clear(questions);
    if (clearance.isEmpty()) {
      face.line("Nothing was recorded.");
      return ExitCode.NOT_MET;
    }
    Done done = record(clearance.get(), questions);
    return report(done);
  }

  /** Goes through the checklist until it is clear or the operator gives up. */
  private Optional<Clearance> clear(Questions questions) throws LabException, IOException {
    Optional<String> reason = options.reason();
    while (true) {
      face.line(
          "Waiting for readings from "
              + String.join(
                  ", ", test.channels().stream().map(c -> c.header().port()).distinct().toList())
              + " …");
      List<ChecklistItem> items = test.check(options.attended(), reason, options.patience());
      face.checklist(items);
      if (LabTest.mayStart(items)) {
        boolean go =
            !options.attended() || questions.yesNo("Start the record? (no: leave)").orElse(true);
        return go ? Optional.of(new Clearance(items, reason)) : Optional.empty();
      }
      if (!options.attended() || !questions.yesNo("Look again? (no: leave)").orElse(false)) {
        return Optional.empty();
      }
    }
  }

  /** A test that is over, with what there is to say of it. */
  private record Done(RecordedTest recorded, Optional<TestClose.Closed> closed, boolean ordered) {}

  private Done record(Clearance clearance, Questions questions)
      throws LabException, TomlException, IOException {
    try (RunningView live = new RunningView(face, test, options.lineEvery())) {
      Recording recording =
          test.start(
              clearance.checklist(),
              clearance.reason(),
              options.operator(),
              options.giveUpAfter(),
              Version.text(),
              progress -> {
                live.show(progress);
                desk.ifPresent(one -> one.desk().shown(progress));
              });
      desk.ifPresent(one -> one.open(questions, recording));
      try (OrderlyEnd end = new OrderlyEnd(recording)) {
        RecordedTest recorded = recording.await();
        live.close();
        return summarise(recorded, end, questions);
      }
    }
  }

  private Done summarise(RecordedTest recorded, OrderlyEnd end, Questions questions)
      throws LabException, TomlException, IOException {
    if (recorded.closing().isEmpty()) {
      return new Done(recorded, Optional.empty(), end.wasOrdered());
    }
    boolean ask = options.attended() && !end.wasOrdered() && recorded.failure().isEmpty();
    AfterTestQuestions after =
        new AfterTestQuestions(questions, test.method().asks(), test.specimen(), recorded.file());
    BreakPosition position = ask ? after.breakPosition() : BreakPosition.NOT_RECORDED;
    Observations seen = ask ? after.observations() : Observations.NONE;
    if (desk.isPresent()) {
      seen = seen.and(desk.get().enclose(recorded.file()));
    }
    return new Done(
        recorded,
        Optional.of(close.close(test.method(), recorded, seen.withBreakPosition(position))),
        end.wasOrdered());
  }

  private int report(Done done) throws IOException, CommandException {
    RecordedTest recorded = done.recorded();
    if (done.closed().isPresent()) {
      TestClose.Closed closed = done.closed().get();
      Summary summary = closed.summary();
      List<Place> places =
          List.of(
              new Place("raw file", recorded.file().toString()),
              new Place("summary", closed.file().toString()));
      face.lines(ResultView.lines(summary.result(), places, face.columns(), face.look()));
      summary.companions().ifPresent(words -> face.line("Companions of " + words));
      face.closed(closed);
      if (options.json()) {
        SystemTerminal.out().print(SummaryFile.json(summary));
      }
    }
    if (recorded.failure().isPresent()) {
      Failure failure = recorded.failure().get();
      throw new CommandException(
          switch (failure.kind()) {
            case LINK -> ExitCode.DEVICE;
            case STORAGE -> ExitCode.STORAGE;
          },
          failure.words() + " Record: " + recorded.file());
    }
    return done.ordered() ? ExitCode.INTERRUPTED : ExitCode.FINE;
  }
}
