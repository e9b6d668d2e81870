package io.github.platenwire.record;

import java.util.Optional;

/**
 * What companions are compared by. Immutable.
 *
 * @param test the test's id
 * @param specimen the specimen's name
 * @param series its series
 * @param plannedAgeDays the age at which it was to be broken
 * @param method the method's name
 * @param reason why the record ended
 * @param strengthMegapascals strength before rounding, if the test came to one
 * @param diameterMillimetres mean diameter, if there is one
 */
public record SummaryFacts(
    String test,
    String specimen,
    String series,
    Optional<Double> plannedAgeDays,
    String method,
    String reason,
    Optional<Double> strengthMegapascals,
    Optional<Double> diameterMillimetres) {}
