package io.github.platenwire.terminal;

import java.util.ArrayList;
import java.util.List;

/** Numbers that can be read from across the room. Stateless. */
final class BigDigits {
  /** Height of a digit in cells. */
  static final int CELLS_HIGH = 5;

  /** Width of a digit in cells. */
  private static final int CELLS_WIDE = 3;

  private BigDigits() {}

  /** How many columns a text takes. */
  static int columns(String text, int cellColumns) {
    int cells = 0;
    for (int i = 0; i < text.length(); i++) {
      cells += rows(text.charAt(i))[0].length() + 1;
    }
    return Math.max(0, cells - 1) * cellColumns;
  }

  /**
   * The lines of a text.
   *
   * @param text digits, point, minus sign and spaces
   * @param cellColumns columns a cell
   * @param cellLines lines a cell
   * @param block what a full cell is drawn with, one column wide
   */
  static List<String> draw(String text, int cellColumns, int cellLines, String block) {
    List<String> lines = new ArrayList<>();
    for (int row = 0; row < CELLS_HIGH; row++) {
      StringBuilder line = new StringBuilder();
      for (int i = 0; i < text.length(); i++) {
        String cells = rows(text.charAt(i))[row] + (i < text.length() - 1 ? " " : "");
        cells.chars().forEach(c -> line.append((c == '#' ? block : " ").repeat(cellColumns)));
      }
      for (int copy = 0; copy < cellLines; copy++) {
        lines.add(line.toString());
      }
    }
    return lines;
  }

  private static String[] rows(char c) {
    return switch (c) {
      case '0' -> rows("### # # # # # # ###");
      case '1' -> rows(" #  ##   #   #  ###");
      case '2' -> rows("###   # ### #   ###");
      case '3' -> rows("###   # ###   # ###");
      case '4' -> rows("# # # # ###   #   #");
      case '5' -> rows("### #   ###   # ###");
      case '6' -> rows("### #   ### # # ###");
      case '7' -> rows("###   #   #  #   # ");
      case '8' -> rows("### # # ### # # ###");
      case '9' -> rows("### # # ###   # ###");
      case '-' -> rows("        ###        ");
      case '.' -> new String[] {" ", " ", " ", " ", "#"};
      default -> rows("                   ");
    };
  }

  /** Five rows of three cells, with one space between two rows. */
  private static String[] rows(String cells) {
    String[] rows = new String[CELLS_HIGH];
    for (int row = 0; row < CELLS_HIGH; row++) {
      int from = row * (CELLS_WIDE + 1);
      rows[row] = cells.substring(from, from + CELLS_WIDE);
    }
    return rows;
  }
}
