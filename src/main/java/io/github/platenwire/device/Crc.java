package io.github.platenwire.device;

/**
 * A cyclic redundancy check of eight or sixteen bits, told by the usual parameters. Immutable.
 *
 * @param bits 8 or 16
 * @param polynomial without its highest term
 * @param initial what the register holds at first
 * @param reflectIn whether each byte enters with its lowest bit first
 * @param reflectOut whether the register is read with its lowest bit first
 * @param xorOut what the register is combined with at the end
 */
public record Crc(
    int bits, int polynomial, int initial, boolean reflectIn, boolean reflectOut, int xorOut)
    implements Checksum {
  /** That of Modbus RTU: Modbus over Serial Line V1.02, section 2.5.1.2. */
  public static final Crc MODBUS = new Crc(16, 0x8005, 0xFFFF, true, true, 0);

  @Override
  public int width() {
    return bits / Byte.SIZE;
  }

  @Override
  public int over(byte[] bytes, int from, int to) {
    int register = initial;
    for (int i = from; i < to; i++) {
      int b = Byte.toUnsignedInt(bytes[i]);
      register = shifted(register ^ ((reflectIn ? reflected(b, Byte.SIZE) : b) << (bits - 8)));
    }
    return (reflectOut ? reflected(register, bits) : register) ^ xorOut;
  }

  private int shifted(int register) {
    int top = 1 << (bits - 1);
    int mask = (1 << bits) - 1;
    int now = register;
    for (int bit = 0; bit < Byte.SIZE; bit++) {
      now = ((now & top) != 0 ? (now << 1) ^ polynomial : now << 1) & mask;
    }
    return now;
  }

  private static int reflected(int value, int bits) {
    return Integer.reverse(value) >>> (Integer.SIZE - bits);
  }
}
