package io.github.platenwire.emulate;

import java.util.function.UnaryOperator;

/** What an emulated device answers to what it hears. Not thread-safe. */
interface Conversation {
  /** Takes readings while a device is being asked. */
  @FunctionalInterface
  interface Readings {
    /**
     * The bytes of a reading taken now.
     *
     * @param framing makes the answer of the reading's own bytes, before anything spoils it
     * @return what is sent; none if the device is silent
     */
    byte[] take(UnaryOperator<byte[]> framing);
  }

  /**
   * Takes the next bytes and gives what is answered to them.
   *
   * @param bytes what came
   * @param nanos when it came, since the start of the test
   * @param readings where readings come from
   * @return none if nothing is to be said (yet)
   */
  byte[] hear(byte[] bytes, long nanos, Readings readings);
}
