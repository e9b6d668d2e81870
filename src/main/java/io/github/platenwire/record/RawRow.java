package io.github.platenwire.record;

import io.github.platenwire.reading.Quality;

/**
 * One row of a raw file as read back. Immutable as long as nobody changes the array.
 *
 * @param seq its number
 * @param elapsedMicros time since the origin, in microseconds
 * @param channel the channel's name, or {@code event}
 * @param received the bytes as they came, or an event's text
 * @param value in the channel's unit; NaN for none
 * @param quality how far it can be trusted
 * @param line its line in the file, from 1
 */
@SuppressWarnings("ArrayRecordComponent") // handed over whole, never compared
public record RawRow(
    long seq,
    long elapsedMicros,
    String channel,
    byte[] received,
    double value,
    Quality quality,
    long line) {
  /** The channel that carries what happened. */
  public static final String EVENT = "event";

  /** Whether this row tells what happened, rather than what was read. */
  public boolean isEvent() {
    return channel.equals(EVENT);
  }
}
