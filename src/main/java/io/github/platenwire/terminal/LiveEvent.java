package io.github.platenwire.terminal;

/**
 * Something that happened in a test, as its event row tells it.
 *
 * @param seq number of the row in the raw file
 * @param text the row's text, such as {@code zero load=12.4}
 */
public record LiveEvent(long seq, String text) {}
