package io.github.platenwire.device;

/** A check value over some bytes. Immutable; safe for any thread. */
public interface Checksum {
  /** Exclusive or of all bytes. */
  Checksum XOR = of(1, (bytes, from, to) -> fold(bytes, from, to, /* xor= */ true));

  /** Sum of all bytes, its lowest eight bits. */
  Checksum SUM_8 = of(1, (bytes, from, to) -> fold(bytes, from, to, /* xor= */ false) & 0xFF);

  /** Sum of all bytes, its lowest sixteen bits. */
  Checksum SUM_16 = of(2, (bytes, from, to) -> fold(bytes, from, to, /* xor= */ false) & 0xFFFF);

  /** Longitudinal redundancy check as in Modbus ASCII: the two's complement of {@link #SUM_8}. */
  Checksum LRC = of(1, (bytes, from, to) -> -fold(bytes, from, to, /* xor= */ false) & 0xFF);

  /** How many bytes it takes up in a frame, 1 or 2. */
  int width();

  /**
   * The check value.
   *
   * @param bytes holds the bytes
   * @param from index of the first
   * @param to index after the last
   * @return an unsigned number
   */
  int over(byte[] bytes, int from, int to);

  /** Works out a check value. */
  @FunctionalInterface
  interface Rule {
    /** As {@link Checksum#over}. */
    int over(byte[] bytes, int from, int to);
  }

  private static Checksum of(int width, Rule rule) {
    return new Checksum() {
      @Override
      public int width() {
        return width;
      }

      @Override
      public int over(byte[] bytes, int from, int to) {
        return rule.over(bytes, from, to);
      }
    };
  }

  private static int fold(byte[] bytes, int from, int to, boolean xor) {
    int value = 0;
    for (int i = from; i < to; i++) {
      int b = Byte.toUnsignedInt(bytes[i]);
      value = xor ? value ^ b : value + b;
    }
    return value;
  }
}
