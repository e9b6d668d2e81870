package io.github.platenwire.record;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Makes small files that are whole or not there at all. Stateless. */
public final class DurableFile {
  private DurableFile() {}

  /**
   * Makes a file under a name that must not be taken: it is written and forced beside its place,
   * then moved there, then its name is forced.
   *
   * @throws FileAlreadyExistsException if there is one already
   * @throws IOException if it cannot be written; nothing stands under the name then
   */
  public static void create(Path path, byte[] bytes) throws IOException {
    if (Files.exists(path)) {
      throw new FileAlreadyExistsException(path.toString());
    }
    Path draft = path.resolveSibling(path.getFileName() + ".draft");
    Files.deleteIfExists(draft);
    try (FileChannel channel =
        FileChannel.open(draft, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      ByteBuffer buffer = ByteBuffer.wrap(bytes);
      while (buffer.hasRemaining()) {
        channel.write(buffer);
      }
      channel.force(true);
    } catch (IOException e) {
      Files.deleteIfExists(draft);
      throw e;
    }
    Files.move(draft, path);
    DiskFolder.forceFolderOf(path);
  }

  /** Makes a file's very name survive a power cut. */
  public static void forceName(Path path) throws IOException {
    DiskFolder.forceFolderOf(path);
  }
}
