package io.github.platenwire.method;

import io.github.platenwire.live.CrackListener;
import io.github.platenwire.live.FirstCrack;
import io.github.platenwire.live.GaugeLoss;
import io.github.platenwire.live.Thresholds;
import io.github.platenwire.live.ZeroLevel;
import io.github.platenwire.method.MethodRun.Happening;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Words what happens to a crack as the text of event rows. Confined to the recorder thread. */
final class CrackHappenings implements CrackListener {
  private final CrackRules rules;
  private final LoadChannel load;
  private final List<GaugeChannel> gauges;
  private List<Happening> waiting = List.of();

  CrackHappenings(CrackRules rules, LoadChannel load, List<GaugeChannel> gauges) {
    this.rules = rules;
    this.load = load;
    this.gauges = gauges;
  }

  List<Happening> take() {
    List<Happening> taken = waiting;
    waiting = List.of();
    return taken;
  }

  private void happen(String text, boolean force) {
    if (waiting.isEmpty()) {
      waiting = new ArrayList<>();
    }
    waiting.add(new Happening(text, force));
  }

  @Override
  public void zeroTaken(ZeroLevel loadZero, List<ZeroLevel> gaugeZeros) {
    happen(zero(load.facts(), loadZero), true);
    for (int i = 0; i < gauges.size(); i++) {
      happen(zero(gauges.get(i).facts(), gaugeZeros.get(i)), false);
    }
  }

  private static String zero(ChannelFacts channel, ZeroLevel level) {
    return level.isKnown()
        ? "zero "
            + channel.name()
            + "="
            + BothUnits.plain(channel.unit().fromBase(level.value()))
            + " unit="
            + ascii(channel.unit().symbol())
            + " n="
            + level.readings()
        : "zero missing " + channel.name();
  }

  /** Event rows are printable ASCII; the micro sign is written as u. */
  private static String ascii(String symbol) {
    return symbol.replace('µ', 'u');
  }

  @Override
  public void loadSuspect(long seq) {
    happen("suspect " + load.facts().name() + " seq=" + seq, false);
  }

  @Override
  public void gaugeLost(GaugeLoss loss) {
    happen(
        "gauge lost "
            + gauges.get(loss.gauge()).name()
            + " reason="
            + loss.fault().name().toLowerCase(Locale.ROOT).replace('_', '-')
            + (loss.seq() > 0 ? " seq=" + loss.seq() : ""),
        true);
  }

  @Override
  public void firstCrackByWidth(FirstCrack.Figure figure) {
    happen(
        "first crack width="
            + BothUnits.plain(rules.smallWidth())
            + " mm load="
            + newtons(figure.newtons()),
        true);
  }

  @Override
  public void firstCrackByDeparture(FirstCrack.Figure figure) {
    happen("first crack departure load=" + newtons(figure.newtons()), true);
  }

  @Override
  public void crossed(Thresholds.Crossing crossing) {
    happen(
        "threshold " + crossing.threshold().label() + " load=" + newtons(crossing.newtons()), true);
  }

  @Override
  public void cycleEnded(long cycles) {
    happen("cycle " + cycles, false);
  }

  @Override
  public void holdEnded(long holds) {
    happen("hold " + holds, false);
  }

  @Override
  public void stopWidthReached() {
    happen("stop width " + BothUnits.plain(rules.stopWidth()) + " mm", true);
  }

  void fell(LoadFall fall) {
    happen(
        "load fell load="
            + newtons(fall.toNewtons())
            + " from="
            + newtons(fall.fromNewtons())
            + " width="
            + BothUnits.fixed(fall.widthMillimetres(), 3)
            + " mm",
        false);
  }

  void lost(double peakNewtons, double width) {
    happen(
        "load lost peak=" + newtons(peakNewtons) + " width=" + BothUnits.fixed(width, 3) + " mm",
        true);
  }

  private String newtons(double newtons) {
    return BothUnits.plain(load.unit().fromBase(newtons)) + " unit=" + load.unit().symbol();
  }
}
