package io.github.platenwire.port;

/**
 * Bytes that came out of one read, and when. The array belongs to whoever holds the chunk; nobody
 * changes it.
 *
 * @param bytes the bytes, at least one
 * @param arrivalNanos monotonic time at which the read returned
 * @param part what they are in the talk with the device
 */
@SuppressWarnings("ArrayRecordComponent") // handed over whole, never compared
public record Chunk(byte[] bytes, long arrivalNanos, Part part) {
  /** What bytes are in the talk with a device. Devices that send unasked only know the first. */
  public enum Part {
    /** Part of a stream, or a whole answer. */
    STREAM,
    /** An answer that did not come whole in its time: what is half-read after it is torn. */
    TORN,
    /** Bytes that nobody had asked for, such as an answer that came too late. No reading. */
    STRAY,
    /** What the device said when it was asked who it is. No reading. */
    IDENTITY
  }

  /**
   * Part of a stream, or a whole answer.
   *
   * @param bytes the bytes, at least one
   * @param arrivalNanos monotonic time at which the read returned
   */
  public Chunk(byte[] bytes, long arrivalNanos) {
    this(bytes, arrivalNanos, Part.STREAM);
  }
}
