package io.github.platenwire.terminal;

import io.github.platenwire.reading.MonotonicClock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * A running test drawn in place on a terminal, at most ten times a second. Safe for any thread, so
 * that {@link #close} may also be called while the program is being ended.
 */
public final class LiveScreen implements LiveFace {
  /*
   * Only lines that changed are written, each at its own place, and all in one write. The ordinary
   * screen is used: what stood there is first pushed up, and the last view remains afterwards.
   * Control sequences by ECMA-48 and, for the cursor (?25) and line wrapping (?7), by the usual
   * private modes; both from memory.
   */
  private static final long REDRAW_NANOS = TimeUnit.MILLISECONDS.toNanos(100);
  private static final long RESIZE_NANOS = TimeUnit.SECONDS.toNanos(2);
  private static final String ESC = "\u001b[";
  private static final String BEGIN = ESC + "?25l" + ESC + "?7l";
  private static final String END = ESC + "0m" + ESC + "?7h" + ESC + "?25h";
  private static final String CLEAR = ESC + "H" + ESC + "J";
  private static final String CLEAR_TO_END_OF_LINE = ESC + "K";

  private final TerminalOut out;
  private final Supplier<TerminalSize> sizes;
  private final MonotonicClock clock;
  private final Look look;
  private final TestFacts facts;
  private @Nullable TerminalSize size;
  private List<String> drawn = List.of();
  private Optional<LiveFrame> held = Optional.empty();
  private long drawnNanos;
  private long sizedNanos;
  private boolean closed;

  /**
   * Prepares; nothing is written before the first frame.
   *
   * @param out the terminal
   * @param sizes asked at most each two seconds
   * @param clock for how often it is drawn
   * @param look how it is drawn
   * @param facts what the test is
   */
  public LiveScreen(
      TerminalOut out,
      Supplier<TerminalSize> sizes,
      MonotonicClock clock,
      Look look,
      TestFacts facts) {
    this.out = out;
    this.sizes = sizes;
    this.clock = clock;
    this.look = look;
    this.facts = facts;
  }

  @Override
  public synchronized void show(LiveFrame frame) {
    if (closed) {
      return;
    }
    long now = clock.nanos();
    held = Optional.of(frame);
    if (size == null || now - drawnNanos >= REDRAW_NANOS) {
      drawnNanos = now;
      draw(now);
    }
  }

  @Override
  public synchronized void close() {
    if (closed) {
      return;
    }
    if (held.isPresent()) {
      draw(clock.nanos());
    }
    closed = true;
    if (size != null) {
      out.print(at(Math.max(1, drawn.size())) + "\r\n" + END);
    }
  }

  private void draw(long now) {
    StringBuilder text = new StringBuilder();
    TerminalSize current = resize(now, text);
    List<String> lines =
        held.map(frame -> LiveLayout.lines(frame, facts, current, look)).orElse(drawn);
    held = Optional.empty();
    List<String> old = drawn;
    for (int i = 0; i < Math.max(lines.size(), old.size()); i++) {
      String line = i < lines.size() ? lines.get(i) : "";
      if (i >= old.size() || !line.equals(old.get(i))) {
        text.append(at(i + 1)).append(line).append(CLEAR_TO_END_OF_LINE);
      }
    }
    drawn = new ArrayList<>(lines);
    if (text.length() > 0) {
      out.print(text.toString());
    }
  }

  private TerminalSize resize(long now, StringBuilder text) {
    TerminalSize before = size;
    if (before != null && now - sizedNanos < RESIZE_NANOS) {
      return before;
    }
    sizedNanos = now;
    TerminalSize after = sizes.get();
    if (before == null) {
      text.append(BEGIN).append("\n".repeat(after.lines())).append(CLEAR);
    } else if (!after.equals(before)) {
      text.append(CLEAR);
      drawn = List.of();
    }
    size = after;
    return after;
  }

  private static String at(int line) {
    return ESC + line + ";1H";
  }
}
