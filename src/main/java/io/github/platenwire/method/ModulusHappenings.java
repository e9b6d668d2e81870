package io.github.platenwire.method;

import io.github.platenwire.live.ChordCycle;
import io.github.platenwire.live.ChordListener;
import io.github.platenwire.live.ZeroFinder;
import io.github.platenwire.method.MethodRun.Happening;
import io.github.platenwire.quantity.Unit;
import java.util.List;

/** Turns what loading cycles come to into the texts of event rows. Not thread-safe. */
final class ModulusHappenings implements ChordListener {
  private final HappeningQueue queue;
  private final double area;
  private final double strength;
  private double lastMegapascals = Double.NaN;
  private int lastCycle;

  /**
   * For one specimen.
   *
   * @param unit of the load channel
   * @param area cross-section, square millimetres
   * @param strength of the companions, megapascals
   */
  ModulusHappenings(Unit unit, double area, double strength) {
    queue = new HappeningQueue(unit);
    this.area = area;
    this.strength = strength;
  }

  List<Happening> take() {
    return queue.take();
  }

  private void happen(String text, boolean force) {
    queue.add(text, force);
  }

  void zeroSettled(ZeroFinder zero) {
    queue.addZero(zero);
  }

  void loading() {
    happen("loading", true);
  }

  void suspect(String channel, long seq) {
    happen("suspect " + channel + " seq=" + seq, false);
  }

  @Override
  public void firstMark(int cycle, ChordCycle.Mark mark) {
    happen("mark first cycle=" + cycle + strain(mark.strain()) + " " + load(mark.newtons()), false);
  }

  @Override
  public void secondMark(int cycle, ChordCycle.Mark first, ChordCycle.Mark second) {
    lastMegapascals =
        (second.newtons() - first.newtons()) / area / (second.strain() - first.strain());
    lastCycle = cycle;
    happen(
        "mark second cycle="
            + cycle
            + strain(second.strain())
            + " "
            + load(second.newtons())
            + " modulus="
            + BothUnits.plain(lastMegapascals)
            + " unit=MPa",
        true);
  }

  @Override
  public void noStrain(int cycle, double strain) {
    happen("no strain cycle=" + cycle + strain(strain), false);
  }

  @Override
  public void beyond(int cycle, double newtons) {
    happen(
        "beyond cycle="
            + cycle
            + " "
            + load(newtons)
            + " percent="
            + BothUnits.rounded(newtons / area / strength * 100, "0.1"),
        false);
  }

  @Override
  public void ended(ChordCycle cycle) {
    happen("cycle end=" + cycle.number() + (cycle.complete() ? "" : " short"), true);
  }

  @Override
  public void turnedBack(double greatestNewtons) {
    happen("turned back " + load(greatestNewtons), false);
  }

  private String load(double newtons) {
    return "load=" + queue.inUnit(newtons);
  }

  private static String strain(double strain) {
    return " strain="
        + BothUnits.rounded(Unit.MICROSTRAIN.fromBase(strain), "0.1")
        + " unit="
        + Unit.MICROSTRAIN.ucum();
  }

  double lastMegapascals() {
    return lastMegapascals;
  }

  int lastCycle() {
    return lastCycle;
  }
}
