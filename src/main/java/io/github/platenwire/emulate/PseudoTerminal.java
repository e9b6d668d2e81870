package io.github.platenwire.emulate;

import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Platform;
import com.sun.jna.ptr.IntByReference;
import io.github.platenwire.port.NativeLibraries;
import io.github.platenwire.reading.SystemClocks;
import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Lock;
import java.util.concurrent.locks.LockSupport;
import java.util.concurrent.locks.ReadWriteLock;
import java.util.concurrent.locks.ReentrantReadWriteLock;

/**
 * A serial line without hardware: what is written here comes out of the port at {@link #path}, and
 * the other way round. Linux and macOS only.
 *
 * <p>{@link #open} keeps the port's side open itself: bytes written before anybody opens the port
 * are kept, and a reader that closes the port does not hang the line up. {@link #openAlone} does
 * not: then the line is hung up as soon as the last reader has gone.
 *
 * <p>The line has back-pressure and holds some kilobytes: it never loses bytes by itself. But what
 * has not been read when this end is closed is lost, so wait with {@link #awaitRead} first. One
 * thread may write and another read; any thread may close.
 */
public final class PseudoTerminal implements AutoCloseable {
  private static final int BUFFER_BYTES = 1 << 14;
  private static final int SLICE_MILLIS = 100;
  private static final int NONE = -1;

  private final int controller;
  private final int portSide;
  private final String path;
  private final Memory outgoing = new Memory(BUFFER_BYTES);
  private final Memory incoming = new Memory(BUFFER_BYTES);
  private final ReadWriteLock descriptors = new ReentrantReadWriteLock();
  private volatile boolean closed;

  private PseudoTerminal(int controller, int portSide, String path) {
    this.controller = controller;
    this.portSide = portSide;
    this.path = path;
  }

  /**
   * Opens a line and keeps its port's side open.
   *
   * @throws IOException if the system gives none
   */
  public static PseudoTerminal open() throws IOException {
    return open(/* keptOpen= */ true);
  }

  /**
   * Opens a line whose port's side is open only while somebody else has it open.
   *
   * @throws IOException if the system gives none
   */
  public static PseudoTerminal openAlone() throws IOException {
    return open(/* keptOpen= */ false);
  }

  private static PseudoTerminal open(boolean keptOpen) throws IOException {
    if (!Platform.isLinux() && !Platform.isMac()) {
      throw new IOException("pseudo-terminals exist on Linux and macOS only");
    }
    NativeLibraries.prepareJna();
    int controller =
        CLibrary.checked(
            CLibrary.loaded().posix_openpt(CLibrary.READ_WRITE | CLibrary.NOT_CONTROLLING),
            "posix_openpt");
    int portSide = NONE;
    try {
      CLibrary.checked(
          CLibrary.get().fcntl(controller, CLibrary.SET_DESCRIPTOR_FLAGS, CLibrary.CLOSE_ON_EXEC),
          "fcntl");
      CLibrary.checked(
          CLibrary.get()
              .fcntl(
                  controller,
                  CLibrary.SET_STATUS_FLAGS,
                  CLibrary.READ_WRITE | CLibrary.NON_BLOCKING),
          "fcntl");
      CLibrary.checked(CLibrary.get().grantpt(controller), "grantpt");
      CLibrary.checked(CLibrary.get().unlockpt(controller), "unlockpt");
      String path = nameOf(controller);
      portSide =
          CLibrary.checked(
              CLibrary.get()
                  .open(
                      path,
                      CLibrary.READ_WRITE | CLibrary.NOT_CONTROLLING | CLibrary.CLOSED_IN_CHILDREN),
              "open " + path);
      CLibrary.makeRaw(portSide);
      if (!keptOpen) {
        CLibrary.get().close(portSide);
      }
      return new PseudoTerminal(controller, keptOpen ? portSide : NONE, path);
    } catch (IOException e) {
      closeDescriptor(portSide);
      closeDescriptor(controller);
      throw e;
    }
  }

  private static String nameOf(int controller) throws IOException {
    byte[] name = new byte[128];
    int error = CLibrary.get().ptsname_r(controller, name, new NativeLong(name.length));
    if (error != 0) {
      throw new IOException("ptsname_r: " + CLibrary.get().strerror(error));
    }
    return Native.toString(name, "US-ASCII");
  }

  private static void closeDescriptor(int fd) {
    if (fd != NONE) {
      CLibrary.get().close(fd);
    }
  }

  /** The port's path, as {@code /dev/pts/5}. */
  public String path() {
    return path;
  }

