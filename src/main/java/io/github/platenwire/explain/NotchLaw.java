package io.github.platenwire.explain;

import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.Specimen;

/** The stress above the notch of a beam loaded in the middle (EN 14651, from memory). Stateless. */
final class NotchLaw {
  private NotchLaw() {}

  static Formula strength(Specimen beam, double newtons) {
    return Formula.of(
        "3 F l / (2 b h_sp²)",
        "3 x {} x {} / (2 x {} x ({} - {})²)",
        n -> 3 * n[0] * n[1] / (2 * n[2] * (n[3] - n[4]) * (n[3] - n[4])),
        Term.newtons(newtons),
        Term.millimetres(size(beam, Dimension.SPAN)),
        Term.millimetres(size(beam, Dimension.WIDTH)),
        Term.millimetres(size(beam, Dimension.DEPTH)),
        Term.millimetres(size(beam, Dimension.NOTCH_DEPTH)));
  }

  private static double size(Specimen beam, Dimension dimension) {
    return beam.dimension(dimension).orElseThrow();
  }
}
