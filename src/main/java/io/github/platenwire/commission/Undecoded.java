package io.github.platenwire.commission;

import io.github.platenwire.device.Fault;

/**
 * A stretch of bytes that a definition could not decode.
 *
 * @param offset index of its first byte among all bytes of the sample
 * @param bytes what was received; nobody changes them
 * @param fault where in it and why
 */
@SuppressWarnings("ArrayRecordComponent") // handed over whole, never compared
public record Undecoded(long offset, byte[] bytes, Fault fault) {
  /** Index among all bytes of the sample of the byte where the fault shows. */
  public long faultOffset() {
    return offset + fault.at();
  }
}
