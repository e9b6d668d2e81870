package io.github.platenwire.live;

/**
 * The first lasting up-crossing of one width. A crossing begins where the width passes the level
 * from below, the load interpolated there between the two rows; it lasts if the width then does not
 * fall below the level by more than the hysteresis until enough rows and enough time have passed.
 * Otherwise it never was: a width that was passed only in the last moment before unloading is found
 * when it is passed again, at the load of the reloading. Not thread-safe.
 */
final class LastingCrossing {
  private final double level;
  private final CrackSettings.Lasting lasting;
  private final CrackRow previous = new CrackRow();
  private boolean hasPrevious;
  private boolean begun;
  private boolean confirmed;
  private int rowsSince;
  private long beginMicros;
  private double load;
  private long firstSeq;
  private long lastSeq;
  private int mask;
  private boolean interpolated;

  LastingCrossing(double level, CrackSettings.Lasting lasting) {
    this.level = level;
    this.lasting = lasting;
  }

  /** Takes a row with the width to look at; true when the crossing is found to last. */
  boolean accept(CrackRow row, double width) {
    if (confirmed || Double.isNaN(width)) {
      return false;
    }
    if (begun && width < level - lasting.hysteresisMillimetres()) {
      begun = false;
    }
    if (!begun && width >= level && !(hasPrevious && previous.width >= level)) {
      begin(row, width);
    }
    if (begun) {
      rowsSince++;
      confirmed = rowsSince >= lasting.rows() && row.micros - beginMicros >= lasting.micros();
    }
    previous.copyFrom(row);
    previous.width = width;
    hasPrevious = true;
    return confirmed;
  }

  private void begin(CrackRow row, double width) {
    begun = true;
    rowsSince = 0;
    beginMicros = row.micros;
    lastSeq = row.seq;
    mask = row.mask;
    interpolated = hasPrevious && previous.mask == row.mask;
    if (interpolated) {
      double share = (level - previous.width) / (width - previous.width);
      load = previous.load + (row.load - previous.load) * share;
      firstSeq = previous.firstSeq;
    } else {
      load = row.load;
      firstSeq = row.firstSeq;
    }
  }

  boolean isBegun() {
    return begun;
  }

  boolean isConfirmed() {
    return confirmed;
  }

  double level() {
    return level;
  }

  double load() {
    return load;
  }

  long beginMicros() {
    return beginMicros;
  }

  long firstSeq() {
    return firstSeq;
  }

  long lastSeq() {
    return lastSeq;
  }

  int mask() {
    return mask;
  }

  boolean isInterpolated() {
    return interpolated;
  }
}
