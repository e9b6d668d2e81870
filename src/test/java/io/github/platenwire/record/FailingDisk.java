package io.github.platenwire.record;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;

/**
 * A disk that takes a number of bytes and then is full, or forces a number of times and then
 * refuses. Passes everything else to a real one.
 */
public final class FailingDisk implements RecordFolder {
  private final DiskFolder real = new DiskFolder();
  private long bytesLeft;
  private int forcesLeft;
  private final long reserveBytes;

  /** Full after so many bytes; the reserve gives some back. */
  public static FailingDisk fullAfter(long bytes, long reserveBytes) {
    return new FailingDisk(bytes, Integer.MAX_VALUE, reserveBytes);
  }

  /** Refuses to force after so many times. */
  public static FailingDisk unforcedAfter(int forces) {
    return new FailingDisk(Long.MAX_VALUE, forces, 0);
  }

  private FailingDisk(long bytesLeft, int forcesLeft, long reserveBytes) {
    this.bytesLeft = bytesLeft;
    this.forcesLeft = forcesLeft;
    this.reserveBytes = reserveBytes;
  }

  @Override
  public RecordFile create(Path path) throws IOException {
    return failing(real.create(path));
  }

  @Override
  public RecordFile reopen(Path path, long length) throws IOException {
    return failing(real.reopen(path, length));
  }

  private RecordFile failing(RecordFile file) {
    return new RecordFile() {
      @Override
      public int write(ByteBuffer bytes) throws IOException {
        if (bytesLeft == 0) {
          throw new IOException("No space left on device");
        }
        int taken = (int) Math.min(bytesLeft, bytes.remaining());
        ByteBuffer part = bytes.slice(bytes.position(), taken);
        while (part.hasRemaining()) {
          file.write(part);
        }
        bytes.position(bytes.position() + taken);
        bytesLeft -= taken;
        return taken;
      }

      @Override
      public void force() throws IOException {
        if (forcesLeft == 0) {
          throw new IOException("Input/output error");
        }
        forcesLeft--;
        file.force();
      }

      @Override
      public void truncate(long length) throws IOException {
        file.truncate(length);
      }

      @Override
      public void close() throws IOException {
        file.close();
      }
    };
  }

  @Override
  public boolean freeReserve(Path beside) {
    bytesLeft += reserveBytes;
    return reserveBytes > 0;
  }
}
