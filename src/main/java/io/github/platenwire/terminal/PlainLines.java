package io.github.platenwire.terminal;

import io.github.platenwire.method.CrackPart;
import io.github.platenwire.method.LiveView;
import io.github.platenwire.reading.MonotonicClock;
import java.time.Duration;
import java.util.Optional;

/**
 * A running test as one line each second or so, for pipes, logs and terminals that cannot redraw.
 * Safe for any thread.
 */
public final class PlainLines implements LiveFace {
  /** The shortest interval that can be asked for. */
  public static final Duration SHORTEST = Duration.ofMillis(10);

  /** The usual interval. */
  public static final Duration USUAL = Duration.ofSeconds(1);

  private final TerminalOut out;
  private final MonotonicClock clock;
  private final Look look;
  private final long intervalNanos;
  private Optional<LiveFrame> written = Optional.empty();
  private Optional<LiveFrame> held = Optional.empty();
  private long writtenNanos;
  private boolean closed;

  /**
   * Prepares; nothing is written before the first frame.
   *
   * @param out where the lines go
   * @param clock for the interval
   * @param look which characters and units
   * @param interval between two lines while nothing happens, at least {@link #SHORTEST}
   * @throws IllegalArgumentException if it is shorter
   */
  public PlainLines(TerminalOut out, MonotonicClock clock, Look look, Duration interval) {
    if (interval.compareTo(SHORTEST) < 0) {
      throw new IllegalArgumentException(
          "an interval of " + interval.toMillis() + " ms is too short; at least 10 ms (0.01 s)");
    }
    this.out = out;
    this.clock = clock;
    this.look = look;
    this.intervalNanos = interval.toNanos();
  }

  @Override
  public synchronized void show(LiveFrame frame) {
    if (closed) {
      return;
    }
    held = Optional.of(frame);
    long now = clock.nanos();
    if (due(frame, now)) {
      write(frame, now);
    }
  }

  @Override
  public synchronized void close() {
    if (!closed) {
      held.ifPresent(frame -> write(frame, clock.nanos()));
      closed = true;
    }
  }

  private boolean due(LiveFrame frame, long now) {
    return written.isEmpty()
        || now - writtenNanos >= intervalNanos
        || written.get().view().phase() != frame.view().phase()
        || hasNews(frame);
  }

  private boolean hasNews(LiveFrame frame) {
    return frame.lastEvent().isPresent()
        && !frame.lastEvent().equals(written.flatMap(LiveFrame::lastEvent));
  }

  private void write(LiveFrame frame, long now) {
    String line = line(frame, look);
    if (hasNews(frame)) {
      line +=
          "   event "
              + frame.lastEvent().map(LiveEvent::text).map(look.glyphs()::text).orElseThrow();
    }
    out.print(line + "\n");
    written = Optional.of(frame);
    held = Optional.empty();
    writtenNanos = now;
  }

  /** The line for a moment, with the number of the last reading that it rests on. */
  static String line(LiveFrame frame, Look look) {
    LiveView view = frame.view();
    if (view.crack().isPresent()) {
      return look.glyphs().text(crackLine(view, view.crack().get(), look));
    }
    RateJudgement judgement = RateJudgement.of(view);
    String chord =
        view.chord()
            .map(part -> new ChordLines(view, part, look, /* wide= */ true).plain())
            .orElse("");
    String line =
        TextWidth.padLeft(Shown.decimal(view.elapsedMicros() / 1e6, 1), 8)
            + " s  seq "
            + TextWidth.padRight(String.valueOf(view.seq()), 7)
            + figure("load", Shown.LOAD, view.loadNewtons(), 8, look)
            + figure("peak", Shown.LOAD, view.peakNewtons(), 8, look)
            + figure("rate", Shown.RATE, view.rateMegapascalsPerSecond(), 6, look)
            + (judgement == RateJudgement.NO_BAND
                ? ""
                : " " + TextWidth.padRight(judgement.word(), 10))
            + figure("stress", Shown.STRESS, view.stressMegapascals(), 6, look)
            + chord
            + "  "
            + view.phase().words();
    return look.glyphs().text(line);
  }

  private static String crackLine(LiveView view, CrackPart crack, Look look) {
    return TextWidth.padLeft(Shown.decimal(view.elapsedMicros() / 1e6, 1), 8)
        + " s  seq "
        + TextWidth.padRight(String.valueOf(view.seq()), 7)
        + figure("load", Shown.LOAD, view.loadNewtons(), 8, look)
        + figure("width", Shown.WIDTH, crack.widthMillimetres(), 7, look)
        + "  of "
        + crack.restsOn()
        + crack
            .next()
            .map(
                next ->
                    "  "
                        + Shown.WIDTH.one(next.toGoMillimetres(), look.first())
                        + " to "
                        + Shown.WIDTH.one(next.millimetres(), look.first()))
            .orElse("")
        + crack
            .ghost()
            .map(
                ghost ->
                    "  "
                        + Shown.WIDTH.one(Math.abs(ghost.widerMillimetres()), look.first())
                        + (ghost.widerMillimetres() >= 0 ? " wider than " : " narrower than ")
                        + ghost.specimen())
            .orElse("")
        + "  "
        + (crack.state().isEmpty() ? view.phase().words() : crack.state());
  }

  /** A figure whose text has the same width whatever its value, within its usual digits. */
  private static String figure(String label, Shown shown, double base, int digits, Look look) {
    String first = TextWidth.padLeft(shown.number(base, look.first()), digits);
    String second = "(" + shown.one(base, Shown.other(look.first())) + ")";
    int secondColumns = digits + 2 + 1 + shown.unit(Shown.other(look.first())).symbol().length();
    return "  "
        + label
        + " "
        + first
        + " "
        + shown.unit(look.first()).symbol()
        + " "
        + TextWidth.padRight(second, secondColumns);
  }
}
