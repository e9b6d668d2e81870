package io.github.platenwire.emulate;

/**
 * What goes wrong between an emulated indicator and whoever listens. Shares are chances for each
 * reading, 0 to 1; a reading suffers at most one of glitch, garbage, tear and flip. Immutable.
 *
 * @param glitchShare a wild value in a whole line, at least a fifth of the capacity away from the
 *     truth; never twice running
 * @param garbageShare one to twelve stray bytes in front of the line
 * @param tornShare a run of bytes of the line is lost; the terminator still comes
 * @param flippedShare one bit of the line is flipped; the terminator stays whole
 * @param silenceShare the device falls silent at this reading
 * @param silenceSeconds how long a silence lasts, 0 to 3600
 */
public record Faults(
    double glitchShare,
    double garbageShare,
    double tornShare,
    double flippedShare,
    double silenceShare,
    double silenceSeconds) {
  /** Nothing goes wrong. */
  public static final Faults NONE = new Faults(0, 0, 0, 0, 0, 0);

  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException if a share is out of range, or those of one line exceed 1
   *     together
   */
  public Faults {
    Ranges.within("glitchShare", glitchShare, 0, 1);
    Ranges.within("garbageShare", garbageShare, 0, 1);
    Ranges.within("tornShare", tornShare, 0, 1);
    Ranges.within("flippedShare", flippedShare, 0, 1);
    Ranges.within("silenceShare", silenceShare, 0, 1);
    Ranges.within("silenceSeconds", silenceSeconds, 0, 3600);
    Ranges.within("sum of the shares", glitchShare + garbageShare + tornShare + flippedShare, 0, 1);
  }

  /** What can happen to one reading that is sent. */
  enum Kind {
    NONE,
    GLITCH,
    GARBAGE,
    TORN,
    FLIPPED
  }

  /** What a number drawn evenly from 0 to 1 makes happen. */
  Kind kind(double drawn) {
    double limit = glitchShare;
    if (drawn < limit) {
      return Kind.GLITCH;
    }
    limit += garbageShare;
    if (drawn < limit) {
      return Kind.GARBAGE;
    }
    limit += tornShare;
    if (drawn < limit) {
      return Kind.TORN;
    }
    limit += flippedShare;
    return drawn < limit ? Kind.FLIPPED : Kind.NONE;
  }

  /** The same with wild values. */
  public Faults withGlitches(double share) {
    return new Faults(share, garbageShare, tornShare, flippedShare, silenceShare, silenceSeconds);
  }

  /** The same with stray bytes. */
  public Faults withGarbage(double share) {
    return new Faults(glitchShare, share, tornShare, flippedShare, silenceShare, silenceSeconds);
  }

  /** The same with torn lines. */
  public Faults withTornLines(double share) {
    return new Faults(glitchShare, garbageShare, share, flippedShare, silenceShare, silenceSeconds);
  }

  /** The same with flipped bits. */
  public Faults withFlippedBits(double share) {
    return new Faults(glitchShare, garbageShare, tornShare, share, silenceShare, silenceSeconds);
  }

  /** The same with silences. */
  public Faults withSilences(double share, double seconds) {
    return new Faults(glitchShare, garbageShare, tornShare, flippedShare, share, seconds);
  }
}
