package io.github.platenwire.cli;

/** What {@code listen} shows while it goes on. */
enum ListenShow {
  /** The bytes in hexadecimal and as text, and readings if a definition is there. */
  BYTES,
  /** The readings, each with the frame that it came from. */
  READINGS,
  /** Nothing: a program reads the summary. */
  NOTHING
}
