package io.github.platenwire.bench;

import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;

/**
 * Lines of an emulated load indicator, made before anything is timed: a load that rises slowly from
 * zero to 8 kN with some noise, so that no test ends by itself.
 */
final class LoadLines {
  /** {@code +0123.45 kN}, CR, LF. */
  static final int LINE_BYTES = 13;

  private static final int HIGHEST_COUNTS = 800;
  private static final int NOISE_COUNTS = 3;
  private static final int DIGITS = 6;

  private LoadLines() {}

  /** So many lines; another seed, another noise. */
  static byte[] of(int lines, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    byte[] bytes = new byte[lines * LINE_BYTES];
    byte[] form = "+0000.00 kN\r\n".getBytes(StandardCharsets.US_ASCII);
    for (int i = 0; i < lines; i++) {
      int counts = (int) ((long) i * HIGHEST_COUNTS / lines) + random.nextInt(NOISE_COUNTS);
      put(form, counts);
      System.arraycopy(form, 0, bytes, i * LINE_BYTES, LINE_BYTES);
    }
    return bytes;
  }

  /** The line of a load at rest. */
  static byte[] atRest() {
    return "+0000.00 kN\r\n".getBytes(StandardCharsets.US_ASCII);
  }

  private static void put(byte[] form, int counts) {
    int left = counts;
    int at = DIGITS + 1;
    for (int digit = 0; digit < DIGITS; digit++, at--) {
      if (form[at] == '.') {
        at--;
      }
      form[at] = (byte) ('0' + left % 10);
      left /= 10;
    }
  }
}
