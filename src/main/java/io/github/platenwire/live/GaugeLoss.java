package io.github.platenwire.live;

/**
 * A gauge that is left out of the mean from now on. Immutable.
 *
 * @param gauge its index from 0
 * @param fault what was seen
 * @param reason in words, with the figures
 * @param lastGoodMicros moment of its last reading that is used
 * @param seenMicros moment at which it was seen
 * @param seq number of the reading at which it was seen; 0 where silence or a missing zero told it
 */
public record GaugeLoss(
    int gauge, GaugeFault fault, String reason, long lastGoodMicros, long seenMicros, long seq) {}
