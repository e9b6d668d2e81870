package io.github.platenwire.emulate;

/** Says in one way that a number is out of its range. Stateless. */
final class Ranges {
  private Ranges() {}

  /**
   * Checks that a number lies between two limits, both allowed; NaN never does.
   *
   * @throws IllegalArgumentException if it does not
   */
  static void within(String name, double value, double low, double high) {
    if (!(value >= low && value <= high)) {
      throw new IllegalArgumentException(
          name + " must be from " + low + " to " + high + ", " + name + "=" + value);
    }
  }
}
