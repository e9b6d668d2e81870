package io.github.platenwire.device;

/** Tells the frames of packed bytes apart from anything else. Immutable; safe for any thread. */
interface PackedFrame {
  /** What some bytes are. */
  enum Verdict {
    /** The beginning of a frame. */
    MORE,
    /** No beginning of a frame. */
    NONE,
    /** A whole frame with values. */
    VALUES,
    /** A whole frame by which the device says that it has no values. */
    REFUSAL
  }

  /** Most bytes of a frame. */
  int longest();

  /** Index of the first byte of what the fields count from. */
  int fieldsFrom();

  /** Whether other bytes hardly ever pass for a frame. */
  boolean isSure();

  /**
   * Judges the first bytes of a frame.
   *
   * @param bytes holds them from index 0
   * @param length how many, at least 1, at most {@link #longest}
   */
  Verdict judge(byte[] bytes, int length);

  /**
   * Why bytes are no frame with values.
   *
   * @param bytes what was reported as garbled
   * @return where and why
   */
  Fault fault(byte[] bytes);
}
