package io.github.platenwire.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import io.github.platenwire.quantity.Unit;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

class CorrectionTest {
  private static final TableCorrection TABLE =
      new TableCorrection(
          List.of(
              new CalibrationPoint(0, 0),
              new CalibrationPoint(100, 101),
              new CalibrationPoint(200, 204)));

  /** NIST StRD, Pontius (load-cell calibration), certified values of the quadratic. */
  @Test
  void polynomial_pontius_reproducesTheCertifiedCoefficients() throws IOException {
    CalibrationRuns runs = pontius();
    CorrectionFit fit =
        CorrectionFit.of(CorrectionKind.POLYNOMIAL, runs, OptionalDouble.empty(), 2);
    PolynomialCorrection correction = (PolynomialCorrection) fit.correction();
    Percentage tenDigits = Percentage.withPercentage(1e-8);
    assertThat(correction.coefficients().get(0)).isCloseTo(0.673565789473684e-3, tenDigits);
    assertThat(correction.coefficients().get(1)).isCloseTo(0.732059160401003e-6, tenDigits);
    assertThat(correction.coefficients().get(2)).isCloseTo(-0.316081871345029e-14, tenDigits);
    // certified residual standard deviation, on 37 degrees of freedom
    assertThat(fit.degreesOfFreedom()).isEqualTo(37);
    assertThat(fit.standardUncertainty().orElseThrow())
        .isCloseTo(0.205177424076185e-3, Percentage.withPercentage(1e-6));
  }

  /** The data set's x as what the device shows, y as what it stands for; two runs of 20 steps. */
  private static CalibrationRuns pontius() throws IOException {
    String folder = System.getenv("PLATENWIRE_CHECK_DATA");
    assumeTrue(folder != null, "nist_pontius.csv needs PLATENWIRE_CHECK_DATA");
    List<CalibrationPoint> points = new ArrayList<>();
    for (String line :
        Files.readAllLines(Path.of(folder, "nist_pontius.csv"), StandardCharsets.UTF_8)) {
      if (!line.startsWith("#") && !line.startsWith("y")) {
        String[] cells = line.split(",", -1);
        points.add(
            new CalibrationPoint(Double.parseDouble(cells[0]), Double.parseDouble(cells[1])));
      }
    }
    assertThat(points).hasSize(40);
    return new CalibrationRuns(
        Unit.MILLIMETRE,
        OptionalDouble.empty(),
        List.of(
            new CalibrationRun(true, points.subList(0, 20), OptionalDouble.empty()),
            new CalibrationRun(true, points.subList(20, 40), OptionalDouble.empty())));
  }

  @Test
  void polynomial_exactQuadratic_isFoundAndConverted() {
    double[] indicated = {10, 50, 100, 150, 200};
    double[] applied = new double[5];
    for (int i = 0; i < 5; i++) {
      applied[i] = 0.5 + 0.99 * indicated[i] + 1e-4 * indicated[i] * indicated[i];
    }
    CalibrationRuns runs = Runs.gauge(Unit.KILONEWTON, 0.1, applied, indicated);
    CorrectionFit fit =
        CorrectionFit.of(CorrectionKind.POLYNOMIAL, runs, OptionalDouble.empty(), 2);
    assertThat(fit.correction().apply(120)).isCloseTo(0.5 + 118.8 + 1.44, within(1e-9));
    Correction pounds = fit.correction().inUnit(Unit.KILONEWTON, Unit.POUND_FORCE);
    double shown = Unit.KILONEWTON.convert(120, Unit.POUND_FORCE);
    assertThat(Unit.POUND_FORCE.convert(pounds.apply(shown), Unit.KILONEWTON))
        .isCloseTo(120.74, within(1e-9));
    assertThat(pounds.covers(Unit.KILONEWTON.convert(199, Unit.POUND_FORCE))).isTrue();
    assertThat(pounds.covers(Unit.KILONEWTON.convert(201, Unit.POUND_FORCE))).isFalse();
  }

  @Test
  void polynomial_thatTurnsBack_isRefused() {
    assertThatThrownBy(() -> new PolynomialCorrection(List.of(0.0, 1.0, -0.01), 0, 100))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("does not rise at the indicated value 50; take a lower degree");
  }

