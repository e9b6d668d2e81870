package io.github.platenwire.record;

import java.io.IOException;
import java.nio.file.Path;

/**
 * Makes files for records, so that tests can stand in for a disk that fails. Confined to one thread
 * at a time.
 */
public interface RecordFolder {
  /**
   * Makes a new file and sees to it that its very name survives a power cut.
   *
   * @throws java.nio.file.FileAlreadyExistsException if there is one; a record is never overwritten
   * @throws IOException for any other failure
   */
  RecordFile create(Path path) throws IOException;

  /**
   * Opens a file that an interrupted program left behind, cuts it to a length and writes on from
   * there.
   *
   * @param length how much of it is kept, in bytes
   * @throws IOException if there is none, or it cannot be opened or cut
   */
  RecordFile reopen(Path path, long length) throws IOException;

  /**
   * Gives up a little space kept in reserve, so that a full disk can still take the fact that it is
   * full.
   *
   * @return whether there was any
   */
  boolean freeReserve(Path beside);
}
