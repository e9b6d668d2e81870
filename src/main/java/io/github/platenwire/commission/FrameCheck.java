package io.github.platenwire.commission;

import io.github.platenwire.device.Checksum;
import io.github.platenwire.device.Crc;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The checksum of frames of one length, at their end.
 *
 * @param words what it is, for a person
 * @param toml the lines of the table {@code [checksum]} that tell the kind
 * @param at index of its first byte
 * @param from index of the first byte that it covers
 * @param lowFirst whether the low byte is sent first
 */
record FrameCheck(String words, List<String> toml, int at, int from, boolean lowFirst) {
  private static final int AGREEING_PERCENT = 95;

  private record Kind(String words, Checksum sum, List<String> toml) {}

  private static final List<Kind> KINDS =
      List.of(
          crc16("CRC-16 with polynomial 0x8005, reflected, from 0xFFFF", Crc.MODBUS),
          crc16(
              "CRC-16 with polynomial 0x1021 from 0xFFFF",
              new Crc(16, 0x1021, 0xFFFF, false, false, 0)),
          crc16("CRC-16 with polynomial 0x1021 from 0", new Crc(16, 0x1021, 0, false, false, 0)),
          crc16(
              "CRC-16 with polynomial 0x1021, reflected, from 0",
              new Crc(16, 0x1021, 0, true, true, 0)),
          crc16(
              "CRC-16 with polynomial 0x8005, reflected, from 0",
              new Crc(16, 0x8005, 0, true, true, 0)),
          plain("sum of 16 bits", Checksum.SUM_16, "sum-16"),
          plain("exclusive or", Checksum.XOR, "xor"),
          plain("sum", Checksum.SUM_8, "sum-8"),
          plain("LRC", Checksum.LRC, "lrc"),
          crc8("CRC-8 with polynomial 0x07", new Crc(8, 0x07, 0, false, false, 0)),
          crc8("CRC-8 with polynomial 0x31, reflected", new Crc(8, 0x31, 0, true, true, 0)));

  private static Kind plain(String words, Checksum sum, String name) {
    return new Kind(words, sum, List.of("kind = \"" + name + "\""));
  }

  private static Kind crc16(String words, Crc crc) {
    return new Kind(words, crc, toml("crc-16", crc));
  }

  private static Kind crc8(String words, Crc crc) {
    return new Kind(words, crc, toml("crc-8", crc));
  }

  private static List<String> toml(String kind, Crc crc) {
    return List.of(
        "kind = \"" + kind + "\"",
        hex("polynomial", crc.polynomial()),
        hex("initial", crc.initial()),
        "reflect-in = " + crc.reflectIn(),
        "reflect-out = " + crc.reflectOut(),
        hex("xor-out", crc.xorOut()));
  }

  private static String hex(String key, int value) {
    return String.format(Locale.ROOT, "%s = 0x%X", key, value);
  }

  /** The checksum that nearly all frames carry, if there is one. */
  static Optional<FrameCheck> find(List<byte[]> frames, int syncLength) {
    for (Kind kind : KINDS) {
      for (int from : new int[] {0, syncLength}) {
        for (boolean lowFirst : new boolean[] {false, true}) {
          int at = frames.get(0).length - kind.sum.width();
          boolean twice = lowFirst && kind.sum.width() == 1;
          if (!twice && at > from && fits(frames, kind.sum, at, from, lowFirst)) {
            return Optional.of(new FrameCheck(kind.words, kind.toml, at, from, lowFirst));
          }
        }
      }
    }
    return Optional.empty();
  }

  private static boolean fits(
      List<byte[]> frames, Checksum sum, int at, int from, boolean lowFirst) {
    long agreeing =
        frames.stream().filter(f -> sum.over(f, from, at) == sent(f, sum, at, lowFirst)).count();
    long different = frames.stream().map(f -> sent(f, sum, at, lowFirst)).distinct().count();
    return different >= 3 && agreeing * 100 >= frames.size() * (long) AGREEING_PERCENT;
  }

  private static int sent(byte[] frame, Checksum sum, int at, boolean lowFirst) {
    int first = Byte.toUnsignedInt(frame[at]);
    if (sum.width() == 1) {
      return first;
    }
    int second = Byte.toUnsignedInt(frame[at + 1]);
    return lowFirst ? second << Byte.SIZE | first : first << Byte.SIZE | second;
  }
}
