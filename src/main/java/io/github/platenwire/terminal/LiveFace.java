package io.github.platenwire.terminal;

/** Something that shows a running test. Failures to show anything are swallowed, never thrown. */
public sealed interface LiveFace extends AutoCloseable permits LiveScreen, PlainLines, EntryLines {
  /**
   * Shows how things stand. To be called often, and at least once for each event; may choose to
   * write nothing.
   *
   * @param frame rests only on what is already in the raw file
   */
  void show(LiveFrame frame);

  /** Shows the last frame if it was held back, and leaves the terminal as it was found. */
  @Override
  void close();
}
