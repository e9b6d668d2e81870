package io.github.platenwire.chart;

import java.awt.Color;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * The colours of a chart. Lines differ in lightness as well as in hue, so that they can be told
 * apart in print and by people who see colours differently. Immutable.
 */
public enum Theme {
  /** For paper and bright rooms. */
  LIGHT(
      0xFFFFFF,
      0x1F2933,
      0x5B6773,
      0xDDE2E7,
      0x0B5C8A,
      0xB4530A,
      0x2F7D4F,
      0xB3261E,
      new int[] {0x6B4C9A, 0x8A6A00, 0x4E6E80}),
  /** For dark screens. */
  DARK(
      0x14181D,
      0xE8ECF0,
      0x9AA7B4,
      0x333C46,
      0x6CB8E6,
      0xF0A35E,
      0x7CCB98,
      0xF2867D,
      new int[] {0xB79CE8, 0xD9BE4A, 0x93B4C6});

  private final Color background;
  private final Color ink;
  private final Color faintInk;
  private final Color grid;
  private final Color first;
  private final Color second;
  private final Color good;
  private final Color bad;
  private final List<Color> series;

  Theme(
      int background,
      int ink,
      int faintInk,
      int grid,
      int first,
      int second,
      int good,
      int bad,
      int[] more) {
    this.background = new Color(background);
    this.ink = new Color(ink);
    this.faintInk = new Color(faintInk);
    this.grid = new Color(grid);
    this.first = new Color(first);
    this.second = new Color(second);
    this.good = new Color(good);
    this.bad = new Color(bad);
    this.series =
        Stream.concat(
                Stream.of(this.first, this.second, this.good),
                Arrays.stream(more).mapToObj(Color::new))
            .toList();
  }

  /** Behind everything. */
  public Color background() {
    return background;
  }

  /** Titles and the words of marks. */
  public Color ink() {
    return ink;
  }

  /** Axes and their figures. */
  public Color faintInk() {
    return faintInk;
  }

  /** Grid lines. */
  public Color grid() {
    return grid;
  }

  /** The most important line. */
  public Color first() {
    return first;
  }

  /** The next line. */
  public Color second() {
    return second;
  }

  /** What is allowed. */
  public Color good() {
    return good;
  }

  /** What is beyond a limit. */
  public Color bad() {
    return bad;
  }

  /**
   * The colour of one of several series; after the sixth they begin anew, so shapes or names must
   * tell series apart as well.
   *
   * @param index from 0
   */
  public Color series(int index) {
    return series.get(Math.floorMod(index, series.size()));
  }

  /**
   * Every colour of the theme, always in the same order: what is drawn in one theme can be shown in
   * the other by taking each colour's counterpart. No two colours of a theme are equal.
   */
  public List<Color> colors() {
    return Stream.concat(Stream.of(background, ink, faintInk, grid, bad), series.stream()).toList();
  }

  /** A colour that lets the grid show through. */
  public static Color veil(Color color, int alpha) {
    return new Color(color.getRed(), color.getGreen(), color.getBlue(), alpha);
  }
}
