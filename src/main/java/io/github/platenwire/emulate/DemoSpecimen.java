package io.github.platenwire.emulate;

import java.time.LocalDateTime;
import java.util.Optional;

/**
 * One specimen of the demo: what people wrote down of it and, if the demo breaks it, its truth.
 * Immutable.
 *
 * @param name unique in the demo
 * @param series what it is a companion in
 * @param firstDiameterMillimetres one of two at right angles, as written
 * @param secondDiameterMillimetres the other
 * @param lengthMillimetres as written
 * @param massGrams as written
 * @param cast when it was cast, in the lab's zone
 * @param ageDays the age at which it is to be broken
 * @param curing in words
 * @param expectedMegapascals what the operator expects; no number for a specimen that waits
 * @param cylinder its truth, for a specimen that the demo breaks; its diameter is the mean of the
 *     two written ones, so that dimensions add nothing to the difference from the truth
 */
public record DemoSpecimen(
    String name,
    String series,
    double firstDiameterMillimetres,
    double secondDiameterMillimetres,
    double lengthMillimetres,
    long massGrams,
    LocalDateTime cast,
    int ageDays,
    String curing,
    double expectedMegapascals,
    Optional<EmulatedCylinder> cylinder) {
  /**
   * Whether its break runs through the aggregate: always through the weak recycled one, through the
   * natural one only in one old cylinder (invented).
   */
  public boolean breaksThroughAggregate() {
    return series.startsWith("RA") || (ageDays == 28 && name.endsWith("2"));
  }
}
