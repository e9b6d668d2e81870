package io.github.platenwire.study;

import io.github.platenwire.statistics.LineFit;
import io.github.platenwire.statistics.Values;
import java.util.Arrays;
import java.util.Optional;

/**
 * Curves of strength over age: that of ACI 209R-92 and that of EN 1992-1-1, with the coefficients
 * printed for them and fitted to a series. Stateless; safe for use by several threads.
 */
public final class AgeCurves {
  /** The age both curves are referred to, days. */
  private static final double REFERENCE_DAYS = 28;

  private AgeCurves() {}

  /** Curing and cement of ACI 209R-92 (coefficients of its equation 2-1). */
  public enum AciCuring {
    /** Moist cured, cement type I. */
    MOIST_TYPE_I(4.0, 0.85),
    /** Moist cured, cement type III. */
    MOIST_TYPE_III(2.3, 0.92),
    /** Steam cured, cement type I. */
    STEAM_TYPE_I(1.0, 0.95),
    /** Steam cured, cement type III. */
    STEAM_TYPE_III(0.70, 0.98);

    private final double aDays;
    private final double b;

    AciCuring(double aDays, double b) {
      this.aDays = aDays;
      this.b = b;
    }

    /** Strength at an age over strength at 28 days. With type I moist it is 1.007 at 28 days. */
    public double ratioAt(double ageDays) {
      return aciRatio(aDays, b, ageDays);
    }
  }

  /** Strength classes of cement of EN 1992-1-1:2004, 3.1.2(6). */
  public enum EnCement {
    /** Rapid. */
    R(0.20),
    /** Normal. */
    N(0.25),
    /** Slow. */
    S(0.38);

    private final double s;

    EnCement(double s) {
      this.s = s;
    }

    /** Strength at an age over strength at 28 days. */
    public double ratioAt(double ageDays) {
      return enRatio(s, ageDays);
    }
  }

  /**
   * A coefficient with its standard error.
   *
   * @param value in the unit of the coefficient
   * @param standardError in the same unit
   */
  public record Coefficient(double value, double standardError) {}

  /**
   * The curve of ACI 209R fitted, f(t) = f28·t/(a + b·t) with a = 28·(1 − b), so that f28 is the
   * strength at 28 days.
   *
   * @param strength28Megapascals f28
   * @param aDays a, days
   * @param b without unit
   * @param residualDeviationMegapascals scatter about the curve
   * @param degreesOfFreedom specimens less two
   */
  public record AciFit(
      Coefficient strength28Megapascals,
      Coefficient aDays,
      Coefficient b,
      double residualDeviationMegapascals,
      int degreesOfFreedom) {
    /** Strength on the curve, MPa. */
    public double megapascalsAt(double ageDays) {
      return strength28Megapascals.value() * aciRatio(aDays.value(), b.value(), ageDays);
    }
  }

  /**
   * The curve of EN 1992-1-1 fitted, f(t) = f28·exp(s·(1 − √(28/t))).
   *
   * @param strength28Megapascals f28
   * @param s without unit
   * @param residualDeviationMegapascals scatter about the curve
   * @param degreesOfFreedom specimens less two
   */
  public record EnFit(
      Coefficient strength28Megapascals,
      Coefficient s,
      double residualDeviationMegapascals,
      int degreesOfFreedom) {
    /** Strength on the curve, MPa. */
    public double megapascalsAt(double ageDays) {
      return strength28Megapascals.value() * enRatio(s.value(), ageDays);
    }
  }

  /** t/(a + b·t), ACI 209R-92 equation 2-1. */
  public static double aciRatio(double aDays, double b, double ageDays) {
    Values.requirePositive("age", ageDays);
    return ageDays / (aDays + b * ageDays);
  }

  /** β_cc(t) = exp(s·(1 − √(28/t))), EN 1992-1-1:2004 equation 3.2. */
  public static double enRatio(double s, double ageDays) {
    Values.requirePositive("age", ageDays);
    return Math.exp(s * enShape(ageDays));
  }

  private static double enShape(double ageDays) {
    return 1 - Math.sqrt(REFERENCE_DAYS / ageDays);
  }

