package io.github.platenwire.terminal;

import io.github.platenwire.reading.MonotonicClock;
import java.util.Locale;
import java.util.concurrent.TimeUnit;

/**
 * One line on a terminal that tells how far something is. Comes up only if it takes longer than a
 * second, and is wiped away at the end; where there is no terminal nothing is written. Safe for any
 * thread.
 */
public final class ProgressBar implements AutoCloseable {
  private static final long SHOWN_AFTER_NANOS = TimeUnit.SECONDS.toNanos(1);
  private static final long REDRAWN_AFTER_NANOS = TimeUnit.MILLISECONDS.toNanos(100);
  private static final int MOST_CELLS = 30;
  private static final double MEGABYTE = 1e6;
  private static final String WIPE = "\r\u001b[K";

  private final TerminalOut out;
  private final TerminalTraits traits;
  private final int columns;
  private final MonotonicClock clock;
  private final String what;
  private long next;
  private boolean shown;

  /**
   * Prepares the line.
   *
   * @param out where it goes
   * @param traits what that can do
   * @param columns its width
   * @param clock tells when a second is over
   * @param what is being done, in a few words
   */
  public ProgressBar(
      TerminalOut out, TerminalTraits traits, int columns, MonotonicClock clock, String what) {
    this.out = out;
    this.traits = traits;
    this.columns = columns;
    this.clock = clock;
    this.what = what;
    this.next = clock.nanos() + SHOWN_AFTER_NANOS;
  }

  /** So many bytes are done. */
  public synchronized void bytes(long done, long of) {
    long now = clock.nanos();
    if (!traits.redraws() || now - next < 0) {
      return;
    }
    next = now + REDRAWN_AFTER_NANOS;
    shown = true;
    out.print(WIPE + line(done, of, columns - 1, traits.glyphs()));
  }

  /** The line; without its bar where there is no room for one. */
  static String line(String what, long done, long of, int room, Glyphs glyphs) {
    double share = of <= 0 ? 1 : Math.min(1, (double) done / of);
    String figures =
        String.format(
            Locale.ROOT, " %3.0f %%  %.1f of %.1f MB", 100 * share, done / MEGABYTE, of / MEGABYTE);
    int cells = Math.min(MOST_CELLS, room - what.length() - figures.length() - 1);
    int full = (int) Math.round(share * cells);
    String bar =
        cells < 5 ? "" : " " + glyphs.block().repeat(full) + glyphs.dot().repeat(cells - full);
    return TextWidth.head(what + bar + figures, room);
  }

  private String line(long done, long of, int room, Glyphs glyphs) {
    return line(what, done, of, room, glyphs);
  }

  /** Wipes the line away, if it was shown. */
  @Override
  public synchronized void close() {
    if (shown) {
      out.print(WIPE);
    }
  }
}
