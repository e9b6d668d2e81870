package io.github.platenwire.record;

import java.time.Instant;

/**
 * The last line of a raw file, and the digest of the file with that line. Immutable.
 *
 * @param seq number of the last row
 * @param ended when the record ended
 * @param reason why
 * @param rows how many rows, events included
 * @param lost readings known to have been lost
 * @param sealed SHA-256 of every byte before the last line, in hex
 * @param fileSha256 SHA-256 of the whole file, in hex
 */
public record Closing(
    long seq,
    Instant ended,
    CloseReason reason,
    long rows,
    long lost,
    String sealed,
    String fileSha256) {}
