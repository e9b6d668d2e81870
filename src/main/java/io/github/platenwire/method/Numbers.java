package io.github.platenwire.method;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.math.BigDecimal;

/** Reads the numbers of one table, each within its limits. Not thread-safe. */
final class Numbers {
  private final TomlSection table;

  Numbers(TomlSection table) {
    this.table = table;
  }

  void allow(String... keys) throws TomlException {
    table.allow(keys);
  }

  double positive(String key) throws TomlException {
    double value = table.number(key);
    if (value <= 0) {
      throw table.error(key, "'" + key + "' must be greater than 0, but it is " + value);
    }
    return value;
  }

  double notNegative(String key) throws TomlException {
    double value = table.number(key);
    if (value < 0) {
      throw table.error(key, "'" + key + "' must not be below 0, but it is " + value);
    }
    return value;
  }

  /** A number above the first limit and not above the second. */
  double within(String key, double above, double most) throws TomlException {
    double value = table.number(key);
    if (value <= above || value > most) {
      throw table.error(
          key,
          "'" + key + "' must be above " + above + " and at most " + most + ", but it is " + value);
    }
    return value;
  }

  int wholeWithin(String key, int least, int most) throws TomlException {
    long value = table.whole(key);
    if (value < least || value > most) {
      throw table.error(
          key, "'" + key + "' must be from " + least + " to " + most + ", but it is " + value);
    }
    return (int) value;
  }

  /** The upper of two limits, which must lie above the lower. */
  double above(String key, double lower) throws TomlException {
    double value = table.number(key);
    if (value <= lower) {
      throw table.error(key, "'" + key + "' must be above " + lower + ", but it is " + value);
    }
    return value;
  }

  /** A step for rounding, with the decimals it was written with: 10.0 is 10, 0.25 is 0.25. */
  BigDecimal step(String key) throws TomlException {
    return BigDecimal.valueOf(positive(key)).stripTrailingZeros();
  }
}
