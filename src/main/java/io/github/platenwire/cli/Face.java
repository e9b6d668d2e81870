package io.github.platenwire.cli;

import io.github.platenwire.method.GhostCurve;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.recorder.ChecklistItem;
import io.github.platenwire.recorder.Progress;
import io.github.platenwire.recorder.TestClose;
import io.github.platenwire.terminal.Cautions;
import io.github.platenwire.terminal.ChecklistView;
import io.github.platenwire.terminal.EntryLines;
import io.github.platenwire.terminal.LiveEvent;
import io.github.platenwire.terminal.LiveFace;
import io.github.platenwire.terminal.LiveFrame;
import io.github.platenwire.terminal.LiveScreen;
import io.github.platenwire.terminal.Look;
import io.github.platenwire.terminal.Paragraph;
import io.github.platenwire.terminal.PlainLines;
import io.github.platenwire.terminal.Questions;
import io.github.platenwire.terminal.SystemTerminal;
import io.github.platenwire.terminal.TerminalOut;
import io.github.platenwire.terminal.TerminalSize;
import io.github.platenwire.terminal.TerminalTraits;
import io.github.platenwire.terminal.TestFacts;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * What one command shows a person: brings the terminal's parts together. Confined to the command's
 * thread, except {@link #frame}.
 */
final class Face {
  /** Longer lines are hard to read, however wide the terminal is. */
  private static final int MOST_COLUMNS = 101;

  private final TerminalOut out;
  private final TerminalTraits traits;
  private final Supplier<TerminalSize> sizes;
  private final Look look;

  private Face(TerminalOut out, TerminalTraits traits, UnitSystem first) {
    this.out = out;
    this.traits = traits;
    this.sizes = SystemTerminal.sizes();
    this.look = new Look(traits.palette(), traits.glyphs(), first);
  }

  /** On standard output. */
  static Face standard(UnitSystem first) {
    return new Face(SystemTerminal.out(), SystemTerminal.traits(), first);
  }

  /** On standard error, in plain lines: standard output is kept for a program to read. */
  static Face besideJson(UnitSystem first) {
    return new Face(SystemTerminal.err(), SystemTerminal.plainTraits(), first);
  }

  void lines(List<String> lines) {
    out.lines(lines);
  }

  /** Lines that are broken between words where they are too long, each under its own beginning. */
  void paragraphs(List<String> lines) {
    for (String line : lines) {
      out.lines(Paragraph.hanging(look.glyphs().text(line), Math.min(MOST_COLUMNS, columns())));
    }
  }

  void line(String line) {
    out.lines(Paragraph.lines(line, columns()));
  }

  /** Whether lines can be written over. */
  boolean redraws() {
    return traits.redraws();
  }

  /** Says what goes on: over the last such line where that can be, else as a line of its own. */
  void over(String words) {
    String text = look.glyphs().text(words);
    if (traits.redraws()) {
      String cut = text.substring(0, Math.min(text.length(), columns() - 1));
      out.print("\r" + cut + "\u001b[K");
    } else if (!text.isEmpty()) {
      out.lines(Paragraph.lines(text, columns()));
    }
  }

  /** What a person has to know of a test that was just closed. */
  void closed(TestClose.Closed closed) {
    closed
        .line()
        .ifPresent(
            written ->
                line(
                    "Register "
                        + written.rig()
                        + ", line "
                        + written.number()
                        + ", witness "
                        + written.witness()));
    closed.notices().forEach(this::line);
  }

  int columns() {
    return sizes.get().columns();
  }

  Look look() {
    return look;
  }

  void cautions(String standard) {
    out.lines(Cautions.lines(standard, columns(), look));
  }

  void checklist(List<ChecklistItem> items) {
    out.lines(ChecklistView.lines(items, columns(), look));
  }

  /**
   * What shows the running test.
   *
   * @param log whether readings come minutes apart, and may be typed meanwhile
   */
  LiveFace live(TestFacts facts, Duration lineEvery, boolean log) {
    if (log) {
      return new EntryLines(out, look);
    }
    return traits.redraws()
        ? new LiveScreen(out, sizes, SystemClocks.monotonic(), look, facts)
        : new PlainLines(out, SystemClocks.monotonic(), look, lineEvery);
  }

  /** A recording's progress as the live view takes it. */
  static LiveFrame frame(Progress progress) {
    return frame(progress, Optional.empty());
  }

  /** The same with an earlier specimen's crack to hold it beside. */
  static LiveFrame frame(Progress progress, Optional<GhostCurve> ghost) {
    Optional<LiveEvent> event =
        progress.events() == 0
            ? Optional.empty()
            : Optional.of(new LiveEvent(progress.events(), progress.lastEvent()));
    return new LiveFrame(
        ghost.map(curve -> progress.view().beside(curve)).orElse(progress.view()),
        event,
        progress.readings(),
        progress.marked());
  }

  Questions questions() {
    return new Questions(SystemTerminal.in(), out, sizes, look);
  }
}
