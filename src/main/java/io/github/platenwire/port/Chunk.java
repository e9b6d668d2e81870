package io.github.platenwire.port;

/**
 * Bytes that came out of one read, and when. The array belongs to whoever holds the chunk; nobody
 * changes it.
 *
 * @param bytes the bytes, at least one
 * @param arrivalNanos monotonic time at which the read returned
 */
@SuppressWarnings("ArrayRecordComponent") // handed over whole, never compared
public record Chunk(byte[] bytes, long arrivalNanos) {}
