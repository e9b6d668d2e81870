package io.github.platenwire.method;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One channel that reads the strain of a specimen, or the change of a length on it. Immutable.
 *
 * @param index its place among the channels
 * @param facts what is known of it
 * @param mount how it sits on the specimen
 * @param gaugeLengthMillimetres between its points; NaN for a channel that reads strain
 */
record StrainGauge(int index, ChannelFacts facts, GaugeMount mount, double gaugeLengthMillimetres) {
  /** Most gauges that one specimen may have. */
  static final int MOST = 8;

  /** Every channel that reads a strain or a length, in order. */
  static List<StrainGauge> find(List<ChannelFacts> channels, Specimen specimen) {
    List<StrainGauge> found = new ArrayList<>();
    for (int i = 0; i < channels.size(); i++) {
      ChannelFacts facts = channels.get(i);
      if (facts.quantity() == Quantity.STRAIN || facts.quantity() == Quantity.LENGTH) {
        GaugeMount mount = facts.mount().orElse(GaugeMount.PLAIN);
        found.add(new StrainGauge(i, facts, mount, gaugeLength(facts, mount, specimen)));
      }
    }
    return List.copyOf(found);
  }

  /** The rig's; else along the axis the specimen's own, across it the diameter. */
  private static double gaugeLength(ChannelFacts facts, GaugeMount mount, Specimen specimen) {
    if (facts.quantity() == Quantity.STRAIN) {
      return Double.NaN;
    }
    OptionalDouble otherwise =
        mount.across()
            ? specimen.diametersMillimetres().stream().mapToDouble(each -> each).average()
            : specimen.dimension(Dimension.GAUGE_LENGTH);
    return mount.gaugeLengthMillimetres().orElse(otherwise.orElse(Double.NaN));
  }

  String name() {
    return facts.name();
  }

  boolean across() {
    return mount.across();
  }

  boolean readsLength() {
    return facts.quantity() == Quantity.LENGTH;
  }

  /** Whether a strain can be had of it. */
  boolean isComplete() {
    return !readsLength() || gaugeLengthMillimetres > 0;
  }

  private double perBase() {
    double size = readsLength() ? 1 / (gaugeLengthMillimetres * mount.lever()) : 1;
    return mount.rises() ? size : -size;
  }

  /** A value in the channel's unit as a strain that rises under load. */
  double strain(double value) {
    return unit().toBase(value) * perBase();
  }

  /** A strain as a change of the channel's reading, in its unit. */
  double reading(double strain) {
    return unit().fromBase(strain / perBase());
  }

  /** A step or slope in the channel's unit as one of strain, above 0. */
  double size(double value) {
    return Math.abs(strain(value));
  }

  private Unit unit() {
    return facts.unit();
  }
}
