package io.github.platenwire.device;

import java.util.Locale;

/**
 * The request for some registers of a Modbus RTU device and the answer to it. Immutable.
 *
 * <p>Source: Modbus Application Protocol V1.1b3, sections 6.3, 6.4 and 7; Modbus over Serial Line
 * V1.02, section 2.5.1. Frames are told apart by their length and CRC, not by the silence between
 * them, which does not survive an adapter.
 *
 * @param unit the device's address, 1 to 247
 * @param function 3 for holding, 4 for input registers
 * @param first address of the first register as sent, 0 to 65535
 * @param count how many registers, 1 to 125
 */
record ModbusFrame(int unit, int function, int first, int count) implements PackedFrame {
  private static final int EXCEPTION = 0x80;
  private static final int EXCEPTION_LENGTH = 5;
  private static final int HEAD = 3;
  private static final int TAIL = 2;
  private static final String[] EXCEPTIONS = {
    "",
    "it does not know this function",
    "it has no such register",
    "it does not accept the number of registers",
    "it failed"
  };

  /** What is sent to the device. */
  byte[] request() {
    byte[] frame = {
      (byte) unit,
      (byte) function,
      (byte) (first >> Byte.SIZE),
      (byte) first,
      (byte) (count >> Byte.SIZE),
      (byte) count,
      0,
      0
    };
    return sealed(frame);
  }

  /** Puts the CRC into a frame's last two bytes, low byte first. */
  static byte[] sealed(byte[] frame) {
    int end = frame.length - TAIL;
    int crc = Crc.MODBUS.over(frame, 0, end);
    frame[end] = (byte) crc;
    frame[end + 1] = (byte) (crc >> Byte.SIZE);
    return frame;
  }

  /** How long the answer is that some bytes begin with, or -1 if that cannot be told (yet). */
  int wholeLength(byte[] bytes, int length) {
    int whole = expectedLength(bytes, length);
    return whole > 0 && length >= whole ? whole : -1;
  }

  /** 0 if more bytes are needed to tell, -1 if it is no answer. */
  private int expectedLength(byte[] bytes, int length) {
    if (differs(bytes, length, 0, unit)) {
      return -1;
    }
    if (length >= 2 && Byte.toUnsignedInt(bytes[1]) == (function | EXCEPTION)) {
      return EXCEPTION_LENGTH;
    }
    if (differs(bytes, length, 1, function) || differs(bytes, length, 2, 2 * count)) {
      return -1;
    }
    return length < HEAD ? 0 : longest();
  }

  private static boolean differs(byte[] bytes, int length, int at, int expected) {
    return length > at && Byte.toUnsignedInt(bytes[at]) != expected;
  }

  @Override
  public int longest() {
    return HEAD + 2 * count + TAIL;
  }

  @Override
  public int fieldsFrom() {
    return HEAD;
  }

  @Override
  public boolean isSure() {
    return true;
  }

  @Override
  public Verdict judge(byte[] bytes, int length) {
    int expected = expectedLength(bytes, length);
    if (expected < 0) {
      return Verdict.NONE;
    }
    if (expected == 0 || length < expected) {
      return Verdict.MORE;
    }
    if (!isSealed(bytes, expected)) {
      return Verdict.NONE;
    }
    return expected == longest() && !isException(bytes) ? Verdict.VALUES : Verdict.REFUSAL;
  }

  private boolean isException(byte[] bytes) {
    return Byte.toUnsignedInt(bytes[1]) == (function | EXCEPTION);
  }

  private static boolean isSealed(byte[] bytes, int length) {
    int crc = Crc.MODBUS.over(bytes, 0, length - TAIL);
    return bytes[length - TAIL] == (byte) crc && bytes[length - 1] == (byte) (crc >> Byte.SIZE);
  }

  @Override
  public Fault fault(byte[] bytes) {
    int[] head = {unit, function, 2 * count};
    String[] names = {"unit", "function", "byte count"};
    boolean exception = bytes.length > 1 && isException(bytes);
    for (int i = 0; i < (exception ? 1 : HEAD); i++) {
      if (differs(bytes, bytes.length, i, head[i])) {
        return new Fault(
            i,
            String.format(Locale.ROOT, "the %s is %d, not %d", names[i], bytes[i] & 0xFF, head[i]));
      }
    }
    int expected = exception ? EXCEPTION_LENGTH : longest();
    if (bytes.length < expected) {
      return new Fault(
          bytes.length, "the answer ends after " + bytes.length + " of " + expected + " bytes");
    }
    if (!isSealed(bytes, expected)) {
      return new Fault(expected - TAIL, "the CRC does not fit the bytes before it");
    }
    if (exception) {
      int code = Byte.toUnsignedInt(bytes[2]);
      String words = code < EXCEPTIONS.length ? EXCEPTIONS[code] : "";
      return new Fault(
          2, "the device refused with exception " + code + (words.isEmpty() ? "" : ": " + words));
    }
    return new Fault(0, "this is a whole answer; it came when none was asked for");
  }
}
