package io.github.platenwire.chart;

import io.github.platenwire.quantity.UnitSystem;
import java.awt.Color;
import java.util.Arrays;
import java.util.List;

/**
 * The colours of a chart, and which system of units stands first on it. Lines differ in lightness
 * as well as in hue, so that they can be told apart in print and by people who see colours
 * differently. Immutable.
 */
public final class Theme {
  /** For paper and bright rooms; SI stands first. */
  public static final Theme LIGHT =
      new Theme(
          0xFFFFFF, 0x1F2933, 0x5B6773, 0xDDE2E7, 0x0B5C8A, 0xB4530A, 0x2F7D4F, 0xB3261E, 0x6B4C9A,
          0x8A6A00, 0x4E6E80);

  /** For dark screens; SI stands first. */
  public static final Theme DARK =
      new Theme(
          0x14181D, 0xE8ECF0, 0x9AA7B4, 0x333C46, 0x6CB8E6, 0xF0A35E, 0x7CCB98, 0xF2867D, 0xB79CE8,
          0xD9BE4A, 0x93B4C6);

  private final Color background;
  private final Color ink;
  private final Color faintInk;
  private final Color grid;
  private final Color first;
  private final Color second;
  private final Color good;
  private final Color bad;
  private final Color third;
  private final Color fourth;
  private final Color fifth;
  private final UnitSystem unitsFirst;

  private Theme(int... colors) {
    this(UnitSystem.SI, Arrays.stream(colors).mapToObj(Color::new).toList());
  }

  private Theme(UnitSystem unitsFirst, List<Color> colors) {
    this.unitsFirst = unitsFirst;
    background = colors.get(0);
    ink = colors.get(1);
    faintInk = colors.get(2);
    grid = colors.get(3);
    first = colors.get(4);
    second = colors.get(5);
    good = colors.get(6);
    bad = colors.get(7);
    third = colors.get(8);
    fourth = colors.get(9);
    fifth = colors.get(10);
  }

  /** The same colours, with a system of units at the left and at the bottom of each chart. */
  public Theme withFirst(UnitSystem units) {
    return new Theme(units, colors());
  }

  /** Which system of units stands at the left and at the bottom, and first in words. */
  public UnitSystem unitsFirst() {
    return unitsFirst;
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
    List<Color> all = List.of(first, second, good, third, fourth, fifth);
    return all.get(Math.floorMod(index, all.size()));
  }

  /**
   * Every colour of the theme, always in the same order: what is drawn in one theme can be shown in
   * the other by taking each colour's counterpart. No two colours of a theme are equal.
   */
  public List<Color> colors() {
    return List.of(background, ink, faintInk, grid, first, second, good, bad, third, fourth, fifth);
  }

  @Override
  public String toString() {
    return "theme on " + background + ", " + unitsFirst.word() + " first";
  }

  /** A colour that lets the grid show through. */
  public static Color veil(Color color, int alpha) {
    return new Color(color.getRed(), color.getGreen(), color.getBlue(), alpha);
  }
}
