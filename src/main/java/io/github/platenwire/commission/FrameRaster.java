package io.github.platenwire.commission;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Where frames of one length stand in a stream.
 *
 * @param length bytes of a frame
 * @param sync what each begins with, at least one byte
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record FrameRaster(int length, byte[] sync) {
  private static final int SHORTEST = 3;
  private static final int LONGEST = 128;
  private static final int FEWEST_FRAMES = 8;

  /** A byte of the raster that is the same in so many of a hundred frames belongs to the sync. */
  private static final int CONSTANT_PERCENT = 97;

  private static final int MOST_BYTES = 1 << 16;

  /** The shortest length at which a byte repeats while others change; empty if there is none. */
  static Optional<FrameRaster> find(byte[] all) {
    byte[] bytes = all.length > MOST_BYTES ? Arrays.copyOf(all, MOST_BYTES) : all;
    for (int length = SHORTEST; length <= LONGEST; length++) {
      if (bytes.length / length >= FEWEST_FRAMES) {
        Optional<FrameRaster> found = at(bytes, length);
        if (found.isPresent()) {
          return found;
        }
      }
    }
    return Optional.empty();
  }

  private static Optional<FrameRaster> at(byte[] bytes, int length) {
    int[] constant = new int[length];
    int changing = 0;
    for (int place = 0; place < length; place++) {
      constant[place] = constant(bytes, length, place);
      changing += constant[place] < 0 ? 1 : 0;
    }
    if (changing == 0 || changing == length) {
      return Optional.empty();
    }
    byte[] sync = longestRun(constant);
    boolean telling = sync.length > 1 || !isFiller(sync[0]);
    return telling ? Optional.of(new FrameRaster(length, sync)) : Optional.empty();
  }

  /** The byte that stands at a place in nearly all frames, 0 to 255, or -1. */
  private static int constant(byte[] bytes, int length, int place) {
    int[] counts = new int[256];
    int frames = 0;
    for (int i = place; i < bytes.length; i += length) {
      counts[Byte.toUnsignedInt(bytes[i])]++;
      frames++;
    }
    for (int value = 0; value < counts.length; value++) {
      if (counts[value] * 100L >= frames * (long) CONSTANT_PERCENT) {
        return value;
      }
    }
    return -1;
  }

  /**
   * The longest run of constant bytes, round the corner too, zeros at its ends left to the numbers:
   * they are more likely the high bytes of small ones.
   */
  private static byte[] longestRun(int[] constant) {
    int best = 0;
    int bestFrom = 0;
    for (int from = 0; from < constant.length; from++) {
      int before = constant[(from + constant.length - 1) % constant.length];
      int run = before >= 0 ? 0 : run(constant, from);
      if (run > best) {
        best = run;
        bestFrom = from;
      }
    }
    byte[] sync = new byte[best];
    for (int i = 0; i < best; i++) {
      sync[i] = (byte) constant[(bestFrom + i) % constant.length];
    }
    return trimmed(sync);
  }

  private static int run(int[] constant, int from) {
    int run = 0;
    while (run < constant.length && constant[(from + run) % constant.length] >= 0) {
      run++;
    }
    return run;
  }

  private static byte[] trimmed(byte[] sync) {
    int from = 0;
    int to = sync.length;
    while (to - from > 1 && isFiller(sync[to - 1])) {
      to--;
    }
    while (to - from > 1 && isFiller(sync[from])) {
      from++;
    }
    return Arrays.copyOfRange(sync, from, to);
  }

  private static boolean isFiller(byte b) {
    return b == 0 || b == -1;
  }

  /** The frames of a stream, found by their sync; those that are torn are left out. */
  List<byte[]> frames(byte[] bytes) {
    List<byte[]> frames = new ArrayList<>();
    int at = 0;
    while (at + length <= bytes.length) {
      if (Arrays.equals(bytes, at, at + sync.length, sync, 0, sync.length)) {
        frames.add(Arrays.copyOfRange(bytes, at, at + length));
        at += length;
      } else {
        at++;
      }
    }
    return frames;
  }
}
