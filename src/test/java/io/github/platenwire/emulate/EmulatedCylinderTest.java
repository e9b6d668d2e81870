package io.github.platenwire.emulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.emulate.EmulatedCylinder.BreakKind;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EmulatedCylinderTest {
  /** f = 4000 P / (π D²), ASTM C39/C39M (from memory), computed with 60 digits. */
  @ParameterizedTest
  @CsvSource({
    "150, 28.29421210522584, 500",
    "150, 42.44131815783876, 750",
    "100, 31.83098861837907, 250"
  })
  void peak_strengthOfWorkedExample_isItsLoad(
      double diameter, double strength, double kilonewtons) {
    EmulatedCylinder cylinder =
        EmulatedCylinder.ofNormalConcrete(diameter, 2 * diameter, strength, BreakKind.BRITTLE);

    assertThat(cylinder.peakNewtons() / 1000).isCloseTo(kilonewtons, within(1e-9));
    assertThat(cylinder.loadNewtonsAt(cylinder.peakTravelMillimetres()))
        .isEqualTo(cylinder.peakNewtons());
  }

  /** ACI 318, 19.2.2.1: 4700 √25 = 23 500 MPa (from memory). */
  @Test
  void normalConcrete_25Megapascals_hasCodeStiffness() {
    EmulatedCylinder cylinder = EmulatedCylinder.ofNormalConcrete(100, 200, 25, BreakKind.BRITTLE);

    double quarter = cylinder.peakNewtons() / 4;
    double half = cylinder.peakNewtons() / 2;
    double strain =
        (cylinder.travelMillimetresAt(half) - cylinder.travelMillimetresAt(quarter)) / 200;
    double stress = (half - quarter) / cylinder.areaSquareMillimetres();
    assertThat(stress / strain).isCloseTo(23_500, within(1e-6));
  }

  @Test
  void toe_firstContact_isSofterThanTheStraightPart() {
    EmulatedCylinder cylinder = EmulatedCylinder.ofNormalConcrete(100, 200, 25, BreakKind.BRITTLE);

    double slopeAtContact = cylinder.loadNewtonsAt(1e-6) / 1e-6;
    assertThat(slopeAtContact / cylinder.stiffnessNewtonsPerMillimetre())
        .isCloseTo(0.1, within(0.001));
  }

  @Property(tries = 200)
  void travel_ofLoadBelowPeak_isInverseOfCurve(
      @ForAll @DoubleRange(min = 0, max = 1) double share,
      @ForAll @DoubleRange(min = 10, max = 100) double strength) {
    EmulatedCylinder cylinder =
        EmulatedCylinder.ofNormalConcrete(150, 300, strength, BreakKind.GRADUAL);
    double newtons = share * cylinder.peakNewtons();

    assertThat(cylinder.loadNewtonsAt(cylinder.travelMillimetresAt(newtons)))
        .isCloseTo(newtons, within(1e-9 * cylinder.peakNewtons()));
  }

  @Property(tries = 200)
  void slope_anyLoadBelowPeak_isDerivativeOfCurve(
      @ForAll @DoubleRange(min = 0.01, max = 0.99) double share) {
    EmulatedCylinder cylinder = EmulatedCylinder.ofNormalConcrete(100, 200, 25, BreakKind.GRADUAL);
    double newtons = share * cylinder.peakNewtons();
    double at = cylinder.travelMillimetresAt(newtons);
    double step = 1e-6;

    double slope =
        (cylinder.loadNewtonsAt(at + step) - cylinder.loadNewtonsAt(at - step)) / (2 * step);
    assertThat(cylinder.slopeNewtonsPerMillimetreAt(newtons) / slope).isCloseTo(1, within(1e-3));
  }

  @Test
  void load_noTravelOrFarTooMuch_isZero() {
    EmulatedCylinder cylinder = EmulatedCylinder.ofNormalConcrete(100, 200, 25, BreakKind.BRITTLE);

    assertThat(cylinder.loadNewtonsAt(-1)).isZero();
    assertThat(cylinder.loadNewtonsAt(0)).isZero();
    assertThat(cylinder.loadNewtonsAt(100)).isZero();
  }

  @Test
  void new_valueOutOfRange_namesItAndItsRange() {
    assertThatThrownBy(
            () -> EmulatedCylinder.ofNormalConcrete(Double.NaN, 200, 25, BreakKind.BRITTLE))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("diameterMillimetres must be from 10.0 to 1000.0, diameterMillimetres=NaN");
    assertThatThrownBy(
            () -> new EmulatedCylinder(100, 200, 25, 25_000, 0.2, 0.1, 0.1, BreakKind.BRITTLE))
        .hasMessageContaining("linearShare");
  }
}
