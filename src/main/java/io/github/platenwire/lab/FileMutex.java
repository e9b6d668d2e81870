package io.github.platenwire.lab;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * A file that one process at a time holds. The system lets go of it when the process ends, however
 * it ends; the file itself stays. Confined to one thread at a time.
 */
final class FileMutex implements AutoCloseable {
  /**
   * The byte that is locked lies beyond anything written: on systems where locked bytes cannot be
   * read, others must still be able to read who holds it.
   */
  private static final long LOCKED_BYTE = 1L << 40;

  private final FileChannel channel;
  private final FileLock lock;

  private FileMutex(FileChannel channel, FileLock lock) {
    this.channel = channel;
    this.lock = lock;
  }

  /**
   * Takes it, if nobody has it.
   *
   * @throws IOException if the file cannot be made, or the file system knows no locks
   */
  static Optional<FileMutex> tryTake(Path file) throws IOException {
    Path folder = file.getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
    FileChannel channel =
        FileChannel.open(
            file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
    try {
      FileLock lock = channel.tryLock(LOCKED_BYTE, 1, false);
      if (lock != null) {
        return Optional.of(new FileMutex(channel, lock));
      }
    } catch (OverlappingFileLockException heldByThisProcess) {
      channel.close();
      return Optional.empty();
    } catch (IOException e) {
      channel.close();
      throw e;
    }
    channel.close();
    return Optional.empty();
  }

  /** The open file, to write into. */
  FileChannel channel() {
    return channel;
  }

  @Override
  public void close() throws IOException {
    try (channel) {
      lock.release();
    }
  }
}
