package io.github.platenwire.recorder;

import java.util.Optional;

/** A test that is being recorded. Safe for any thread. */
public interface Recording {
  /** Ends the test in order, with reason {@code operator}. Returns at once; may be called again. */
  void stop();

  /** Puts a note into the record as an event. */
  void note(String words);

  /** How it stands, if anything was written yet. */
  Optional<Progress> progress();

  /** Waits until the record is closed. */
  RecordedTest await();
}
