package io.github.platenwire.device;

import io.github.platenwire.port.Chunk;

/** Feeds a decoder with what a port hands over. Stateless. */
public final class Decoding {
  /** A stray run is reported in pieces of at most so many bytes, as long as any line may be. */
  private static final int STRAY_PIECE = 1024;

  private Decoding() {}

  /**
   * Decodes a chunk by what it is in the talk with the device: a stream as such, a torn answer is
   * cut off behind, a stray one is garbled whole. What the device said of itself is no reading and
   * is left to the caller.
   */
  public static void accept(FrameDecoder decoder, Chunk chunk, FrameSink sink) {
    byte[] bytes = chunk.bytes();
    switch (chunk.part()) {
      case STREAM -> decoder.accept(bytes, 0, bytes.length, chunk.arrivalNanos(), sink);
      case TORN -> {
        decoder.accept(bytes, 0, bytes.length, chunk.arrivalNanos(), sink);
        decoder.cut(sink);
      }
      case STRAY -> {
        decoder.cut(sink);
        for (int from = 0; from < bytes.length; from += STRAY_PIECE) {
          int length = Math.min(STRAY_PIECE, bytes.length - from);
          sink.garbled(bytes, from, length, chunk.arrivalNanos());
        }
      }
      case IDENTITY -> {}
    }
  }
}
