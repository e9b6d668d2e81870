package io.github.platenwire.emulate;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;

/** Keeps what is sent to it. Confined to one thread. */
public final class CollectingOutlet implements ByteOutlet {
  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
  private final List<Long> stamps = new ArrayList<>();
  private boolean closed;

  @Override
  public void send(byte[] from, int at, int length, long emulatedNanos) {
    bytes.write(from, at, length);
    stamps.add(emulatedNanos);
  }

  @Override
  public void close() {
    closed = true;
  }

  /** Everything sent so far. */
  public byte[] bytes() {
    return bytes.toByteArray();
  }

  /** The stamp of each piece. */
  public List<Long> stamps() {
    return List.copyOf(stamps);
  }

  /** Whether it was closed. */
  public boolean closed() {
    return closed;
  }
}
