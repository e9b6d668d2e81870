package io.github.platenwire.live;

/**
 * What loading cycles show at one moment. Immutable. NaN while unknown.
 *
 * @param newtons load, zero taken off, averaged
 * @param strain along the axis, from the cycle's zero, averaged
 * @param across widening across it
 * @param newtonsPerSecond rate of loading
 * @param cycle number of the cycle under way, or of the next
 * @param firstMarked whether its first mark is behind it
 * @param secondPassed whether its second mark is
 */
public record StrainView(
    double newtons,
    double strain,
    double across,
    double newtonsPerSecond,
    int cycle,
    boolean firstMarked,
    boolean secondPassed) {}
