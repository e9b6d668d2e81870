package io.github.platenwire.device;

/**
 * Why some bytes could not be decoded.
 *
 * @param at index of the byte where it shows, 0 to their number
 * @param why in words, for a person
 */
public record Fault(int at, String why) {}
