package io.github.platenwire.emulate;

import java.io.ByteArrayOutputStream;
import java.util.concurrent.TimeUnit;

/**
 * A device that answers Modbus RTU requests for its registers, as Modbus Application Protocol
 * V1.1b3, sections 6.3, 6.4 and 7, has it. Requests are told apart by length and CRC, and by a
 * pause after which an unfinished one is forgotten. It answers to nobody else's address, and not to
 * frames with a wrong CRC. Not thread-safe.
 */
final class RegisterConversation implements Conversation {
  private static final int REQUEST_LENGTH = 8;
  private static final int EXCEPTION = 0x80;
  private static final int NO_SUCH_FUNCTION = 1;
  private static final int NO_SUCH_REGISTER = 2;
  private static final int BAD_COUNT = 3;
  private static final int MOST_REGISTERS = 125;

  /** Far longer than the 3.5 characters of the standard: pipes and adapters stretch frames. */
  private static final long PAUSE_NANOS = TimeUnit.MILLISECONDS.toNanos(50);

  private final int unit;
  private final int function;
  private final int first;
  private final byte[] frame = new byte[REQUEST_LENGTH];
  private int length;
  private long lastNanos = Long.MIN_VALUE;

  /**
   * A device.
   *
   * @param unit its address, 1 to 247
   * @param function 3 for holding, 4 for input registers; it knows no other
   * @param first address of its first register
   */
  RegisterConversation(int unit, int function, int first) {
    this.unit = unit;
    this.function = function;
    this.first = first;
  }

  @Override
  public byte[] hear(byte[] bytes, long nanos, Readings readings) {
    if (length > 0 && nanos - lastNanos > PAUSE_NANOS) {
      length = 0;
    }
    lastNanos = nanos;
    ByteArrayOutputStream answers = new ByteArrayOutputStream();
    for (byte b : bytes) {
      frame[length++] = b;
      if (length == REQUEST_LENGTH) {
        if (isSealed()) {
          length = 0;
          answers.writeBytes(answer(readings));
        } else {
          System.arraycopy(frame, 1, frame, 0, --length);
        }
      }
    }
    return answers.toByteArray();
  }

  private boolean isSealed() {
    int crc = CheckBytes.crc16(frame, 0, REQUEST_LENGTH - 2);
    return crc == (at(REQUEST_LENGTH - 2) | at(REQUEST_LENGTH - 1) << Byte.SIZE);
  }

  private int at(int index) {
    return Byte.toUnsignedInt(frame[index]);
  }

  private byte[] answer(Readings readings) {
    int from = at(2) << Byte.SIZE | at(3);
    int count = at(4) << Byte.SIZE | at(5);
    if (at(0) != unit) {
      return new byte[0];
    }
    if (at(1) != function) {
      return exception(NO_SUCH_FUNCTION);
    }
    if (count < 1 || count > MOST_REGISTERS) {
      return exception(BAD_COUNT);
    }
    return readings.take(registers -> registers(registers, 2 * (from - first), 2 * count));
  }

  private byte[] registers(byte[] all, int from, int count) {
    if (from < 0 || from + count > all.length) {
      return exception(NO_SUCH_REGISTER);
    }
    byte[] answer = new byte[3 + count + 2];
    answer[0] = (byte) unit;
    answer[1] = (byte) function;
    answer[2] = (byte) count;
    System.arraycopy(all, from, answer, 3, count);
    return CheckBytes.sealed(answer);
  }

  private byte[] exception(int code) {
    byte[] answer = {(byte) unit, (byte) (at(1) | EXCEPTION), (byte) code, 0, 0};
    return CheckBytes.sealed(answer);
  }
}
