package io.github.platenwire.lab;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Reads the numbers of one table, whose decimals may be set off by point or comma. What could also
 * be a thousands separator is read only where the table itself shows which it uses. Immutable.
 */
final class TableNumbers {
  private static final Pattern NUMBER =
      Pattern.compile("[+-]?([0-9]+([.,][0-9]*)?|[.,][0-9]+)([eE][+-]?[0-9]{1,2})?");

  /** One separator before exactly three digits: a decimal, or thousands. */
  private static final Pattern TWO_WAYS = Pattern.compile("[+-]?[1-9][0-9]{0,2}[.,][0-9]{3}");

  private static final Pattern THOUSANDS =
      Pattern.compile("[+-]?[0-9]{1,3}([., '\\u00A0\\u202F\\u2019][0-9]{3})+([.,][0-9]*)?");

  private final boolean pointIsDecimal;
  private final boolean commaIsDecimal;

  private TableNumbers(boolean pointIsDecimal, boolean commaIsDecimal) {
    this.pointIsDecimal = pointIsDecimal;
    this.commaIsDecimal = commaIsDecimal;
  }

  /** Finds out how a table writes decimals, from its numbers and its separator. */
  static TableNumbers of(CsvTable table, List<Column> columns) {
    List<String> certain = new ArrayList<>();
    for (CsvTable.Row row : table.rows()) {
      for (Column column : columns) {
        if (column.isNumber() && column.index() < row.cells().size()) {
          String cell = row.cells().get(column.index());
          if (NUMBER.matcher(cell).matches() && !TWO_WAYS.matcher(cell).matches()) {
            certain.add(cell);
          }
        }
      }
    }
    boolean point = certain.stream().anyMatch(cell -> cell.indexOf('.') >= 0);
    boolean comma = certain.stream().anyMatch(cell -> cell.indexOf(',') >= 0);
    char separator = table.text().separator();
    return new TableNumbers(
        !comma && (point || separator == ','), !point && (comma || separator == ';'));
  }

  /**
   * A cell's number.
   *
   * @throws NotANumber if it is none, or could be two
   */
  double parse(String cell) throws NotANumber {
    if (TWO_WAYS.matcher(cell).matches() && !isTold(cell)) {
      throw new NotANumber(twoWays(cell));
    }
    if (NUMBER.matcher(cell).matches()) {
      return Double.parseDouble(cell.replace(',', '.'));
    }
    if (THOUSANDS.matcher(cell).matches()) {
      throw new NotANumber("'" + cell + "' has its thousands set off; write it without");
    }
    throw new NotANumber("'" + cell + "' is no number; write it with digits only, such as 101.6");
  }

  private boolean isTold(String cell) {
    return cell.indexOf('.') >= 0 ? pointIsDecimal : commaIsDecimal;
  }

  private static String twoWays(String cell) {
    String whole = cell.replaceAll("[.,]", "");
    String decimal = cell.replace(',', '.');
    return "'"
        + cell
        + "' can be "
        + whole
        + " or "
        + decimal
        + "; write "
        + whole
        + ", or "
        + cell
        + "0 with one more digit";
  }

  /** A cell that is no number, with what would be right. */
  static final class NotANumber extends Exception {
    private static final long serialVersionUID = 1L;

    NotANumber(String problem) {
      super(problem);
    }
  }
}
