package io.github.platenwire.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;

/** Keeps what was torn off a file beside it, as {@code NAME.torn}; never overwrites. Stateless. */
public final class TornFile {
  private TornFile() {}

  /**
   * Copies the tail of a file into a file of its own and forces it.
   *
   * @param raw the file it is torn off
   * @param all the file's bytes
   * @param from where the tail begins
   * @return the file; empty if there is no tail
   */
  public static Optional<Path> keepTail(Path raw, byte[] all, int from) throws IOException {
    if (from == all.length) {
      return Optional.empty();
    }
    byte[] tail = Arrays.copyOfRange(all, from, all.length);
    for (int number = 1; ; number++) {
      Path place = place(raw, number);
      if (!Files.exists(place)) {
        DurableFile.create(place, tail);
        return Optional.of(place);
      }
      if (Arrays.equals(Files.readAllBytes(place), tail)) {
        return Optional.of(place);
      }
    }
  }

  /** Moves a whole file aside. */
  static Path keepWhole(Path raw) throws IOException {
    int number = 1;
    while (Files.exists(place(raw, number))) {
      number++;
    }
    Path place = place(raw, number);
    Files.move(raw, place);
    DiskFolder.forceFolderOf(place);
    return place;
  }

  private static Path place(Path raw, int number) {
    return raw.resolveSibling(raw.getFileName() + ".torn" + (number == 1 ? "" : "-" + number));
  }
}
