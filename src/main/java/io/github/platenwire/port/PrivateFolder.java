package io.github.platenwire.port;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A folder in which nobody but this user (and the system's administrator) can put a file, for
 * native libraries that are unpacked to be loaded: whoever could put one there would run code as
 * this user. Immutable; safe for use by any thread.
 *
 * <p>On POSIX systems the folder is of mode 0700 and owned by this user, and each folder above it
 * is owned by this user or root and not writable by others, unless it is sticky as {@code /tmp} is.
 * On Windows the user's own application data folder is taken, which the system keeps private.
 */
final class PrivateFolder {
  private static final Logger LOG = LoggerFactory.getLogger(PrivateFolder.class);
  private static final boolean POSIX =
      FileSystems.getDefault().supportedFileAttributeViews().contains("unix");
  private static final int WRITABLE_BY_OTHERS = 022;
  private static final int STICKY = 01000;
  private static final int ROOT = 0;

  private final Path path;
  private final boolean removedAtEnd;

  private PrivateFolder(Path path, boolean removedAtEnd) {
    this.path = path;
    this.removedAtEnd = removedAtEnd;
  }

  /**
   * The folder in the user's own cache, or a fresh one for this run where the cache is not safe or
   * cannot be written.
   *
   * @throws IOException if neither can be had
   */
  static PrivateFolder open() throws IOException {
    Optional<Path> cache = cacheFolder();
    if (cache.isPresent()) {
      try {
        return claim(cache.get().resolve("platenwire").resolve("native"));
      } catch (IOException e) {
        LOG.debug("{} is not used for native libraries: {}", cache.get(), e.toString());
      }
    }
    Path fresh = Files.createTempDirectory("platenwire-");
    fresh.toFile().deleteOnExit();
    return new PrivateFolder(claim(fresh).path, true);
  }

  private static Optional<Path> cacheFolder() {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    if (system.startsWith("windows")) {
      return absolute(System.getenv("LOCALAPPDATA"), "");
    }
    String home = System.getProperty("user.home");
    if (system.startsWith("mac")) {
      return absolute(home, "Library/Caches");
    }
    return absolute(System.getenv("XDG_CACHE_HOME"), "").or(() -> absolute(home, ".cache"));
  }

  private static Optional<Path> absolute(@Nullable String folder, String below) {
    return Optional.ofNullable(folder)
        .filter(name -> !name.isEmpty())
        .map(name -> Path.of(name, below))
        .filter(Path::isAbsolute);
  }

  /**
   * Makes a folder private, or refuses it.
   *
   * @throws IOException if somebody else could put a file there; the message says which folder is
   *     at fault
   */
  static PrivateFolder claim(Path wanted) throws IOException {
    Files.createDirectories(wanted, ownerOnly());
    Path folder = wanted.toRealPath();
    if (POSIX) {
      int me = ownUserId(folder);
      if (userId(folder) != me) {
        throw new IOException(folder + " belongs to another user");
      }
      Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
      for (Path above = folder; above != null; above = above.getParent()) {
        checkNobodyElseMayWrite(above, me);
      }
    }
    return new PrivateFolder(folder, false);
  }

  private static FileAttribute<?>[] ownerOnly() {
    return POSIX
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------"))
        }
        : new FileAttribute<?>[0];
  }

  /** The number of the user this program runs as: the owner of what it creates. */
  private static int ownUserId(Path folder) throws IOException {
    Path probe = Files.createTempFile(folder, "owner", null);
    try {
      return userId(probe);
    } finally {
      Files.delete(probe);
    }
  }

  private static int userId(Path file) throws IOException {
    return (int) Files.getAttribute(file, "unix:uid", LinkOption.NOFOLLOW_LINKS);
  }

  private static void checkNobodyElseMayWrite(Path folder, int me) throws IOException {
    Map<String, Object> attributes =
        Files.readAttributes(folder, "unix:uid,mode", LinkOption.NOFOLLOW_LINKS);
    Object owner = attributes.get("uid");
    Object mode = attributes.get("mode");
    if (!Integer.valueOf(me).equals(owner) && !Integer.valueOf(ROOT).equals(owner)) {
      throw new IOException(folder + " belongs to another user, uid=" + owner);
    }
    boolean open = mode instanceof Integer bits && (bits & WRITABLE_BY_OTHERS) != 0;
    boolean sticky = mode instanceof Integer bits && (bits & STICKY) != 0;
    if (open && !sticky) {
      throw new IOException(folder + " can be written by other users");
    }
  }

  /** The folder itself. */
  Path path() {
    return path;
  }

  /**
   * Puts a file there, unless the very same bytes are there already.
   *
   * @param name with folders, separated by slashes
   * @return the file
   * @throws IOException if it cannot be written
   */
  Path install(String name, byte[] content) throws IOException {
    Path file = path.resolve(name);
    Path parent = Files.createDirectories(file.resolveSibling("."), ownerOnly()).normalize();
    if (removedAtEnd) {
      registerForRemoval(file);
    }
    if (!holds(file, content)) {
      Path unfinished = Files.createTempFile(parent, "unfinished", null);
      Files.write(unfinished, content);
      if (POSIX) {
        Files.setPosixFilePermissions(unfinished, PosixFilePermissions.fromString("r-x------"));
      }
      moveInPlace(unfinished, file);
    }
    return file;
  }

  private void registerForRemoval(Path file) {
    Path below = path;
    for (Path part : path.relativize(file)) {
      below = below.resolve(part);
      below.toFile().deleteOnExit();
    }
  }

  /** Replaces the name, not the content: a program that has the old file loaded keeps it. */
  private static void moveInPlace(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private static boolean holds(Path file, byte[] content) throws IOException {
    return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
        && Files.size(file) == content.length
        && Arrays.equals(Files.readAllBytes(file), content);
  }
}
