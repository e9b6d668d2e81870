package io.github.platenwire.method;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * The one channel that measures the load, with its figures in newtons. Immutable.
 *
 * @param index its place among the channels
 * @param facts what is known of it
 */
record LoadChannel(int index, ChannelFacts facts) {

  /**
   * Finds the load channel.
   *
   * @throws IllegalArgumentException unless exactly one channel measures a force
   */
  static LoadChannel find(List<ChannelFacts> channels) {
    int[] forces =
        IntStream.range(0, channels.size())
            .filter(i -> channels.get(i).quantity() == Quantity.FORCE)
            .toArray();
    if (forces.length != 1) {
      throw new IllegalArgumentException(
          "exactly one channel must measure a force, but "
              + (forces.length == 0 ? "none" : String.valueOf(forces.length))
              + " of "
              + channels.size()
              + " does: "
              + channels.stream().map(ChannelFacts::name).toList());
    }
    return new LoadChannel(forces[0], channels.get(forces[0]));
  }

  Unit unit() {
    return facts.unit();
  }

  double percentOfRange(double percent) {
    return unit().toBase(facts.rangeHigh()) * percent / 100;
  }

  double zeroToleranceNewtons() {
    return unit().toBase(facts.zeroTolerance());
  }

  OptionalDouble resolutionNewtons() {
    return inNewtons(facts.resolution());
  }

  OptionalDouble greatestSlopeNewtons() {
    return inNewtons(facts.greatestSlope());
  }

  private OptionalDouble inNewtons(OptionalDouble value) {
    return value.isPresent()
        ? OptionalDouble.of(unit().toBase(value.getAsDouble()))
        : OptionalDouble.empty();
  }
}