  /**
   * The ACI curve through single strengths by least squares. The three coefficients of the printed
   * formula cannot all be found from strengths (doubling f28, a and b changes nothing), so the
   * curve is held to f28 at 28 days.
   *
   * @return empty with fewer than three specimens, fewer than two ages, or no curve of this kind
   * @throws IllegalArgumentException if the arrays do not match or a value is not above zero
   */
  public static Optional<AciFit> fitAci(double[] agesDays, double[] strengthsMegapascals) {
    if (tooFew(agesDays, strengthsMegapascals)) {
      return Optional.empty();
    }
    // t/f = a/f28 + (b/f28)·t is a line and gives the first guess.
    double[] inverse = new double[agesDays.length];
    for (int i = 0; i < inverse.length; i++) {
      inverse[i] = agesDays[i] / strengthsMegapascals[i];
    }
    LineFit guess = LineFit.of(agesDays, inverse);
    double start28 = REFERENCE_DAYS / guess.at(REFERENCE_DAYS);
    return CurveFit.of(
            new AciCurve(), agesDays, strengthsMegapascals, start28, guess.slope() * start28)
        .map(AgeCurves::describeAci)
        .filter(fit -> holdsOver(fit, agesDays));
  }

  /** A hyperbola with its pole among the ages, or at any later age, is no curve of strength. */
  private static boolean holdsOver(AciFit fit, double[] agesDays) {
    return fit.strength28Megapascals.value > 0
        && fit.b.value >= 0
        && Arrays.stream(agesDays).allMatch(age -> fit.aDays.value + fit.b.value * age > 0);
  }

  private static AciFit describeAci(CurveFit fit) {
    Coefficient b = coefficient(fit, 1);
    return new AciFit(
        coefficient(fit, 0),
        new Coefficient(REFERENCE_DAYS * (1 - b.value), REFERENCE_DAYS * b.standardError),
        b,
        fit.residualDeviation(),
        fit.degreesOfFreedom());
  }

  /**
   * The EN curve through single strengths by least squares.
   *
   * @return empty with fewer than three specimens, fewer than two ages, or no curve of this kind
   * @throws IllegalArgumentException if the arrays do not match or a value is not above zero
   */
  public static Optional<EnFit> fitEn(double[] agesDays, double[] strengthsMegapascals) {
    if (tooFew(agesDays, strengthsMegapascals)) {
      return Optional.empty();
    }
    // ln f = ln f28 + s·(1 − √(28/t)) is a line and gives the first guess.
    double[] shapes = Arrays.stream(agesDays).map(AgeCurves::enShape).toArray();
    double[] logs = Arrays.stream(strengthsMegapascals).map(Math::log).toArray();
    LineFit guess = LineFit.of(shapes, logs);
    return CurveFit.of(
            new EnCurve(),
            agesDays,
            strengthsMegapascals,
            Math.exp(guess.intercept()),
            guess.slope())
        .map(
            fit ->
                new EnFit(
                    coefficient(fit, 0),
                    coefficient(fit, 1),
                    fit.residualDeviation(),
                    fit.degreesOfFreedom()));
  }

  private static boolean tooFew(double[] agesDays, double[] strengthsMegapascals) {
    Values.requireSameLength("ages", agesDays.length, "strengths", strengthsMegapascals.length);
    Values.requirePositive("age", agesDays);
    Values.requirePositive("strength", strengthsMegapascals);
    return agesDays.length < 3 || Arrays.stream(agesDays).distinct().count() < 2;
  }

  private static Coefficient coefficient(CurveFit fit, int index) {
    return new Coefficient(fit.parameters().get(index), fit.standardErrors().get(index));
  }

  /** Parameters f28 and b. */
  private record AciCurve() implements CurveFit.Curve {
    @Override
    public double value(double age, double[] p) {
      return p[0] * age / below(age, p);
    }

    @Override
    public double[] slopes(double age, double[] p) {
      double below = below(age, p);
      return new double[] {age / below, -p[0] * age * (age - REFERENCE_DAYS) / (below * below)};
    }

    private static double below(double age, double[] p) {
      return REFERENCE_DAYS * (1 - p[1]) + p[1] * age;
    }
  }

  /** Parameters f28 and s. */
  private record EnCurve() implements CurveFit.Curve {
    @Override
    public double value(double age, double[] p) {
      return p[0] * Math.exp(p[1] * enShape(age));
    }

    @Override
    public double[] slopes(double age, double[] p) {
      double ratio = Math.exp(p[1] * enShape(age));
      return new double[] {ratio, p[0] * ratio * enShape(age)};
    }
  }
}
