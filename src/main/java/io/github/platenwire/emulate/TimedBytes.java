package io.github.platenwire.emulate;

/**
 * Bytes that an emulated device hands over at one moment. The array belongs to whoever holds it;
 * nobody changes it.
 *
 * @param nanos emulated time since the start of the test, never falling along a stream
 * @param bytes at least one
 */
@SuppressWarnings("ArrayRecordComponent") // handed over whole, never compared
public record TimedBytes(long nanos, byte[] bytes) {}
