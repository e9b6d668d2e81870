package io.github.platenwire.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class BothSystemsTest {
  /** 12 345 lbf are 54.913 kN, from the exact factor. */
  @Test
  void words_force_haveBothUnitsInTheOrderAskedFor() {
    double newtons = Unit.POUND_FORCE.toBase(12_345);
    assertThat(BothSystems.words(newtons, Quantity.FORCE, UnitSystem.SI))
        .isEqualTo("54.91 kN (12345 lbf)");
    assertThat(BothSystems.words(newtons, Quantity.FORCE, UnitSystem.INCH_POUND))
        .isEqualTo("12345 lbf (54.91 kN)");
  }

  @Test
  void words_strain_areTheSameInBothSystemsAndSaidOnce() {
    assertThat(BothSystems.words(-12.54e-6, Quantity.STRAIN, UnitSystem.SI))
        .isEqualTo("-12.5 µm/m");
    assertThat(BothSystems.words(0, Quantity.STRAIN, UnitSystem.INCH_POUND)).isEqualTo("0.0 µm/m");
  }

  @Test
  void words_quantityWithoutAPair_isRefused() {
    assertThatThrownBy(() -> BothSystems.words(1, Quantity.TIME, UnitSystem.SI))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
