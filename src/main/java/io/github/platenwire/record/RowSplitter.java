package io.github.platenwire.record;

import java.util.ArrayList;
import java.util.List;

/**
 * Splits one row of a raw file into its columns (RFC 4180, no line feeds inside quotes). Stateless.
 */
final class RowSplitter {
  private RowSplitter() {}

  /** The columns, quotes taken off. */
  static String[] split(String row) {
    List<String> columns = new ArrayList<>(6);
    StringBuilder column = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < row.length(); i++) {
      char c = row.charAt(i);
      if (c == '"') {
        boolean doubled = quoted && i + 1 < row.length() && row.charAt(i + 1) == '"';
        if (doubled) {
          column.append('"');
          i++;
        } else {
          quoted = !quoted;
        }
      } else if (c == ',' && !quoted) {
        columns.add(column.toString());
        column.setLength(0);
      } else {
        column.append(c);
      }
    }
    columns.add(column.toString());
    return columns.toArray(String[]::new);
  }
}
