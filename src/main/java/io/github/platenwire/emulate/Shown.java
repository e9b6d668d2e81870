package io.github.platenwire.emulate;

/**
 * What an emulated device has to say at one moment. Immutable.
 *
 * @param counts the load in steps of the layout's last digit
 * @param over whether the load is at or beyond the capacity
 * @param gaugeMillimetres what its gauge reads; passed over by a layout without one
 */
record Shown(long counts, boolean over, double gaugeMillimetres) {
  /** The gauge in tenths of a micrometre, as packed layouts send it. */
  int gaugeTenths() {
    return (int) Math.rint(gaugeMillimetres * 10_000);
  }
}