  /**
   * Writes bytes, all of them; waits while the line is full.
   *
   * @param bytes holds them
   * @param from index of the first
   * @param length how many
   * @throws IOException if the line is or gets closed; some may have been written
   */
  public void write(byte[] bytes, int from, int length) throws IOException {
    int done = 0;
    while (done < length) {
      int taken = tryWrite(bytes, from + done, length - done);
      done += taken;
      if (taken == 0) {
        guarded(() -> CLibrary.events(controller, CLibrary.WRITABLE, SLICE_MILLIS));
      }
    }
  }

  /**
   * Writes as many bytes as the line takes now.
   *
   * @param bytes holds them
   * @param from index of the first
   * @param length how many
   * @return how many were taken, 0 to {@code length}
   * @throws IOException if the line is closed
   */
  public int tryWrite(byte[] bytes, int from, int length) throws IOException {
    return guarded(
        () -> {
          int count = Math.min(length, BUFFER_BYTES);
          outgoing.write(0, bytes, from, count);
          return transferred(
              CLibrary.get().write(controller, outgoing, new NativeLong(count)).intValue(),
              "write");
        });
  }

  /**
   * Waits up to 0.1 s for bytes from the other side.
   *
   * @param buffer takes them
   * @return how many came; 0 if none; -1 if nobody has the port open, which only happens after
   *     {@link #openAlone}
   * @throws IOException if the line is closed
   */
  public int read(byte[] buffer) throws IOException {
    return guarded(
        () -> {
          int seen = CLibrary.events(controller, CLibrary.READABLE, SLICE_MILLIS);
          if ((seen & CLibrary.READABLE) == 0) {
            return (seen & CLibrary.HUNG_UP) != 0 ? -1 : 0;
          }
          int count = Math.min(buffer.length, BUFFER_BYTES);
          int got =
              transferred(
                  CLibrary.get().read(controller, incoming, new NativeLong(count)).intValue(),
                  "read");
          incoming.read(0, buffer, 0, got);
          return got;
        });
  }

  private static int transferred(int result, String what) throws IOException {
    if (result >= 0) {
      return result;
    }
    int error = Native.getLastError();
    if (error == CLibrary.TRY_AGAIN || error == CLibrary.INTERRUPTED) {
      return 0;
    }
    throw new IOException(what + ": " + CLibrary.get().strerror(error));
  }

  /**
   * How many written bytes the other side could read now but has not; more may be on their way
   * behind these. 0 means that everything was read.
   *
   * @throws IllegalStateException after {@link #openAlone}, where it cannot be told
   * @throws IOException if the line is closed
   */
  public int pending() throws IOException {
    if (portSide == NONE) {
      throw new IllegalStateException("cannot be told unless the port's side is kept open");
    }
    return guarded(
        () -> {
          // the poll first moves bytes that are still on their way into the port's queue
          if ((CLibrary.events(portSide, CLibrary.READABLE, 0) & CLibrary.READABLE) == 0) {
            return 0;
          }
          IntByReference count = new IntByReference();
          CLibrary.checked(
              CLibrary.get().ioctl(portSide, new NativeLong(CLibrary.BYTES_TO_READ), count),
              "ioctl FIONREAD");
          return Math.max(1, count.getValue());
        });
  }

  /**
   * Waits until the other side has read everything that was written. The system gives no notice of
   * that, so it is asked each 0.2 ms.
   *
   * @param limit longest wait, in real time
   * @return whether everything was read
   * @throws IOException if the line is closed
   */
  public boolean awaitRead(Duration limit) throws IOException {
    long endNanos = SystemClocks.monotonic().nanos() + limit.toNanos();
    while (pending() > 0) {
      if (SystemClocks.monotonic().nanos() - endNanos >= 0) {
        return false;
      }
      LockSupport.parkNanos(TimeUnit.MICROSECONDS.toNanos(200));
    }
    return true;
  }

  /** Does something with the descriptors while nobody can close them. */
  private int guarded(Work work) throws IOException {
    Lock lock = descriptors.readLock();
    lock.lock();
    try {
      if (closed) {
        throw new IOException(path + ": the line is closed");
      }
      return work.run();
    } finally {
      lock.unlock();
    }
  }

  @FunctionalInterface
  private interface Work {
    int run() throws IOException;
  }

  /** Hangs the line up: the other side sees its port gone. May be called twice. */
  @Override
  public void close() {
    closed = true;
    Lock lock = descriptors.writeLock();
    lock.lock();
    try {
      if (outgoing.valid()) {
        closeDescriptor(portSide);
        closeDescriptor(controller);
        outgoing.close();
        incoming.close();
      }
    } finally {
      lock.unlock();
    }
  }
}
