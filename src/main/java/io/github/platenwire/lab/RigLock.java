package io.github.platenwire.lab;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Keeps a second recorder off a rig: {@code locks/RIG.lock} is held by the process that records on
 * it and tells who that is. Freed by the system when that process ends in whatever way. Confined to
 * one thread at a time.
 */
public final class RigLock implements AutoCloseable {
  private final String rig;
  private final FileMutex mutex;

  private RigLock(String rig, FileMutex mutex) {
    this.rig = rig;
    this.mutex = mutex;
  }

  /** The rig that is held. */
  public String rig() {
    return rig;
  }

  /**
   * Takes a rig.
   *
   * @param lab the lab folder
   * @param rig the rig's name
   * @param holder who takes it and since when, as the next who asks shall read it
   * @throws LabException if somebody has it; the message says who
   * @throws IOException if the lock's file cannot be made
   */
  public static RigLock take(LabFolder lab, String rig, String holder)
      throws LabException, IOException {
    Path file = file(lab, rig);
    FileMutex mutex =
        FileMutex.tryTake(file)
            .orElseThrow(
                () ->
                    new LabException(
                        "rig '"
                            + rig
                            + "' is in use: "
                            + holder(file)
                            + ". One recorder at a time; wait until that test is closed, or use"
                            + " another rig"));
    RigLock lock = new RigLock(rig, mutex);
    try {
      lock.write(holder + "\n");
    } catch (IOException e) {
      mutex.close();
      throw e;
    }
    return lock;
  }

  /** Whether somebody, this process included, has a rig now. */
  public static boolean isTaken(LabFolder lab, String rig) throws IOException {
    Path file = file(lab, rig);
    if (!Files.exists(file)) {
      return false;
    }
    var mutex = FileMutex.tryTake(file);
    if (mutex.isPresent()) {
      mutex.get().close();
    }
    return mutex.isEmpty();
  }

  private static Path file(LabFolder lab, String rig) {
    return lab.root().resolve("locks").resolve(rig + ".lock");
  }

  private static String holder(Path file) {
    try {
      String text = Files.readString(file, StandardCharsets.UTF_8).strip();
      return text.isEmpty() ? "by whom is not written in " + file : text;
    } catch (IOException e) {
      return "by whom cannot be read from " + file;
    }
  }

  private void write(String text) throws IOException {
    mutex.channel().truncate(0);
    ByteBuffer bytes = StandardCharsets.UTF_8.encode(text);
    while (bytes.hasRemaining()) {
      mutex.channel().write(bytes);
    }
  }

  /** Lets go of the rig. */
  @Override
  public void close() throws IOException {
    try (mutex) {
      mutex.channel().truncate(0);
    }
  }
}
