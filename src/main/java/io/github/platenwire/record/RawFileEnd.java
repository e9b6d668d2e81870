package io.github.platenwire.record;

import java.util.Optional;

/**
 * How a raw file ends. Immutable.
 *
 * @param lastSeq number of the last whole row; 0 if there is none
 * @param wholeBytes length of the part that consists of whole lines
 * @param tornBytes bytes after that: a line that was being written when the program or the power
 *     died
 * @param closing the last line, if the record was closed in order
 * @param checkLines how many check lines were met, each of which agreed
 */
public record RawFileEnd(
    long lastSeq, long wholeBytes, long tornBytes, Optional<Closing> closing, int checkLines) {}
