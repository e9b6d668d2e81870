package io.github.platenwire.commission;

import io.github.platenwire.device.Checksum;
import io.github.platenwire.device.Crc;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A check value that stands in hexadecimal at the end of each line. Immutable.
 *
 * @param words what it is, for a person
 * @param length its characters
 */
record TextCheck(String words, int length) {
  private static final int FEWEST_LINES = 5;

  /** So many lines in a hundred must agree; the others may be damaged. */
  private static final int AGREEING_PERCENT = 95;

  private record Kind(String words, Checksum sum) {}

  private static final List<Kind> KINDS =
      List.of(
          new Kind("exclusive or", Checksum.XOR),
          new Kind("sum", Checksum.SUM_8),
          new Kind("LRC (two's complement of the sum)", Checksum.LRC),
          new Kind("sum of 16 bits", Checksum.SUM_16),
          new Kind("CRC-16 with polynomial 0x8005, reflected, from 0xFFFF", Crc.MODBUS),
          new Kind(
              "CRC-16 with polynomial 0x1021 from 0xFFFF",
              new Crc(16, 0x1021, 0xFFFF, false, false, 0)),
          new Kind(
              "CRC-16 with polynomial 0x1021 from 0", new Crc(16, 0x1021, 0, false, false, 0)));

  /** The check value that nearly all lines carry, if there is one. */
  static Optional<TextCheck> find(List<String> lines) {
    for (Kind kind : KINDS) {
      int length = 2 * kind.sum.width();
      for (int from = 0; from <= 1; from++) {
        for (int before = 0; before <= 1; before++) {
          if (fits(lines, kind.sum, length, from, before)) {
            return Optional.of(new TextCheck(words(kind, from, before), length));
          }
        }
      }
    }
    return Optional.empty();
  }

  private static String words(Kind kind, int from, int before) {
    return kind.words
        + " over the line's characters"
        + (from == 0 ? "" : " without the first")
        + (before == 0 ? "" : (from == 0 ? " without" : " and") + " the one before it");
  }

  private static boolean fits(List<String> lines, Checksum sum, int length, int from, int before) {
    List<String> seen = new ArrayList<>();
    int agreeing = 0;
    for (String line : lines) {
      int at = line.length() - length;
      if (at - before > from) {
        byte[] bytes = line.getBytes(StandardCharsets.ISO_8859_1);
        int value = sum.over(bytes, from, at - before);
        String sent = line.substring(at);
        String wanted = String.format(Locale.ROOT, "%0" + length + "X", value);
        if (wanted.equalsIgnoreCase(sent)) {
          agreeing++;
          seen.add(wanted);
        }
      }
    }
    return agreeing >= FEWEST_LINES
        && seen.stream().distinct().count() >= 3
        && agreeing * 100L >= lines.size() * (long) AGREEING_PERCENT;
  }
}
