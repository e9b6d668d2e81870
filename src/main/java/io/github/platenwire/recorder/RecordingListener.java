package io.github.platenwire.recorder;

/**
 * Told how a recording goes, on the recorder thread, always after the readings in question are in
 * the file. It must be quick; if it throws, that is logged and the recording goes on.
 */
@FunctionalInterface
public interface RecordingListener {
  /** Something was written. */
  void written(Progress progress);
}
