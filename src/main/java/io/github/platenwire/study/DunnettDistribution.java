package io.github.platenwire.study;

import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;

/**
 * The greatest of several |t| that share one reference and one pooled spread (Dunnett 1955): a
 * multivariate t whose correlations are λᵢλⱼ with λᵢ² = nᵢ/(nᵢ + n₀). Given the reference's
 * deviation z and s = χ/√ν the comparisons are independent, so
 *
 * <pre>P(max |t| ≤ d) = E over s of ∫ φ(z) Π [Φ((λᵢz + d·s)/cᵢ) − Φ((λᵢz − d·s)/cᵢ)] dz</pre>
 *
 * <p>with cᵢ² = 1 − λᵢ². Immutable; safe for use by several threads.
 */
final class DunnettDistribution {
  /** How many comparisons share each λ; few series differ in their number of specimens. */
  private final Map<Double, Integer> countByLambda = new TreeMap<>();

  private final double degreesOfFreedom;

  /**
   * For specimens in the reference and in each series compared with it.
   *
   * @param degreesOfFreedom of the pooled spread; infinite when it is known
   */
  DunnettDistribution(int referenceCount, int[] counts, double degreesOfFreedom) {
    this(referenceCount, counts, ones(counts.length), degreesOfFreedom);
  }

  /**
   * For the contrasts mean − ρ·reference, whose λ² = ρ²n/(ρ²n + n₀) depends on the ratios ρ; with ρ
   * = 1 they are the differences. The ratios found stand for the true ones (Dilba, Bretz, Guiard
   * and Hothorn 2004, from memory).
   *
   * @param ratios of the means to the reference's, in the order of the counts
   */
  DunnettDistribution(int referenceCount, int[] counts, double[] ratios, double degreesOfFreedom) {
    if (counts.length == 0) {
      throw new IllegalArgumentException("nothing to compare with the reference");
    }
    for (int i = 0; i < counts.length; i++) {
      double weight = ratios[i] * ratios[i] * counts[i];
      countByLambda.merge(Math.sqrt(weight / (weight + referenceCount)), 1, Integer::sum);
    }
    this.degreesOfFreedom = degreesOfFreedom;
  }

  private static double[] ones(int count) {
    double[] ones = new double[count];
    Arrays.fill(ones, 1);
    return ones;
  }

  /** The probability that every |t| is at most d. */
  double below(double d) {
    if (d <= 0) {
      return 0;
    }
    return Quadrature.overScale(
        degreesOfFreedom, s -> Quadrature.overNormal(z -> allWithin(z, d * s)));
  }

  private double allWithin(double z, double width) {
    double product = 1;
    for (Map.Entry<Double, Integer> entry : countByLambda.entrySet()) {
      double lambda = entry.getKey();
      double rest = Math.sqrt(1 - lambda * lambda);
      double inside =
          Quadrature.normalBetween((lambda * z - width) / rest, (lambda * z + width) / rest);
      product *= Math.pow(inside, entry.getValue());
    }
    return product;
  }

  /** The d that every |t| stays within, all together, with the given probability. */
  double quantile(double probability) {
    Values.requireLevel(probability);
    return Quadrature.whereReached(this::below, probability);
  }
}
