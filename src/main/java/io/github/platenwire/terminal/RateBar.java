package io.github.platenwire.terminal;

import io.github.platenwire.method.LiveView.RateBand;

/**
 * A scale on which the rate of loading is a mark and its band the middle third. A rate beyond the
 * scale stands at its end. Stateless.
 */
final class RateBar {
  private RateBar() {}

  /**
   * The scale.
   *
   * @param rate in megapascals a second; NaN draws the scale without a mark
   * @param columns its width, at least 9
   */
  static String draw(double rate, RateBand band, int columns, Glyphs glyphs) {
    int third = columns / 3;
    int start = third - 1;
    int end = columns - third;
    int mark = position(rate, band, start, end, columns);
    StringBuilder bar = new StringBuilder(columns);
    for (int i = 0; i < columns; i++) {
      bar.append(i == mark ? glyphs.marker() : scale(i, start, end, glyphs));
    }
    return bar.toString();
  }

  private static String scale(int i, int start, int end, Glyphs glyphs) {
    if (i == start || i == end) {
      return i == start ? glyphs.bandStart() : glyphs.bandEnd();
    }
    return i > start && i < end ? glyphs.dot() : glyphs.rule();
  }

  /*
   * The columns strictly between the two limits stand for the band, and the limits' own columns are
   * never covered: a mark inside says "within" and a mark outside does not, whatever the rounding.
   */
  private static int position(double rate, RateBand band, int start, int end, int columns) {
    if (!Double.isFinite(rate)) {
      return -1;
    }
    double low = band.lowMegapascalsPerSecond();
    double width = band.highMegapascalsPerSecond() - low;
    double share = width > 0 ? (rate - low) / width : Math.signum(rate - low);
    int inside = end - start - 1;
    if (share < 0) {
      return Math.max(0, start - 1 - (int) Math.min(columns, -share * inside));
    }
    if (rate > band.highMegapascalsPerSecond()) {
      return Math.min(columns - 1, end + 1 + (int) Math.min(columns, (share - 1) * inside));
    }
    return start + 1 + Math.min(inside - 1, (int) (share * inside));
  }
}
