package io.github.platenwire.cli;

import io.github.platenwire.emulate.BeamReadings;
import io.github.platenwire.emulate.BeamTruth;
import io.github.platenwire.emulate.ClockedPorts;
import io.github.platenwire.emulate.DemoBeam;
import io.github.platenwire.emulate.EmulatedClock;
import io.github.platenwire.emulate.TimedBytes;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.Register;
import io.github.platenwire.method.BreakPosition;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.port.Port;
import io.github.platenwire.quantity.BothSystems;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.ChannelTally;
import io.github.platenwire.record.Observations;
import io.github.platenwire.record.Summary;
import io.github.platenwire.recorder.ChecklistItem;
import io.github.platenwire.recorder.LabTest;
import io.github.platenwire.recorder.RecordedTest;
import io.github.platenwire.recorder.RecorderClocks;
import io.github.platenwire.recorder.Recording;
import io.github.platenwire.recorder.TestClose;
import io.github.platenwire.terminal.TextTable;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The demo's split beams, through the same steps as a real test, on an emulated clock with three
 * ports. Confined to the command's thread.
 */
final class DemoBeamTests {
  private static final String METHOD = "split-beam";
  private static final Duration PATIENCE = Duration.ofSeconds(20);
  private static final Duration LINE_EVERY = Duration.ofSeconds(10);

  /** The first poorly bonded one: beside the beam before it its crack is several times wider. */
  private static final String WATCHED = "NA-CB-1";

  /** Thirty figures are looked at; of honest claims one in fifteen thousand is beyond four. */
  private static final double CLAIMS = 4;

  /** Before this moment the frame stands idle, and the checklist has its readings. */
  private static final long HOLD_NANOS = 3_000_000_000L;

  private final LabFolder lab;
  private final Register register;
  private final Face face;
  private final long seed;
  private final TextTable table =
      TextTable.empty()
          .words("beam")
          .words("what")
          .numbers("true")
          .numbers("measured")
          .numbers("off by");
  private boolean agree = true;

  DemoBeamTests(LabFolder lab, Register register, Face face, long seed) {
    this.register = register;
    this.lab = lab;
    this.face = face;
    this.seed = seed;
  }

  /** Opens all; exit code 1 if a figure is further from its truth than four times its claim. */
  int run(Instant start) throws LabException, TomlException, IOException, CommandException {
    face.line("");
    face.line(
        "Opening the cracks of six split beams: load at 100 Hz, gauges at 10 and 60 Hz, three ports.");
    Instant at = start;
    for (DemoBeam beam : DemoBeam.ALL) {
      Summary summary = test(beam, at);
      face.line(told(beam, summary));
      compare(beam, summary);
      at = at.plus(DemoBench.BETWEEN_TESTS);
    }
    face.line("");
    face.lines(table.lines(face.columns(), face.look()));
    face.line(
        agree
            ? "Every figure of the beams agrees with its truth."
            : "A figure of the beams is further from its truth than four standard uncertainties.");
    return agree ? ExitCode.FINE : ExitCode.NOT_MET;
  }

  private Summary test(DemoBeam beam, Instant start)
      throws LabException, TomlException, IOException, CommandException {
    EmulatedClock clock = new EmulatedClock(start);
    List<Iterator<TimedBytes>> streams = new ArrayList<>();
    beam.readings(seed).stream().map(BeamReadings::bytes).forEach(streams::add);
    ClockedPorts bench = new ClockedPorts(clock, streams);
    bench.holdAt(HOLD_NANOS);
    List<Port> ports = bench.ports(DemoBeam.ports());
    RecorderClocks clocks = new RecorderClocks(clock, clock, SystemClocks.monotonic());
    try (LabTest test =
        LabTest.open(
            lab,
            DemoBeam.RIG,
            beam.name(),
            METHOD,
            (address, settings) -> () -> ports.get(DemoBeam.ports().indexOf(address)),
            clocks)) {
      return record(beam, test, bench);
    }
  }

