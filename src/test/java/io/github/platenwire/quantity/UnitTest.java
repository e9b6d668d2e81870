package io.github.platenwire.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class UnitTest {
  /**
   * Inch, pound and standard gravity exact by definition (from memory); the others computed from
   * them. The package NISTunits 1.0.1 prints 4.448222, 4448.222, 8896.443, 6894.757, 0.4535924.
   */
  @ParameterizedTest
  @CsvSource({
    "POUND_FORCE, 4.4482216152605",
    "KIP, 4448.2216152605",
    "KILOGRAM_FORCE, 9.80665",
    "TONNE_FORCE, 9806.65",
    "INCH, 25.4",
    "MIL, 0.0254",
    "SQUARE_INCH, 645.16",
    "POUND, 0.45359237",
    "NEWTON, 1",
    "KILONEWTON, 1000",
    "MEGANEWTON, 1000000",
  })
  void exactFactor_definedUnit_isExact(Unit unit, String factor) {
    assertThat(unit.exactFactor()).isEqualByComparingTo(factor);
  }

  /** Computed from the exact definitions with 60 digits, outside this program. */
  @ParameterizedTest
  @CsvSource({
    "PSI, 0.00689475729316836133672267344535",
    "KSI, 6.89475729316836133672267344535",
    "PSI_PER_SECOND, 0.00689475729316836133672267344535",
    "POUND_PER_CUBIC_FOOT, 16.0184633739601395796550706546",
  })
  void exactFactor_derivedUnit_isExactToThirtyDigits(Unit unit, String factor) {
    BigDecimal expected = new BigDecimal(factor);
    assertThat(unit.exactFactor().round(new MathContext(expected.precision())))
        .isEqualByComparingTo(expected);
  }

  /** Computed from the exact definitions with 60 digits, outside this program. */
  @ParameterizedTest
  @CsvSource({
    "1, MEGAPASCAL, PSI, 145.037737730209215154241027951",
    "1, NEWTON, POUND_FORCE, 0.224808943099710482910039413403",
    "1, KILONEWTON, KIP, 0.224808943099710482910039413403",
    "35, PSI_PER_SECOND, MEGAPASCAL_PER_SECOND, 0.24131650526089264679",
    "7, PSI_PER_SECOND, MEGAPASCAL_PER_SECOND, 0.048263301052178529357",
  })
  void convert_publishedPair_agreesToTheLastDigits(
      double value, Unit from, Unit to, double expected) {
    assertThat(from.convert(value, to)).isCloseTo(expected, within(expected * 4e-16));
  }

  @ParameterizedTest
  @EnumSource(Unit.class)
  void convert_toItself_givesTheVerySameDouble(Unit unit) {
    assertThat(unit.convert(0.1 + 0.2, unit)).isEqualTo(0.1 + 0.2);
  }

  @ParameterizedTest
  @EnumSource(Unit.class)
  void parse_ownSymbol_findsTheUnit(Unit unit) {
    assertThat(Unit.parse(unit.symbol(), unit.quantity())).isEqualTo(unit);
  }

  @Test
  void convert_betweenQuantities_refuses() {
    assertThatThrownBy(() -> Unit.NEWTON.convert(1, Unit.MILLIMETRE))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("no way from N to mm");
  }

  @Test
  void parse_poundForALoad_saysWhatToWrite() {
    assertThatThrownBy(() -> Unit.parse("lb", Quantity.FORCE))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("'lbf'");
  }

  @Test
  void parse_unknown_namesThePossible() {
    assertThatThrownBy(() -> Unit.parse("kn", Quantity.FORCE))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("kN")
        .hasMessageNotContaining("psi");
  }

  /** Strain is a length over a length: one micrometre a metre is 1e-6, by definition. */
  @Test
  void parse_spellingsOfTheMicrostrain_areAllTaken() {
    assertThat(Unit.parse("um/m", Quantity.STRAIN)).isEqualTo(Unit.MICROSTRAIN);
    assertThat(Unit.parse("\u03bcm/m", Quantity.STRAIN)).isEqualTo(Unit.MICROSTRAIN);
    assertThat(Unit.parse("\u00b5m/m", Quantity.STRAIN)).isEqualTo(Unit.MICROSTRAIN);
    assertThat(Unit.MICROSTRAIN.toBase(450)).isEqualTo(450e-6);
    assertThatThrownBy(() -> Unit.parse("mm", Quantity.STRAIN))
        .hasMessageContaining("'mm' is no unit of strain; possible: µm/m");
    assertThatThrownBy(() -> Unit.parse("um/m", Quantity.LENGTH))
        .hasMessageContaining("'um/m' is no unit of length");
  }

  @Test
  void parse_spellingsOfTheMicrometre_areAllTaken() {
    assertThat(Unit.parse("um", Quantity.LENGTH)).isEqualTo(Unit.MICROMETRE);
    assertThat(Unit.parse("\u03bcm", Quantity.LENGTH)).isEqualTo(Unit.MICROMETRE);
    assertThat(Unit.parse("\u00b5m", Quantity.LENGTH)).isEqualTo(Unit.MICROMETRE);
  }
}
