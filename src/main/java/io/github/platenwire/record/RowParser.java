package io.github.platenwire.record;

import io.github.platenwire.reading.Quality;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Reads rows of the plain kind in place: no quotes, no escapes, nothing wrong. Whatever is not of
 * that kind it leaves to a reader that can say what is wrong with it. Keeps the names of channels,
 * so that equal names are the same text. Not thread-safe.
 */
final class RowParser {
  /** Powers of ten that a double holds exactly (IEEE 754 binary64). */
  private static final double[] POWERS = new double[23];

  /** Whole numbers up to here are exact in a double. */
  private static final long GREATEST_EXACT = 1L << 53;

  private static final int MOST_DIGITS = 18;

  static {
    for (int i = 0; i < POWERS.length; i++) {
      POWERS[i] = Double.parseDouble("1e" + i);
    }
  }

  @SuppressWarnings("ArrayRecordComponent") // never handed out, compared byte by byte
  private record Known(byte[] bytes, String name) {}

  private final List<Known> channels = new ArrayList<>();
  private int lastChannel;
  private byte[] bytes = {};
  private int at;
  private int end;
  private boolean plain;

  /**
   * The row, if it is of the plain kind and has the number that it should have.
   *
   * @param seq the number that it should have
   * @param line its line in the file
   */
  @Nullable RawRow parse(byte[] buffer, int from, int to, long seq, long line) {
    bytes = buffer;
    at = from;
    end = to;
    plain = true;
    boolean inPlace = whole() == seq;
    long micros = whole();
    if (!plain || !inPlace) {
      return null;
    }
    String channel = channel();
    byte[] received = received();
    double value = value();
    Quality quality = quality();
    return plain && quality != null
        ? new RawRow(seq, micros, channel, received, value, quality, line)
        : null;
  }

  /** A whole number and the comma after it. */
  private long whole() {
    int first = at;
    long number = 0;
    while (at < end && bytes[at] != ',') {
      int digit = bytes[at++] - '0';
      plain &= digit >= 0 && digit <= 9;
      number = 10 * number + digit;
    }
    int digits = at - first;
    plain &= digits > 0 && digits <= MOST_DIGITS;
    comma();
    return number;
  }

  private void comma() {
    plain &= at < end;
    at++;
  }

  private String channel() {
    int first = at;
    skipToComma();
    int length = at - first;
    comma();
    for (int i = 0; i < channels.size(); i++) {
      int index = (lastChannel + i) % channels.size();
      byte[] known = channels.get(index).bytes();
      if (known.length == length && Arrays.equals(bytes, first, first + length, known, 0, length)) {
        lastChannel = index;
        return channels.get(index).name();
      }
    }
    return newChannel(Arrays.copyOfRange(bytes, first, first + length));
  }

  private String newChannel(byte[] name) {
    for (byte b : name) {
      plain &= b > ' ' && b <= '~' && b != '"';
    }
    String text = new String(name, StandardCharsets.US_ASCII);
    if (plain) {
      channels.add(new Known(name, text));
    }
    return text;
  }

  private void skipToComma() {
    while (at < end && bytes[at] != ',') {
      at++;
    }
  }

  private byte[] received() {
    int first = at;
    while (at < end && bytes[at] != ',') {
      byte b = bytes[at++];
      plain &= b >= ' ' && b <= '~' && b != '"' && b != '#' && b != '\\';
    }
    int length = Math.min(at, end) - Math.min(first, end);
    comma();
    return plain ? Arrays.copyOfRange(bytes, first, first + length) : new byte[0];
  }

  /** A decimal that is exact as one whole number over one power of ten; else not plain. */
  private double value() {
    if (at < end && bytes[at] == ',') {
      at++;
      return Double.NaN;
    }
    boolean negative = at < end && bytes[at] == '-';
    at += negative ? 1 : 0;
    long digits = 0;
    int count = 0;
    int places = -1;
    while (at < end && bytes[at] != ',') {
      byte b = bytes[at++];
      if (b == '.' && places < 0 && count > 0) {
        places = 0;
        continue;
      }
      plain &= b >= '0' && b <= '9';
      digits = 10 * digits + (b - '0');
      count++;
      places += places < 0 ? 0 : 1;
    }
    plain &= count > 0 && count <= MOST_DIGITS && digits < GREATEST_EXACT && places != 0;
    comma();
    if (!plain) {
      return Double.NaN;
    }
    double size = digits / POWERS[Math.max(0, places)];
    return negative ? -size : size;
  }

  private @Nullable Quality quality() {
    if (end - at == 2 && bytes[at] == 'o' && bytes[at + 1] == 'k') {
      return Quality.OK;
    }
    return at > end
        ? null
        : Quality.ofWord(new String(bytes, at, end - at, StandardCharsets.US_ASCII)).orElse(null);
  }
}
