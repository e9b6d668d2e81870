package io.github.platenwire.device;

/**
 * One piece of a compiled layout. Immutable; all that changes while a line is matched lies in
 * {@link LineValues}.
 */
interface Step {
  /** Stands for "no end" in {@link #longest}. */
  int UNBOUNDED = 1 << 20;

  /**
   * Matches the piece.
   *
   * @param line holds the line
   * @param at index of the first byte not yet matched
   * @param end index after the line's last byte
   * @param values takes what the piece says
   * @return index of the first byte after the piece, or -1 if it is not there
   */
  int match(byte[] line, int at, int end, LineValues values);

  /** Bytes that the piece may begin with. */
  ByteSet starts();

  /** Bytes that the piece may hold after its first, leading blanks not counted. */
  ByteSet rests();

  /** Bytes that could go on a piece which might as well end before them. */
  ByteSet continues();

  /** Fewest bytes. */
  int shortest();

  /** Most bytes, or {@link #UNBOUNDED}. */
  int longest();

  /** What it is called in a message. */
  String label();
}
