package io.github.platenwire.device;

import java.math.BigDecimal;

/**
 * A number in the bytes of a frame. Immutable.
 *
 * @param at index of its first byte in the frame
 * @param order for each byte as it is sent, its rank: 0 is the most significant
 * @param kind how the bits are read
 * @param scale what the number is multiplied with
 * @param offset added after that
 */
@SuppressWarnings("ArrayRecordComponent") // handed over whole, never compared
record PackedNumber(int at, int[] order, Kind kind, Scale scale, double offset) {
  /** How bits become a number. */
  enum Kind {
    UNSIGNED,
    SIGNED,
    /** IEEE 754, 32 or 64 bits. */
    FLOAT
  }

  /**
   * A factor as a quotient, so that a tenth of a whole number is the double nearest to it.
   *
   * @param times exact in a double
   * @param by a power of ten, exact in a double
   */
  record Scale(double times, double by) {
    static final Scale ONE = new Scale(1, 1);

    /* Powers of ten are exact in a double up to 10^22. */
    private static final int MOST_TENS = 22;
    private static final int EXACT_BITS = 53;

    /** The factor of which {@code factor} is the shortest decimal. */
    static Scale of(double factor) {
      BigDecimal decimal = BigDecimal.valueOf(factor);
      int tens = decimal.scale();
      boolean exact =
          tens > 0 && tens <= MOST_TENS && decimal.unscaledValue().bitLength() <= EXACT_BITS;
      return exact
          ? new Scale(decimal.unscaledValue().doubleValue(), Math.pow(10, tens))
          : new Scale(factor, 1);
    }
  }

  /** The bits as they are sent, the most significant first. */
  long bits(byte[] frame, int from) {
    long bits = 0;
    int last = order.length - 1;
    for (int i = 0; i <= last; i++) {
      bits |= Byte.toUnsignedLong(frame[from + at + i]) << (Byte.SIZE * (last - order[i]));
    }
    return bits;
  }

  /** The number before scale and offset. */
  double raw(byte[] frame, int from) {
    long bits = bits(frame, from);
    return switch (kind) {
      case UNSIGNED -> bits;
      case SIGNED -> {
        int unused = Long.SIZE - Byte.SIZE * order.length;
        yield bits << unused >> unused;
      }
      case FLOAT ->
          order.length == Float.BYTES
              ? Float.intBitsToFloat((int) bits)
              : Double.longBitsToDouble(bits);
    };
  }

  /** The value that a raw number stands for; zero has no sign. */
  double value(double raw) {
    return raw * scale.times / scale.by + offset + 0.0;
  }

  int end() {
    return at + order.length;
  }
}
