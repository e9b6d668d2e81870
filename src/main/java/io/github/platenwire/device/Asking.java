package io.github.platenwire.device;

import io.github.platenwire.port.Link.Pause;
import io.github.platenwire.port.PortOpener;
import io.github.platenwire.reading.MonotonicClock;
import java.util.List;
import java.util.Optional;

/**
 * How a device is asked that does not speak of its own accord. Immutable; safe for any thread.
 *
 * @param opening commands sent once after each opening of the link, in order; nothing is expected
 *     in return
 * @param identity asks the device who it is, once after each opening; empty: it is not asked
 * @param request what is sent each time a reading is wanted
 * @param intervalNanos from one request to the next; a device that takes longer to answer is asked
 *     again at once
 * @param timeoutNanos how long an answer may take; it is seen up to 0.1 s later, which is how long
 *     a port waits for bytes
 * @param longest most bytes of an answer; a longer one is torn off there
 * @param answers tells when an answer is whole
 * @param identityAnswers tells when the answer to {@code identity} is whole
 */
@SuppressWarnings("ArrayRecordComponent") // handed over whole, never compared
public record Asking(
    List<byte[]> opening,
    Optional<byte[]> identity,
    byte[] request,
    long intervalNanos,
    long timeoutNanos,
    int longest,
    AnswerEnd answers,
    AnswerEnd identityAnswers) {
  /** Keeps the list from being changed. */
  public Asking {
    opening = List.copyOf(opening);
  }

  /** Tells when an answer is whole. Stateless. */
  @FunctionalInterface
  public interface AnswerEnd {
    /**
     * How long the whole answer is that some bytes begin with.
     *
     * @param bytes holds what has come since the request
     * @param length how many bytes have come
     * @return 1 to {@code length}, or -1 if more must come or no end can be told
     */
    int wholeLength(byte[] bytes, int length);
  }

  /**
   * An opener whose ports ask and answer: what they hand over are answers, one a chunk.
   *
   * @param plain opens the port itself
   * @param clock paces the requests; the port must stamp by the same one
   * @param pause waits until the next request is due
   */
  public PortOpener opener(PortOpener plain, MonotonicClock clock, Pause pause) {
    return () -> new AskingPort(plain.open(), this, clock, pause);
  }
}
