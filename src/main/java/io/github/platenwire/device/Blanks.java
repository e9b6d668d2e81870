package io.github.platenwire.device;

/** Spaces and tabs, which devices send as padding. Stateless. */
final class Blanks {
  private Blanks() {}

  static boolean isBlank(byte b) {
    return b == ' ' || b == '\t';
  }

  /** The first index from {@code at} on that holds no blank, at most {@code end}. */
  static int skip(byte[] line, int at, int end) {
    int i = at;
    while (i < end && isBlank(line[i])) {
      i++;
    }
    return i;
  }
}
