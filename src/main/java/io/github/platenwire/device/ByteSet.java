package io.github.platenwire.device;

import java.util.BitSet;

/** A set of byte values. Immutable. */
final class ByteSet {
  static final ByteSet NONE = new ByteSet(new BitSet());
  static final ByteSet ALL = range(0, 255);
  static final ByteSet DIGITS = range('0', '9');

  /** Space and tab. */
  static final ByteSet BLANKS = of(' ', '\t');

  private final BitSet bits;

  private ByteSet(BitSet bits) {
    this.bits = bits;
  }

  static ByteSet of(int... unsignedBytes) {
    BitSet bits = new BitSet(256);
    for (int b : unsignedBytes) {
      bits.set(b);
    }
    return new ByteSet(bits);
  }

  static ByteSet of(byte[] bytes, int from, int to) {
    BitSet bits = new BitSet(256);
    for (int i = from; i < to; i++) {
      bits.set(Byte.toUnsignedInt(bytes[i]));
    }
    return new ByteSet(bits);
  }

  private static ByteSet range(int first, int last) {
    BitSet bits = new BitSet(256);
    bits.set(first, last + 1);
    return new ByteSet(bits);
  }

  /** Both sets together. */
  ByteSet with(ByteSet other) {
    BitSet union = (BitSet) bits.clone();
    union.or(other.bits);
    return new ByteSet(union);
  }

  ByteSet without(ByteSet other) {
    BitSet rest = (BitSet) bits.clone();
    rest.andNot(other.bits);
    return new ByteSet(rest);
  }

  boolean contains(byte b) {
    return bits.get(Byte.toUnsignedInt(b));
  }

  boolean meets(ByteSet other) {
    return bits.intersects(other.bits);
  }

  /** The least byte that is in both sets, or -1 if there is none. */
  int firstCommon(ByteSet other) {
    BitSet common = (BitSet) bits.clone();
    common.and(other.bits);
    return common.nextSetBit(0);
  }
}
