package io.github.platenwire.port;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the system tells about a device file: what it is, whose, and who has it open. Stateless. */
final class DeviceFile {
  private static final int TYPE_BITS = 0170000;
  private static final int CHARACTER_DEVICE = 0020000;
  private static final Path PROCESSES = Path.of("/proc");

  private DeviceFile() {}

  /** Whether bytes can come from it one after another; true where the system does not tell. */
  static boolean isCharacterDevice(Path device) {
    try {
      Object mode = Files.getAttribute(device, "unix:mode");
      return !(mode instanceof Integer bits) || (bits & TYPE_BITS) == CHARACTER_DEVICE;
    } catch (IOException | UnsupportedOperationException e) {
      return !Files.isRegularFile(device) && !Files.isDirectory(device);
    }
  }

  /** The group to join so that the device may be opened; empty if that would not help. */
  static Optional<String> helpfulGroup(Path device) {
    try {
      PosixFileAttributes attributes = Files.readAttributes(device, PosixFileAttributes.class);
      boolean open =
          attributes
              .permissions()
              .containsAll(
                  List.of(PosixFilePermission.GROUP_READ, PosixFilePermission.GROUP_WRITE));
      String group = attributes.group().getName();
      return open && !group.equals("root") ? Optional.of(group) : Optional.empty();
    } catch (IOException | UnsupportedOperationException e) {
      return Optional.empty();
    }
  }

  /** Owner, group and mode in a few words, as {@code rw-r----- root dialout}. */
  static String ownership(Path device) {
    try {
      PosixFileAttributes attributes = Files.readAttributes(device, PosixFileAttributes.class);
      return PosixFilePermissions.toString(attributes.permissions())
          + " "
          + attributes.owner().getName()
          + " "
          + attributes.group().getName();
    } catch (IOException | UnsupportedOperationException e) {
      return "unknown";
    }
  }

  /**
   * The programs that have the device open, as far as this user may see them.
   *
   * @param device real path
   */
  static List<Holder> holders(Path device) {
    List<Holder> holders = new ArrayList<>();
    try (DirectoryStream<Path> processes =
        Files.newDirectoryStream(PROCESSES, name -> isNumber(name.getFileName().toString()))) {
      for (Path process : processes) {
        if (hasOpen(process, device)) {
          holders.add(
              new Holder(Long.parseLong(process.getFileName().toString()), command(process)));
        }
      }
    } catch (IOException e) {
      return List.of();
    }
    return holders;
  }

  private static boolean isNumber(String name) {
    return name.chars().allMatch(c -> c >= '0' && c <= '9');
  }

  private static boolean hasOpen(Path process, Path device) {
    try (DirectoryStream<Path> descriptors = Files.newDirectoryStream(process.resolve("fd"))) {
      for (Path descriptor : descriptors) {
        if (Files.isSymbolicLink(descriptor) && Files.readSymbolicLink(descriptor).equals(device)) {
          return true;
        }
      }
    } catch (IOException | DirectoryIteratorException e) {
      return false;
    }
    return false;
  }

  private static String command(Path process) {
    try {
      return Files.readString(process.resolve("comm")).strip();
    } catch (IOException e) {
      return "unknown";
    }
  }

  /** Whether the path is a link to something that is not there. */
  static boolean isDanglingLink(Path path) {
    return Files.isSymbolicLink(path) && !Files.exists(path);
  }

  /** Where a link points, or the path itself. */
  static Path target(Path link) {
    try {
      return Files.readSymbolicLink(link);
    } catch (IOException | UnsupportedOperationException e) {
      return link;
    }
  }

  /**
   * A program that has a device open.
   *
   * @param processId its number
   * @param command its short name
   */
  record Holder(long processId, String command) {
    boolean isThisProgram() {
      return processId == ProcessHandle.current().pid();
    }

    /** For a person, as {@code cat (process 1234)}. */
    String words() {
      return command + " (process " + processId + ")";
    }
  }
}
