package io.github.platenwire.commission;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A number that may stand in a frame.
 *
 * @param at index of its first byte
 * @param isFloat whether it is an IEEE 754 float, else a signed whole number
 * @param order as a definition writes it
 */
record PackedGuess(int at, boolean isFloat, String order) {
  private static final List<String> FOUR = List.of("ABCD", "DCBA", "CDAB", "BADC");
  private static final List<String> TWO = List.of("AB", "BA");

  /** How far a number may jump from frame to frame, in its whole range, and be a reading. */
  private static final double SMOOTH = 0.05;

  private static final int FEWEST_VALUES = 3;

  /** Which bytes it is, for a person. */
  String words() {
    return "bytes " + at + " to " + (at + order.length() - 1);
  }

  /** The numbers between two places, each byte used once, the smoothest of each place. */
  static List<PackedGuess> find(List<byte[]> frames, int from, int to) {
    List<PackedGuess> found = new ArrayList<>();
    int at = from;
    while (at < to) {
      PackedGuess best = best(frames, at, to);
      if (best == null) {
        at++;
      } else {
        found.add(best);
        at += best.order.length();
      }
    }
    return found;
  }

  private static @Nullable PackedGuess best(List<byte[]> frames, int at, int to) {
    List<PackedGuess> candidates = new ArrayList<>();
    if (at + 4 <= to) {
      FOUR.forEach(order -> candidates.add(new PackedGuess(at, true, order)));
      FOUR.forEach(order -> candidates.add(new PackedGuess(at, false, order)));
    }
    if (at + 2 <= to) {
      TWO.forEach(order -> candidates.add(new PackedGuess(at, false, order)));
    }
    PackedGuess best = null;
    // a smooth pair of bytes with many values is a number by itself, whatever follows it
    boolean pair =
        at + 2 <= to
            && TWO.stream().map(o -> new PackedGuess(at, false, o)).anyMatch(g -> g.isRich(frames));
    double least = SMOOTH;
    for (PackedGuess candidate : candidates) {
      double roughness = candidate.roughness(frames);
      boolean tooWide = pair && !candidate.isFloat && candidate.order.length() > 2;
      if (!tooWide && roughness < least) {
        least = roughness;
        best = candidate;
      }
    }
    return best;
  }

  /** Whether more than half of the frames have a value of their own, and these run smoothly. */
  private boolean isRich(List<byte[]> frames) {
    long values = frames.stream().mapToDouble(this::value).distinct().count();
    return values * 2 > frames.size() && roughness(frames) < SMOOTH;
  }

  /** Mean step from frame to frame by the range of all values; 1 if it cannot be a reading. */
  private double roughness(List<byte[]> frames) {
    List<Double> values = new ArrayList<>();
    for (byte[] frame : frames) {
      double value = value(frame);
      boolean odd = !Double.isFinite(value) || (isFloat && value != 0 && !isUsual(value));
      if (odd) {
        return 1;
      }
      values.add(value);
    }
    double span = Collections.max(values) - Collections.min(values);
    if (values.stream().distinct().count() < FEWEST_VALUES) {
      return 1;
    }
    double steps = 0;
    for (int i = 1; i < values.size(); i++) {
      steps += Math.abs(values.get(i) - values.get(i - 1));
    }
    return steps / (values.size() - 1) / span;
  }

  private static boolean isUsual(double value) {
    return Math.abs(value) > 1e-9 && Math.abs(value) < 1e9;
  }

  private double value(byte[] frame) {
    byte[] sorted = new byte[order.length()];
    for (int i = 0; i < sorted.length; i++) {
      sorted[order.charAt(i) - 'A'] = frame[at + i];
    }
    ByteBuffer high = ByteBuffer.wrap(sorted);
    return sorted.length == 2 ? high.getShort() : isFloat ? high.getFloat() : high.getInt();
  }
}
