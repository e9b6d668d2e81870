package io.github.platenwire.record;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Record files on a real disk. The folder is forced after a file is made in it: without that a
 * power cut can lose a file's very name. A small reserve file lies beside the records, to be
 * deleted when the disk is full.
 */
public final class DiskFolder implements RecordFolder {
  private static final Logger LOG = LoggerFactory.getLogger(DiskFolder.class);
  private static final String RESERVE = ".reserve";

  /**
   * Enough for an event row, a check line and the last line many times over, in whole blocks of any
   * usual file system.
   */
  private static final int RESERVE_BYTES = 64 * 1024;

  @Override
  public RecordFile create(Path path) throws IOException {
    keepReserve(path.resolveSibling(RESERVE));
    FileChannel channel =
        FileChannel.open(path, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    try {
      forceFolderOf(path);
    } catch (IOException e) {
      channel.close();
      throw e;
    }
    return new DiskFile(channel);
  }

  @Override
  public RecordFile reopen(Path path, long length) throws IOException {
    FileChannel channel = FileChannel.open(path, StandardOpenOption.WRITE);
    try {
      channel.truncate(length);
      channel.position(length);
      channel.force(true);
    } catch (IOException e) {
      channel.close();
      throw e;
    }
    return new DiskFile(channel);
  }

  @Override
  public boolean freeReserve(Path beside) {
    try {
      return Files.deleteIfExists(beside.resolveSibling(RESERVE));
    } catch (IOException e) {
      LOG.warn("the reserve beside {} could not be freed", beside, e);
      return false;
    }
  }

  private static void keepReserve(Path reserve) {
    if (Files.exists(reserve)) {
      return;
    }
    try {
      Files.write(reserve, new byte[RESERVE_BYTES], StandardOpenOption.CREATE_NEW);
    } catch (IOException e) {
      LOG.warn("no reserve could be kept at {}", reserve, e);
    }
  }

  /**
   * Forces the entries of the folder that a file lies in; on Windows a folder cannot be opened so,
   * and need not be.
   */
  static void forceFolderOf(Path file) throws IOException {
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null && folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
        channel.force(true);
      }
    }
  }

  private record DiskFile(FileChannel channel) implements RecordFile {
    @Override
    public int write(ByteBuffer bytes) throws IOException {
      return channel.write(bytes);
    }

    @Override
    public void force() throws IOException {
      channel.force(false);
    }

    @Override
    public void truncate(long length) throws IOException {
      channel.truncate(length);
    }

    @Override
    public void close() throws IOException {
      channel.close();
    }
  }
}
