package io.github.platenwire.device;

import java.util.Locale;
import java.util.Optional;

/**
 * A frame of fixed length with sync bytes, a checksum or both. Immutable.
 *
 * @param length all its bytes, 1 to 1024
 * @param sync what it begins with, perhaps nothing
 * @param check its checksum, if it has one
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record BinaryFrame(int length, byte[] sync, Optional<Check> check) implements PackedFrame {
  /**
   * A checksum in its place.
   *
   * @param sum how it is worked out
   * @param at index of its first byte
   * @param from index of the first byte that it covers
   * @param to index after the last byte that it covers
   * @param lowFirst whether the low byte is sent first
   */
  record Check(Checksum sum, int at, int from, int to, boolean lowFirst) {
    int sent(byte[] frame) {
      int first = Byte.toUnsignedInt(frame[at]);
      if (sum.width() == 1) {
        return first;
      }
      int second = Byte.toUnsignedInt(frame[at + 1]);
      return lowFirst ? second << Byte.SIZE | first : first << Byte.SIZE | second;
    }

    int expected(byte[] frame) {
      return sum.over(frame, from, to);
    }
  }

  @Override
  public int longest() {
    return length;
  }

  @Override
  public int fieldsFrom() {
    return 0;
  }

  @Override
  public boolean isSure() {
    return check.isPresent();
  }

  @Override
  public Verdict judge(byte[] bytes, int count) {
    for (int i = 0; i < Math.min(count, sync.length); i++) {
      if (bytes[i] != sync[i]) {
        return Verdict.NONE;
      }
    }
    if (count < length) {
      return Verdict.MORE;
    }
    return check.isEmpty() || check.get().sent(bytes) == check.get().expected(bytes)
        ? Verdict.VALUES
        : Verdict.NONE;
  }

  @Override
  public Fault fault(byte[] bytes) {
    for (int i = 0; i < Math.min(bytes.length, sync.length); i++) {
      if (bytes[i] != sync[i]) {
        return new Fault(i, "a frame begins with " + hex(sync) + ", but this byte differs");
      }
    }
    if (bytes.length < length) {
      return new Fault(
          bytes.length, "the frame ends after " + bytes.length + " of " + length + " bytes");
    }
    if (judge(bytes, length) == Verdict.NONE) {
      Check found = check.orElseThrow();
      return new Fault(
          found.at,
          String.format(
              Locale.ROOT,
              "the checksum sent is %0"
                  + 2 * found.sum.width()
                  + "X, but its bytes give %0"
                  + 2 * found.sum.width()
                  + "X",
              found.sent(bytes),
              found.expected(bytes)));
    }
    return new Fault(0, "this is a whole frame; it came when none was expected");
  }

  static String hex(byte[] bytes) {
    StringBuilder text = new StringBuilder();
    for (byte b : bytes) {
      text.append(text.length() == 0 ? "" : " ").append(String.format(Locale.ROOT, "%02X", b));
    }
    return text.toString();
  }
}
