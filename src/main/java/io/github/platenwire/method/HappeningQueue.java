package io.github.platenwire.method;

import io.github.platenwire.live.ZeroFinder;
import io.github.platenwire.method.MethodRun.Happening;
import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;

/**
 * What happened in a test and was not asked for yet; loads in the load channel's unit. Allocates
 * only when something happens. Not thread-safe.
 */
final class HappeningQueue {
  private final Unit unit;
  private List<Happening> happenings = List.of();

  /** Of a test whose load channel has a unit. */
  HappeningQueue(Unit unit) {
    this.unit = unit;
  }

  void add(String text, boolean force) {
    if (happenings.isEmpty()) {
      happenings = new ArrayList<>();
    }
    happenings.add(new Happening(text, force));
  }

  /** How the zero of the load was found. */
  void addZero(ZeroFinder zero) {
    String word =
        switch (zero.state()) {
          case QUIET -> "zero";
          case SHORT -> "zero short";
          case NONE, SEEKING -> "zero missing";
        };
    add(word + " load=" + inUnit(zero.zero()) + " n=" + zero.readings(), false);
  }

  /** A load with its unit, such as {@code 12.4 unit=kN}. */
  String inUnit(double newtons) {
    return BothUnits.plain(unit.fromBase(newtons)) + " unit=" + unit.symbol();
  }

  /** What came since last asked, in order. */
  List<Happening> take() {
    List<Happening> taken = happenings;
    happenings = List.of();
    return taken;
  }
}
