package io.github.platenwire.record;

import java.io.IOException;
import java.nio.ByteBuffer;

/**
 * The few things that the recorder asks of a file, so that tests can stand in for a disk that
 * fails. {@link #force} may be called by another thread than {@link #write}; the rest is confined
 * to one thread.
 */
public interface RecordFile extends AutoCloseable {
  /**
   * Writes what the file system takes, as {@link java.nio.channels.FileChannel#write(ByteBuffer)}:
   * possibly less than all.
   *
   * @return how many bytes were taken
   */
  int write(ByteBuffer bytes) throws IOException;

  /** Makes everything written so far survive a power cut. */
  void force() throws IOException;

  /** Cuts the file to a length. */
  void truncate(long length) throws IOException;

  /** Gives the file back. */
  @Override
  void close() throws IOException;
}
