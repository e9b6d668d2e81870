package io.github.platenwire.recorder;

import io.github.platenwire.port.Chunk;

/** What a link's thread hands to the recorder thread, in order. */
sealed interface LinkEvent {
  /** Index of the source that it comes from. */
  int source();

  /** When it happened, on the monotonic clock. */
  long atNanos();

  /** Bytes came. */
  record Bytes(int source, Chunk chunk) implements LinkEvent {
    @Override
    public long atNanos() {
      return chunk.arrivalNanos();
    }
  }

  /** The link is gone. */
  record Lost(int source, long atNanos, String why) implements LinkEvent {}

  /** The link is there again. */
  record Back(int source, long atNanos) implements LinkEvent {}

  /**
   * The queue stayed full until bytes had to be dropped.
   *
   * @param source index of the source
   * @param atNanos when the first of them came
   * @param bytes how many bytes
   * @param frames how many frames ended in them, as nearly as can be told
   */
  record Dropped(int source, long atNanos, long bytes, long frames) implements LinkEvent {}
}
