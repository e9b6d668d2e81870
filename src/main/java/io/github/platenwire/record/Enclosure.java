package io.github.platenwire.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * A file kept beside a record, mostly a photograph of the broken specimen. Immutable.
 *
 * @param file its name beside the raw file, without folder
 * @param sha256 its SHA-256, 64 hex digits
 * @param cameFrom the name of the file that was copied
 */
public record Enclosure(String file, String sha256, String cameFrom) {
  private static final String RAW = ".raw.csv";
  private static final String KEPT = "[0-9]{1,9}(\\.[a-z0-9]{1,5})?";

  /** Larger than any photograph; what is larger was most likely named by mistake. */
  private static final long MOST_BYTES = 100_000_000;

  /**
   * Copies a file beside a record, under the record's own name with a number.
   *
   * @param raw the record's raw file
   * @param source the file to be kept; it stays where it is
   * @throws IOException if it cannot be read or written, or is too large; the message says so
   */
  public static Enclosure keep(Path raw, Path source) throws IOException {
    if (!Files.isRegularFile(source)) {
      throw new IOException("there is no file " + source);
    }
    if (Files.size(source) > MOST_BYTES) {
      throw new IOException(
          source + " is larger than 100 MB; make a smaller copy of it and keep that");
    }
    byte[] bytes = Files.readAllBytes(source);
    Path kept = freePlace(raw, ending(source));
    DurableFile.create(kept, bytes);
    return new Enclosure(
        String.valueOf(kept.getFileName()),
        Digests.sha256Hex(bytes),
        String.valueOf(source.getFileName()));
  }

  private static Path freePlace(Path raw, String ending) {
    String name = String.valueOf(raw.getFileName());
    String stem = name.substring(0, name.length() - RAW.length());
    int number = 1;
    while (isTaken(raw, stem + ".enclosure-" + number)) {
      number++;
    }
    return raw.resolveSibling(stem + ".enclosure-" + number + ending);
  }

  /** Whether a number is taken, with whatever ending. */
  private static boolean isTaken(Path raw, String name) {
    Path folder = raw.toAbsolutePath().getParent();
    String[] names = folder == null ? null : folder.toFile().list();
    if (names == null) {
      return false;
    }
    for (String there : names) {
      if (there.startsWith(name + ".") || there.equals(name)) {
        return true;
      }
    }
    return false;
  }

  /** Its ending with the dot, in small letters; none if it is not plain. */
  private static String ending(Path source) {
    String name = String.valueOf(source.getFileName()).toLowerCase(Locale.ROOT);
    int dot = name.lastIndexOf('.');
    String ending = dot < 0 ? "" : name.substring(dot);
    return ending.matches("\\.[a-z0-9]{1,5}") ? ending : "";
  }

  /** Whether its name is that of a picture, such as a camera writes. */
  public boolean isPicture() {
    return file.matches(".*\\.(jpe?g|png|gif|bmp|tiff?|heic|webp)");
  }

  /**
   * Whether the name is one that {@link #keep} gives: a plain file name, beside the record and
   * after it. Nothing else may be opened because a summary names it.
   *
   * @param raw the record's raw file
   */
  public boolean isBeside(Path raw) {
    String name = String.valueOf(raw.getFileName());
    String stem = name.endsWith(RAW) ? name.substring(0, name.length() - RAW.length()) : name;
    String start = stem + ".enclosure-";
    return file.startsWith(start) && file.substring(start.length()).matches(KEPT);
  }
}