  @Test
  void polynomial_tooFewReadings_isRefusedInWords() {
    CalibrationRuns runs =
        Runs.gauge(Unit.MILLIMETRE, 0.1, new double[] {1, 2, 3}, new double[] {1, 2, 3});
    assertThatThrownBy(
            () -> CorrectionFit.of(CorrectionKind.POLYNOMIAL, runs, OptionalDouble.empty(), 2))
        .hasMessageContaining("needs at least 4 readings at 3 different values");
  }

  @Test
  void table_atItsPoints_givesWhatWasApplied() {
    assertThat(TABLE.apply(0)).isEqualTo(0);
    assertThat(TABLE.apply(101)).isEqualTo(100);
    assertThat(TABLE.apply(204)).isEqualTo(200);
    assertThat(TABLE.apply(152.5)).isEqualTo(150);
    assertThat(TABLE.apply(Double.NaN)).isNaN();
  }

  @Test
  void table_outside_goesOnStraightAndIsMarked() {
    assertThat(TABLE.apply(307)).isCloseTo(300, within(1e-9));
    assertThat(TABLE.apply(-10.1)).isCloseTo(-10, within(1e-9));
    assertThat(TABLE.covers(204)).isTrue();
    assertThat(TABLE.covers(204.001)).isFalse();
    // noise around zero is covered, up to 1 % of the table
    assertThat(TABLE.covers(-2)).isTrue();
    assertThat(TABLE.covers(-2.1)).isFalse();
    assertThat(TABLE.covers(Double.NaN)).isFalse();
  }

  @Property
  void table_anyTwoValues_keepTheirOrder(
      @ForAll @DoubleRange(min = -50, max = 400) double a,
      @ForAll @DoubleRange(min = -50, max = 400) double b) {
    double low = Math.min(a, b);
    double high = Math.max(a, b);
    assertThat(TABLE.apply(low)).isLessThanOrEqualTo(TABLE.apply(high));
  }

  @Test
  void table_thatDoesNotRise_isRefused() {
    assertThatThrownBy(
            () ->
                new TableCorrection(
                    List.of(new CalibrationPoint(100, 101), new CalibrationPoint(200, 101))))
        .hasMessage(
            "a table must rise from point to point, but after applied 100 indicated 101 comes"
                + " applied 200 indicated 101");
  }

  @Test
  void table_inAnotherUnit_correctsTheSame() {
    Correction pounds = TABLE.inUnit(Unit.KILONEWTON, Unit.POUND_FORCE);
    double shown = Unit.KILONEWTON.convert(152.5, Unit.POUND_FORCE);
    assertThat(Unit.POUND_FORCE.convert(pounds.apply(shown), Unit.KILONEWTON))
        .isCloseTo(150, within(1e-9));
  }

  @Test
  void scale_fitted_isTheLeastSquaresThroughTheOrigin() {
    // by hand: (1 x 2 + 2 x 3) / (2 x 2 + 3 x 3) = 8 / 13
    CalibrationRuns runs =
        Runs.gauge(Unit.MILLIMETRE, 0.1, new double[] {1, 2}, new double[] {2, 3});
    CorrectionFit fit = CorrectionFit.of(CorrectionKind.SCALE, runs, OptionalDouble.empty(), 2);
    assertThat(fit.correction()).isEqualTo(new ScaleCorrection(8.0 / 13));
    // residuals 16/13 - 1 = 3/13 and 24/13 - 2 = -2/13, one degree of freedom: sqrt(13)/13
    assertThat(fit.standardUncertainty().orElseThrow())
        .isCloseTo(Math.sqrt(13) / 13, within(1e-12));
  }

  @Test
  void none_residualsAreTheErrorsThemselves() {
    CalibrationRun run = Runs.run(true, 0.4, 0);
    CorrectionFit fit =
        CorrectionFit.of(
            CorrectionKind.NONE, Runs.kilonewtons(0.1, run, run), OptionalDouble.empty(), 2);
    assertThat(fit.standardUncertaintyPercent(0).orElseThrow()).isCloseTo(0.4, within(1e-9));
    assertThat(fit.standardUncertaintyPercent(900).orElseThrow()).isCloseTo(0.4, within(1e-9));
  }

  @Test
  void scale_zeroOrInfinite_isRefused() {
    assertThatThrownBy(() -> new ScaleCorrection(0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new ScaleCorrection(Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
