package io.github.platenwire.port;

/**
 * Told what happens on one link, in order, always by the link's own thread. It may block: then the
 * link stops reading.
 */
public interface LinkListener {
  /** Bytes came. */
  void bytes(Chunk chunk);

  /**
   * The link is gone and is being taken up again.
   *
   * @param atNanos monotonic time of the first sign
   * @param why what was seen, for a person
   */
  void lost(long atNanos, String why);

  /**
   * The link is there again; the next bytes may begin in mid-frame.
   *
   * @param atNanos monotonic time
   */
  void back(long atNanos);
}
