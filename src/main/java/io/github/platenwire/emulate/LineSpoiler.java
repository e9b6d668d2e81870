package io.github.platenwire.emulate;

import java.util.Random;

/**
 * Damages lines, always leaving the terminator whole and making no new one, so that what was sent
 * can be counted. Not thread-safe.
 */
final class LineSpoiler {
  private static final int LONGEST_GARBAGE = 12;

  private final Random random;
  private final String terminator;

  LineSpoiler(Random random, String terminator) {
    this.random = random;
    this.terminator = terminator;
  }

  /** The line with one to twelve stray bytes in front. */
  byte[] withGarbage(byte[] line) {
    int stray = 1 + random.nextInt(LONGEST_GARBAGE);
    byte[] spoilt = new byte[stray + line.length];
    for (int i = 0; i < stray; i++) {
      do {
        spoilt[i] = (byte) random.nextInt(256);
      } while (isTerminator(spoilt[i]));
    }
    System.arraycopy(line, 0, spoilt, stray, line.length);
    return spoilt;
  }

  /** The line without a run of its bytes; at least one is lost and one stays. */
  byte[] torn(byte[] line) {
    int body = line.length - terminator.length();
    int from = random.nextInt(body);
    int lost = Math.min(body - 1, 1 + random.nextInt(body - from));
    byte[] spoilt = new byte[line.length - lost];
    System.arraycopy(line, 0, spoilt, 0, from);
    System.arraycopy(line, from + lost, spoilt, from, line.length - from - lost);
    return spoilt;
  }

  /** The line with one bit flipped. */
  byte[] flipped(byte[] line) {
    byte[] spoilt = line.clone();
    int at = random.nextInt(line.length - terminator.length());
    do {
      spoilt[at] = (byte) (line[at] ^ (1 << random.nextInt(8)));
    } while (isTerminator(spoilt[at]));
    return spoilt;
  }

  private boolean isTerminator(byte value) {
    return terminator.indexOf(value) >= 0;
  }
}