  private Summary record(DemoBeam beam, LabTest test, ClockedPorts bench)
      throws LabException, TomlException, IOException, CommandException {
    List<ChecklistItem> checklist = test.check(/* attended= */ false, Optional.empty(), PATIENCE);
    if (!LabTest.mayStart(checklist)) {
      face.checklist(checklist);
      throw new CommandException(ExitCode.NOT_MET, "the demo's own checklist failed");
    }
    boolean watched = beam.name().equals(WATCHED);
    if (watched) {
      face.line(beam.name() + " as it runs, with an earlier beam's crack to hold it beside:");
    }
    try (RunningView live = new RunningView(face, test, LINE_EVERY)) {
      Recording recording =
          test.start(
              checklist,
              Optional.empty(),
              Optional.of("demo"),
              Optional.of(PATIENCE),
              Version.text(),
              progress -> {
                if (watched) {
                  live.show(progress);
                }
              });
      bench.release(recording::stop);
      RecordedTest recorded = await(recording);
      live.close();
      TestClose.Closed closed =
          new TestClose(lab, register).close(test.method(), recorded, seen(beam));
      closed.notices().forEach(face::line);
      return closed.summary();
    }
  }

  /** What the demo's technician writes down when the beam is taken apart. */
  private static Observations seen(DemoBeam beam) {
    return new Observations(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.of(beam.isWellBonded() ? "seen" : "not-seen"),
        Optional.empty(),
        Optional.empty(),
        List.of(),
        BreakPosition.NOT_RECORDED);
  }

  private static String told(DemoBeam beam, Summary summary) {
    return beam.name()
        + ": first crack at "
        + words(summary, "first-crack-departure", Quantity.FORCE)
        + ", at 3000 lbf "
        + words(summary, "width-at-3000-lbf", Quantity.LENGTH)
        + " wide, from "
        + summary.channels().stream().mapToLong(ChannelTally::received).sum()
        + " readings";
  }

  private static String words(Summary summary, String name, Quantity quantity) {
    return summary
        .result()
        .figure(name)
        .map(figure -> figure.unit().toBase(figure.exact()))
        .map(base -> BothSystems.words(base, quantity, UnitSystem.SI))
        .orElse("unknown");
  }

  /** A threshold that is reached only as the test ends may or may not be found. */
  private static boolean isAtTheEnd(Summary summary, double newtons) {
    return summary
        .result()
        .figure("peak-load")
        .map(peak -> peak.unit().toBase(peak.exact()))
        .filter(greatest -> newtons > 0.98 * greatest)
        .isPresent();
  }

  private static RecordedTest await(Recording recording) throws CommandException {
    try (OrderlyEnd end = new OrderlyEnd(recording)) {
      RecordedTest recorded = recording.await();
      if (recorded.failure().isPresent() || end.wasOrdered()) {
        throw new CommandException(
            recorded.failure().isPresent() ? ExitCode.DEVICE : ExitCode.INTERRUPTED,
            recorded
                .failure()
                .map(RecordedTest.Failure::words)
                .orElse("the demo was ended; its record is closed"));
      }
      return recorded;
    }
  }

  private void compare(DemoBeam beam, Summary summary) {
    BeamTruth truth = beam.truth();
    row(beam, summary, "first-crack-departure", truth.beam().crackNewtons(), Quantity.FORCE);
    for (double width : new double[] {0.10, 0.20, 0.30}) {
      String name = String.format(Locale.ROOT, "load-at-%.2f-mm", width);
      row(beam, summary, name, truth.loadAtWidth(width), Quantity.FORCE);
    }
    double pounds = io.github.platenwire.quantity.Unit.POUND_FORCE.toBase(3000);
    row(beam, summary, "width-at-3000-lbf", truth.widthAtLoad(pounds), Quantity.LENGTH);
  }

  private void row(DemoBeam beam, Summary summary, String name, double truth, Quantity quantity) {
    Optional<Figure> figure = summary.result().figure(name);
    if (figure.isEmpty() || Double.isNaN(truth)) {
      double found = figure.map(one -> one.unit().toBase(one.exact())).orElse(truth);
      agree &= figure.isPresent() == !Double.isNaN(truth) || isAtTheEnd(summary, found);
      return;
    }
    double measured = figure.get().unit().toBase(figure.get().exact());
    double claim =
        figure
            .get()
            .uncertainty()
            .map(budget -> figure.get().unit().toBase(budget.combined()))
            .orElse(0.0);
    agree &= Math.abs(measured - truth) <= CLAIMS * claim;
    // The loads at a width agree as well, or the last line says so; two rows a beam are enough.
    if (name.startsWith("load-at-")) {
      return;
    }
    table.row(
        beam.name(),
        name.startsWith("first-crack")
            ? "first crack"
            : name.replace("width-", "").replace('-', ' '),
        BothSystems.words(truth, quantity, UnitSystem.SI),
        BothSystems.words(measured, quantity, UnitSystem.SI),
        String.format(Locale.ROOT, "%+.2f %%", (measured / truth - 1) * 100));
  }
}
