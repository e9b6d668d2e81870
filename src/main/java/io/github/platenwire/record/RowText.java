package io.github.platenwire.record;

import io.github.platenwire.reading.EscapedBytes;
import io.github.platenwire.reading.Quality;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Formats rows of a raw file into a growing byte array, by hand and without allocating. Not
 * thread-safe.
 *
 * <p>Columns: {@code seq,elapsed_us,channel,received,value,quality}, RFC 4180. See {@code
 * src/docs/raw-format.md}.
 */
final class RowText {
  /** The line that names the columns. */
  static final String COLUMNS = "seq,elapsed_us,channel,received,value,quality";

  private static final byte[][] QUALITY_WORDS =
      Arrays.stream(Quality.values())
          .map(quality -> quality.word().getBytes(StandardCharsets.US_ASCII))
          .toArray(byte[][]::new);

  private static final double[] POWERS = {1, 10, 100, 1e3, 1e4, 1e5, 1e6};

  /** Below this a whole number of millionths is exact in a double and fits a long. */
  private static final double GREATEST_PLAIN = 1e9;

  private byte[] bytes = new byte[1 << 16];
  private int length;

  byte[] bytes() {
    return bytes;
  }

  int length() {
    return length;
  }

  void clear() {
    length = 0;
  }

  /** Appends one row. A NaN value gives an empty column. */
  void row(
      long seq,
      long elapsedMicros,
      byte[] channel,
      byte[] received,
      int from,
      int count,
      double value,
      Quality quality) {
    room(channel.length + 8 * count + 128);
    whole(seq);
    bytes[length++] = ',';
    whole(elapsedMicros);
    bytes[length++] = ',';
    append(channel);
    bytes[length++] = ',';
    received(received, from, count);
    bytes[length++] = ',';
    real(value);
    bytes[length++] = ',';
    append(QUALITY_WORDS[quality.ordinal()]);
    bytes[length++] = '\n';
  }

  /** Appends a line that is no row. */
  void line(String text) {
    byte[] line = text.getBytes(StandardCharsets.UTF_8);
    room(line.length + 1);
    append(line);
    bytes[length++] = '\n';
  }

  /**
   * Escaped; in quotes where a comma, a quote or a space at either end would mislead a reader of
   * CSV.
   */
  private void received(byte[] received, int from, int count) {
    int start = length;
    length = EscapedBytes.encode(received, from, count, bytes, length);
    boolean quote = length > start && (bytes[start] == ' ' || bytes[length - 1] == ' ');
    int quotes = 0;
    for (int i = start; i < length; i++) {
      quote |= bytes[i] == ',';
      if (bytes[i] == '"') {
        quotes++;
      }
    }
    if (quote || quotes > 0) {
      quote(start, quotes);
    }
  }

  private void quote(int start, int quotes) {
    int to = length + quotes + 2;
    bytes[to - 1] = '"';
    int at = to - 2;
    for (int i = length - 1; i >= start; i--) {
      byte b = bytes[i];
      bytes[at--] = b;
      if (b == '"') {
        bytes[at--] = '"';
      }
    }
    bytes[at] = '"';
    length = to;
  }

  /**
   * The shortest plain decimal of at most six places that is the very same double; else as Java
   * prints it.
   */
  private void real(double value) {
    if (Double.isNaN(value)) {
      return;
    }
    double size = Math.abs(value);
    if (size < GREATEST_PLAIN) {
      for (int places = 0; places < POWERS.length; places++) {
        double scaled = Math.rint(size * POWERS[places]);
        if (scaled / POWERS[places] == size) {
          decimal(value < 0 || (value == 0 && 1 / value < 0), (long) scaled, places);
          return;
        }
      }
    }
    append(Double.toString(value).getBytes(StandardCharsets.US_ASCII));
  }

  private void decimal(boolean negative, long scaled, int places) {
    if (negative) {
      bytes[length++] = '-';
    }
    long power = (long) POWERS[places];
    whole(scaled / power);
    if (places == 0) {
      return;
    }
    bytes[length++] = '.';
    long rest = scaled % power;
    for (int i = places - 1; i >= 0; i--) {
      bytes[length + i] = (byte) ('0' + rest % 10);
      rest /= 10;
    }
    length += places;
  }

  private void whole(long value) {
    long rest = value;
    if (rest < 0) {
      bytes[length++] = '-';
      rest = -rest;
    }
    int digits = 1;
    for (long power = 10; power <= rest && digits < 18; power *= 10) {
      digits++;
    }
    for (int i = digits - 1; i >= 0; i--) {
      bytes[length + i] = (byte) ('0' + rest % 10);
      rest /= 10;
    }
    length += digits;
  }

  private void append(byte[] text) {
    System.arraycopy(text, 0, bytes, length, text.length);
    length += text.length;
  }

  private void room(int more) {
    if (length + more > bytes.length) {
      bytes = Arrays.copyOf(bytes, Math.max(2 * bytes.length, length + more));
    }
  }
}
