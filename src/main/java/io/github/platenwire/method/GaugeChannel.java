package io.github.platenwire.method;

import io.github.platenwire.live.GaugeLimits;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One channel that measures the opening of a crack. Immutable.
 *
 * @param index its place among the channels
 * @param facts what is known of it
 */
record GaugeChannel(int index, ChannelFacts facts) {
  /** Most gauges that one crack may have. */
  static final int MOST = 8;

  /** Every channel that measures a length, in order. */
  static List<GaugeChannel> find(List<ChannelFacts> channels) {
    List<GaugeChannel> found = new ArrayList<>();
    for (int i = 0; i < channels.size(); i++) {
      if (channels.get(i).quantity() == Quantity.LENGTH) {
        found.add(new GaugeChannel(i, channels.get(i)));
      }
    }
    return List.copyOf(found);
  }

  String name() {
    return facts.name();
  }

  Unit unit() {
    return facts.unit();
  }

  GaugeLimits limits(int face, CrackRules.Gauge otherwise, double quietMillimetres) {
    OptionalDouble step = facts.resolution();
    OptionalDouble slope = facts.greatestSlope();
    return new GaugeLimits(
        face,
        unit().toBase(facts.rangeLow()),
        unit().toBase(facts.rangeHigh()),
        step.isPresent() ? unit().toBase(step.getAsDouble()) : otherwise.resolution(),
        slope.isPresent() ? unit().toBase(slope.getAsDouble()) : otherwise.slope(),
        quietMillimetres);
  }
}
