package io.github.platenwire.method;

import io.github.platenwire.toml.TomlException;
import java.math.BigDecimal;

/** Steps to which a figure is rounded: one in the SI unit and one in the inch-pound unit. */
record Steps(BigDecimal si, BigDecimal inchPound) {

  static Steps parse(Numbers table, String si, String inchPound) throws TomlException {
    return new Steps(table.step(si), table.step(inchPound));
  }

  static Steps same(BigDecimal step) {
    return new Steps(step, step);
  }
}
