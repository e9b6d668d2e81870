package io.github.platenwire.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Bytes in hexadecimal with their text beside them. Stateless. */
final class HexDump {
  /** Two digits and a blank, and one character of text. */
  private static final int COLUMNS_A_BYTE = 4;

  private static final int GAP = 1;
  private static final int GROUP = 8;

  private HexDump() {}

  /** Lines of eight, sixteen … bytes, as many as go into some columns. */
  static List<String> lines(byte[] bytes, int columns) {
    int fit = (columns - GAP) / COLUMNS_A_BYTE;
    int wide = Math.max(GROUP, fit / GROUP * GROUP);
    List<String> lines = new ArrayList<>();
    for (int from = 0; from < bytes.length; from += wide) {
      StringBuilder hex = new StringBuilder();
      StringBuilder text = new StringBuilder();
      for (int i = from; i < from + wide; i++) {
        boolean there = i < bytes.length;
        hex.append(there ? String.format(Locale.ROOT, "%02X ", bytes[i]) : "   ");
        text.append(there ? shown(bytes[i]) : "");
      }
      lines.add(hex + " ".repeat(GAP) + text);
    }
    return lines;
  }

  private static char shown(byte b) {
    return b >= ' ' && b <= '~' ? (char) b : '·';
  }
}
