package io.github.platenwire.terminal;

import io.github.platenwire.method.FrontPart;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import java.util.Locale;

/**
 * A log of readings that come minutes apart, one line each as soon as it is in the file; leaves the
 * line below free for typing. Safe for any thread.
 */
public final class EntryLines implements LiveFace {
  private final TerminalOut out;
  private final Look look;
  private long written;

  /**
   * Prepares; nothing is written before the first reading.
   *
   * @param out where the lines go
   * @param look which characters and units
   */
  public EntryLines(TerminalOut out, Look look) {
    this.out = out;
    this.look = look;
  }

  @Override
  public synchronized void show(LiveFrame frame) {
    frame
        .view()
        .front()
        .filter(front -> front.seen() > written)
        .ifPresent(
            front -> {
              out.print(look.glyphs().text(line(front, look.first())) + "\n");
              written = front.seen();
            });
  }

  @Override
  public void close() {
    // Each line is whole when it is written; nothing is held back.
  }

  /** One reading: its number, its time since the first, its value, and how the front goes. */
  static String line(FrontPart front, UnitSystem first) {
    String head = String.format(Locale.ROOT, " %4d  %s  ", front.seq(), clock(front.seconds()));
    if (front.leftOut().isPresent()) {
      return head + "left out: " + front.leftOut().get();
    }
    return head
        + TextWidth.padRight(value(front, first), 24)
        + (front.millimetresPerSecond().isPresent()
            ? "  in time "
                + rate(
                    front.millimetresPerSecond().getAsDouble(),
                    Unit.MILLIMETRE_PER_MINUTE,
                    Unit.INCH_PER_MINUTE,
                    first)
                + "  in root time "
                + rate(
                    front.millimetresPerRootSecond().orElse(Double.NaN),
                    Unit.MILLIMETRE_PER_ROOT_SECOND,
                    Unit.INCH_PER_ROOT_SECOND,
                    first)
            : "");
  }

  private static String value(FrontPart front, UnitSystem first) {
    if (front.quantity() == Quantity.MASS) {
      return Shown.decimal(Unit.GRAM.fromBase(front.base()), 2) + " g";
    }
    String si = Shown.decimal(front.base(), 2) + " mm";
    String inches = Shown.decimal(Unit.INCH.fromBase(front.base()), 3) + " in";
    return first == UnitSystem.SI ? si + " (" + inches + ")" : inches + " (" + si + ")";
  }

  private static String rate(double base, Unit si, Unit inchPound, UnitSystem first) {
    Unit unit = first == UnitSystem.SI ? si : inchPound;
    return String.format(Locale.ROOT, "%.3g %s", unit.fromBase(base), unit.symbol());
  }

  /** Hours, minutes and seconds; a front may take days. */
  static String clock(double seconds) {
    if (!Double.isFinite(seconds)) {
      return "--:--:--";
    }
    long whole = Math.round(seconds);
    return String.format(Locale.ROOT, "%02d:%02d:%02d", whole / 3600, whole / 60 % 60, whole % 60);
  }
}
