package io.github.platenwire.faults;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The step at which the whole process ends without another word, as one killed with {@code kill -9}
 * does: only for processes that a test started for that. Immutable.
 *
 * @param step what is done to the disk
 * @param ending how the file's name ends
 * @param containing text that the write must hold, or the file after any other step; empty for any
 * @param writtenShare how much of a write, from that text on, still reaches the file: 0 to 1
 */
public record Death(String step, String ending, String containing, double writtenShare) {
  /** The exit code of a process that was killed. */
  public static final int EXIT_CODE = 137;

  /** How many bytes of a write still go through; -1 if this is not the write to die in. */
  int through(Path file, ByteBuffer bytes) {
    if (!isOf(DiskModel.Step.WRITE, file)) {
      return -1;
    }
    String text = StandardCharsets.ISO_8859_1.decode(bytes.duplicate()).toString();
    int at = text.indexOf(containing);
    return at < 0 ? -1 : at + (int) ((text.length() - at) * writtenShare);
  }

  /** Whether to die after a step that is no write. */
  boolean isAfter(DiskModel.Step done, Path file) throws java.io.IOException {
    return done != DiskModel.Step.WRITE
        && isOf(done, file)
        && (containing.isEmpty()
            || Files.readString(file, StandardCharsets.ISO_8859_1).contains(containing));
  }

  private boolean isOf(DiskModel.Step done, Path file) {
    return done.name().equals(step) && String.valueOf(file.getFileName()).endsWith(ending);
  }

  /** Ends the process: no lock is given back, no file closed, nothing run at the end. */
  static void now() {
    Runtime.getRuntime().halt(EXIT_CODE);
  }
}
