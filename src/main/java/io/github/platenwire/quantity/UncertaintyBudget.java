package io.github.platenwire.quantity;

import java.util.List;

/**
 * The uncertainty of one result, line by line, by JCGM 100:2008 (GUM): each input's standard
 * uncertainty times its sensitivity, combined as the root of the sum of squares. Immutable.
 *
 * @param lines what contributes, each already in the result's unit
 */
public record UncertaintyBudget(List<Line> lines) {
  /** Makes the list immutable. */
  public UncertaintyBudget {
    lines = List.copyOf(lines);
  }

  /**
   * One contribution.
   *
   * @param source where it comes from, in words for a person
   * @param contribution standard uncertainty times sensitivity, in the result's unit, not negative
   * @param degreesOfFreedom infinite for a type B estimate taken as known
   */
  public record Line(String source, double contribution, double degreesOfFreedom) {}

  /** Combined standard uncertainty in the result's unit. */
  public double combined() {
    double squares = 0;
    for (Line line : lines) {
      squares += line.contribution * line.contribution;
    }
    return Math.sqrt(squares);
  }

  /** Expanded uncertainty with coverage factor 2, in the result's unit. */
  public double expanded() {
    return 2 * combined();
  }

  /**
   * Effective degrees of freedom by the Welch–Satterthwaite formula (GUM G.4.1); infinite if every
   * line's are.
   */
  public double effectiveDegreesOfFreedom() {
    double denominator = 0;
    for (Line line : lines) {
      denominator += Math.pow(line.contribution, 4) / line.degreesOfFreedom;
    }
    double combined = combined();
    return denominator == 0 ? Double.POSITIVE_INFINITY : Math.pow(combined, 4) / denominator;
  }
}
