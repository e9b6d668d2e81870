package io.github.platenwire.emulate;

/**
 * Check values of the frames that emulated devices send. Written anew, and in another way than the
 * decoders work them out, so that a fault there does not agree with itself here. Stateless.
 */
final class CheckBytes {
  /** Polynomial 8005 with its bits reversed: Modbus over Serial Line V1.02, section 6.2.2. */
  private static final int REVERSED = 0xA001;

  private static final int INITIAL = 0xFFFF;

  private CheckBytes() {}

  /** CRC-16 as Modbus RTU has it. */
  static int crc16(byte[] bytes, int from, int to) {
    int crc = INITIAL;
    for (int i = from; i < to; i++) {
      crc ^= Byte.toUnsignedInt(bytes[i]);
      for (int bit = 0; bit < Byte.SIZE; bit++) {
        boolean odd = (crc & 1) != 0;
        crc >>>= 1;
        crc ^= odd ? REVERSED : 0;
      }
    }
    return crc;
  }

  /** Puts the CRC of all that stands before them into a frame's last two bytes, low byte first. */
  static byte[] sealed(byte[] frame) {
    int at = frame.length - 2;
    int crc = crc16(frame, 0, at);
    frame[at] = (byte) crc;
    frame[at + 1] = (byte) (crc >>> Byte.SIZE);
    return frame;
  }

  /** What makes the sum of some bytes a multiple of 256. */
  static byte lrc(byte[] bytes, int from, int to) {
    byte sum = 0;
    for (int i = from; i < to; i++) {
      sum += bytes[i];
    }
    return (byte) -sum;
  }
}
