package io.github.platenwire.live;

/**
 * First crack by width: the greatest load up to a small opening, the opening as measured (zero
 * taken off, elastic stretch not), as notched-beam standards define it (EN 14651, from memory).
 * Known once the opening has passed the small width lastingly; the load interpolated at that width
 * counts too. Not thread-safe.
 */
final class GreatestLoadToWidth {
  private final LastingCrossing crossing;
  private double greatest = Double.NEGATIVE_INFINITY;
  private long greatestSeq;
  private long greatestFirstSeq;
  private long greatestMicros;
  private int greatestMask;
  private double pending = Double.NEGATIVE_INFINITY;
  private final CrackRow pendingRow = new CrackRow();

  GreatestLoadToWidth(double width, CrackSettings.Lasting lasting) {
    double hysteresis = Math.min(lasting.hysteresisMillimetres(), width / 2);
    crossing =
        new LastingCrossing(
            width, new CrackSettings.Lasting(lasting.rows(), lasting.micros(), hysteresis));
  }

  /** Takes a row; true when the figure has become known. */
  boolean accept(CrackRow row) {
    if (crossing.isConfirmed() || Double.isNaN(row.opening)) {
      return false;
    }
    boolean confirmed = crossing.accept(row, row.opening);
    if (confirmed) {
      if (crossing.load() > greatest) {
        greatest = crossing.load();
        greatestSeq = crossing.lastSeq();
        greatestFirstSeq = crossing.firstSeq();
        greatestMicros = crossing.beginMicros();
        greatestMask = crossing.mask();
      }
      return true;
    }
    if (row.opening <= crossing.level() && row.load > pending) {
      pending = row.load;
      pendingRow.copyFrom(row);
    }
    if (!crossing.isBegun()) {
      takePending();
    }
    return false;
  }

  private void takePending() {
    if (pending > greatest) {
      greatest = pending;
      greatestSeq = pendingRow.seq;
      greatestFirstSeq = pendingRow.firstSeq;
      greatestMicros = pendingRow.micros;
      greatestMask = pendingRow.mask;
    }
    pending = Double.NEGATIVE_INFINITY;
  }

  boolean isKnown() {
    return crossing.isConfirmed();
  }

  /** Whether the figure is the load interpolated at the small width itself. */
  boolean isAtCrossing() {
    return greatest == crossing.load();
  }

  double load() {
    return greatest;
  }

  int mask() {
    return greatestMask;
  }

  FirstCrack.Figure figure(double uncertainty, double newtonsPerMillimetre) {
    return new FirstCrack.Figure(
        greatest,
        uncertainty,
        newtonsPerMillimetre,
        greatestMicros,
        greatestMask,
        greatestFirstSeq,
        greatestSeq);
  }
}
