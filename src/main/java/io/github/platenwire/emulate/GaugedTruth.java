package io.github.platenwire.emulate;

/** What really happens to a specimen with gauges on it. */
public interface GaugedTruth {
  /** How long it takes. */
  double seconds();

  /** Load at a moment, newtons. */
  double loadAt(double seconds);

  /** What a gauge sees at a moment, in its own unit, its zero not in it. */
  double openingAt(int face, double seconds);
}
