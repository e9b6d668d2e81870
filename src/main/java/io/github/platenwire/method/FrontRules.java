package io.github.platenwire.method;

import io.github.platenwire.method.Absorption.Stretch;
import io.github.platenwire.quantity.Quantity;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * All that a method file of the kinds {@code front} and {@code absorption} says. Immutable.
 *
 * @param name by which a person asks for it
 * @param title what it is
 * @param standard by which it computes
 * @param quantity what is read: a length, or a mass from which the absorption follows
 * @param everySeconds of a gauge's readings one is taken each so many seconds; typed ones all are
 * @param depthsMillimetres depths for which the time is asked
 * @param absorption how masses become an absorption, where masses are read
 * @param rounding to what figures are rounded
 * @param ask what a person is asked at the end
 */
record FrontRules(
    String name,
    String title,
    String standard,
    Quantity quantity,
    double everySeconds,
    List<Double> depthsMillimetres,
    Optional<AbsorptionRules> absorption,
    Rounding rounding,
    Set<AfterTest> ask) {
  FrontRules {
    depthsMillimetres = List.copyOf(depthsMillimetres);
  }

  /** How masses become an absorption, and over which stretches lines are laid. */
  record AbsorptionRules(Absorption absorption, List<Stretch> stretches) {
    AbsorptionRules {
      stretches = List.copyOf(stretches);
    }
  }

  /** To what figures are rounded; the rates to so many significant digits. */
  record Rounding(Steps length, BigDecimal grams, BigDecimal minutes, int significantDigits) {}
}
