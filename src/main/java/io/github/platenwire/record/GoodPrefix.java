package io.github.platenwire.record;

import java.security.MessageDigest;

/**
 * The part of an interrupted raw file that is kept. The digest must be copied before it is used.
 *
 * @param header the file's head
 * @param bytes its length, whole lines
 * @param lastSeq number of its last row; 0 if there is none
 * @param lastMicros latest time in it, microseconds since the origin
 * @param digest over all of its bytes
 */
record GoodPrefix(
    RawHeader header, long bytes, long lastSeq, long lastMicros, MessageDigest digest) {}
