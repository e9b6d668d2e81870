package io.github.platenwire.emulate;

import com.sun.jna.Library;
import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Platform;
import com.sun.jna.Pointer;
import java.io.IOException;

/**
 * The parts of the C library that a pseudo-terminal needs, by their C names, and the constants of
 * {@code fcntl.h}, {@code poll.h}, {@code errno.h} and {@code sys/ioctl.h} on Linux and macOS (from
 * memory). Safe for use by any thread.
 */
interface CLibrary extends Library {
  int READ_WRITE = 2;
  int NOT_CONTROLLING = Platform.isMac() ? 0x20000 : 0x100;
  int CLOSED_IN_CHILDREN = Platform.isMac() ? 0x1000000 : 0x80000;
  int NON_BLOCKING = Platform.isMac() ? 0x4 : 0x800;
  int SET_STATUS_FLAGS = 4;
  int SET_DESCRIPTOR_FLAGS = 2;
  int CLOSE_ON_EXEC = 1;
  long BYTES_TO_READ = Platform.isMac() ? 0x4004667fL : 0x541BL;
  int TRY_AGAIN = Platform.isMac() ? 35 : 11;
  int INTERRUPTED = 4;
  short READABLE = 1;
  short WRITABLE = 4;
  short HUNG_UP = 0x10;

  int posix_openpt(int flags);

  int grantpt(int fd);

  int unlockpt(int fd);

  int ptsname_r(int fd, byte[] name, NativeLong size);

  int open(String path, int flags, Object... more);

  int close(int fd);

  NativeLong read(int fd, Pointer buffer, NativeLong count);

  NativeLong write(int fd, Pointer buffer, NativeLong count);

  int tcgetattr(int fd, Pointer settings);

  void cfmakeraw(Pointer settings);

  int tcsetattr(int fd, int when, Pointer settings);

  int fcntl(int fd, int command, Object... more);

  int ioctl(int fd, NativeLong request, Object... more);

  int poll(Pointer descriptors, NativeLong count, int timeoutMillis);

  String strerror(int code);

  /** The library, loaded at the first call; JNA must have been prepared. */
  static CLibrary get() {
    return Loaded.C;
  }

  /**
   * The library, loaded at the first call.
   *
   * @throws IOException if it cannot be loaded, with what to do
   */
  static CLibrary loaded() throws IOException {
    try {
      return get();
    } catch (LinkageError e) {
      throw new IOException(
          "pseudo-terminals cannot be had: native code cannot be loaded. If your cache folder is"
              + " on a file system mounted noexec, set the environment variable XDG_CACHE_HOME to"
              + " a folder of your own on another one",
          e);
    }
  }

  /** What the latest call of this thread that failed has to say. */
  static IOException error(String what) {
    return new IOException(what + ": " + get().strerror(Native.getLastError()));
  }

  /** The result of a call, unless it says that the call failed. */
  static int checked(int result, String what) throws IOException {
    if (result < 0) {
      throw error(what);
    }
    return result;
  }

  /** Every byte passes as it is: no echo, no line editing, no changed line ends. */
  static void makeRaw(int fd) throws IOException {
    try (Memory settings = new Memory(256)) {
      checked(get().tcgetattr(fd, settings), "tcgetattr");
      get().cfmakeraw(settings);
      checked(get().tcsetattr(fd, 0, settings), "tcsetattr");
    }
  }

  /** What happened to a descriptor within a time: bits of {@code poll.h}. */
  static int events(int fd, short wanted, int timeoutMillis) {
    try (Memory entry = new Memory(8)) {
      entry.setInt(0, fd);
      entry.setShort(4, wanted);
      entry.setShort(6, (short) 0);
      int ready = get().poll(entry, new NativeLong(1), timeoutMillis);
      return ready > 0 ? entry.getShort(6) : 0;
    }
  }

  /** Holds the library, so that it is not loaded before it is asked for. */
  final class Loaded {
    private static final CLibrary C = Native.load("c", CLibrary.class);

    private Loaded() {}
  }
}
