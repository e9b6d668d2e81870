package io.github.platenwire.emulate;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Locale;
import java.util.Queue;
import java.util.function.UnaryOperator;

/**
 * A device that answers queries as IEEE 488.2 and SCPI-99 have it: messages end with LF, a CR
 * before it is passed over, semicolons part the commands of one message; commands that it does not
 * know go into its error queue and are not answered. Not thread-safe.
 *
 * <p>Of the common commands it knows {@code *IDN?}, {@code *CLS}, {@code *RST}, {@code *OPC?} and
 * {@code *ESR?} (IEEE 488.2, section 10; bits of the register: section 11.5.1.1, from memory).
 */
final class QueryConversation implements Conversation {
  private static final int LONGEST_MESSAGE = 256;
  private static final int MOST_ERRORS = 16;
  private static final int COMMAND_ERROR = 0x20;
  private static final int DEVICE_ERROR = 0x08;

  private final String serialNumber;
  private final byte[] message = new byte[LONGEST_MESSAGE];
  private final Queue<String> errors = new ArrayDeque<>();
  private int length;
  private boolean overrun;
  private int eventStatus;

  QueryConversation(long serialNumber) {
    this.serialNumber = Long.toString(serialNumber);
  }

  @Override
  public byte[] hear(byte[] bytes, long nanos, Readings readings) {
    ByteArrayOutputStream answers = new ByteArrayOutputStream();
    for (byte b : bytes) {
      if (b == '\n') {
        answers.writeBytes(endMessage(readings));
      } else if (length < message.length) {
        message[length++] = b;
      } else {
        overrun = true;
      }
    }
    return answers.toByteArray();
  }

  private byte[] endMessage(Readings readings) {
    String text = new String(message, 0, length, StandardCharsets.ISO_8859_1).strip();
    boolean tooLong = overrun;
    length = 0;
    overrun = false;
    if (tooLong) {
      note(DEVICE_ERROR, "-363,\"Input buffer overrun\"");
      return new byte[0];
    }
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    for (String command : text.split(";", -1)) {
      byte[] answer = answer(command.strip().toUpperCase(Locale.ROOT), readings);
      if (line.size() > 0 && answer.length > 0) {
        byte[] before = line.toByteArray();
        line.reset();
        line.write(before, 0, before.length - 1);
        line.write(';');
      }
      line.writeBytes(answer);
    }
    return line.toByteArray();
  }

  /** One command's answer with LF, or nothing. */
  private byte[] answer(String command, Readings readings) {
    String header = command.startsWith(":") ? command.substring(1) : command;
    return switch (header) {
      case "READ?", "FETCH?", "FETC?", "MEASURE?", "MEAS?" ->
          readings.take(UnaryOperator.identity());
      case "*IDN?" -> line("Platenwire,emulated load frame," + serialNumber + ",1");
      case "*OPC?" -> line("1");
      case "*ESR?" -> {
        int status = eventStatus;
        eventStatus = 0;
        yield line(Integer.toString(status));
      }
      case "SYST:ERR?", "SYSTEM:ERROR?" ->
          line(errors.isEmpty() ? "0,\"No error\"" : errors.remove());
      case "*CLS" -> {
        errors.clear();
        eventStatus = 0;
        yield new byte[0];
      }
      case "", "*RST" -> new byte[0]; // there is nothing that could be set otherwise
      default -> {
        note(COMMAND_ERROR, "-113,\"Undefined header\"");
        yield new byte[0];
      }
    };
  }

  private void note(int bit, String error) {
    eventStatus |= bit;
    if (errors.size() < MOST_ERRORS) {
      errors.add(error);
    }
  }

  private static byte[] line(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
    byte[] line = Arrays.copyOf(bytes, bytes.length + 1);
    line[bytes.length] = '\n';
    return line;
  }
}
