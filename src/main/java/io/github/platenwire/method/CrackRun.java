package io.github.platenwire.method;

import io.github.platenwire.live.CrackFeed;
import io.github.platenwire.live.CrackView;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** One beam whose crack is followed. Confined to the recorder thread. */
final class CrackRun implements MethodRun {
  /** A frame's terminator is not among its bytes as received; two are common (CR, LF). */
  private static final int TERMINATOR_BYTES = 2;

  /** Within this share of the greatest load the crack counts as on its first loading. */
  private static final double FIRST_LOADING = 0.99;

  private final CrackRules rules;
  private final Specimen specimen;
  private final TestSetting setting;
  private final List<Method.Objection> objections;
  private final LoadChannel load;
  private final List<GaugeChannel> gauges;
  private final int[] gaugeOfChannel;
  private final Unit[] units;
  private final CrackHappenings happenings;
  private final CrackFeed feed;
  private final LoadLost lost;
  private final OpeningRates rates;
  private final FallingSlopes slopes;
  private final List<LoadFall> falls = new ArrayList<>();
  private long lastSeq;
  private long lastMicros;
  private long rowsSeen;
  private long overReadings;
  private boolean ended;
  private boolean finished;
  private Trail trail = new Trail() {};

  CrackRun(
      CrackRules rules, Specimen specimen, TestSetting setting, List<Method.Objection> objections) {
    this.rules = rules;
    this.specimen = specimen;
    this.setting = setting;
    this.objections = objections;
    load = LoadChannel.find(setting.channels());
    gauges = GaugeChannel.find(setting.channels());
    gaugeOfChannel = new int[setting.channels().size()];
    Arrays.fill(gaugeOfChannel, -1);
    for (int i = 0; i < gauges.size(); i++) {
      gaugeOfChannel[gauges.get(i).index()] = i;
    }
    units = setting.channels().stream().map(ChannelFacts::unit).toArray(Unit[]::new);
    happenings = new CrackHappenings(rules, load, gauges);
    feed =
        new CrackFeed(
            rules.settings(gauges),
            rules.zeroRule(load),
            rules.loneRule(load),
            rules.line(load.facts()),
            gauges.stream().map(gauge -> rules.line(gauge.facts())).toList(),
            happenings);
    lost = new LoadLost(rules.lost());
    rates = new OpeningRates(rules.notch().map(CrackRules.Notch::rates).orElse(List.of()));
    slopes = new FallingSlopes(rules.thresholds());
  }

  @Override
  public void reading(long seq, long elapsedMicros, int channel, double value, Quality quality) {
    reading(seq, elapsedMicros, channel, 0, value, quality);
  }

  @Override
  public void reading(
      long seq, long elapsedMicros, int channel, int frameBytes, double value, Quality quality) {
    if (ended) {
      return;
    }
    lastSeq = seq;
    lastMicros = Math.max(lastMicros, elapsedMicros);
    overReadings += quality == Quality.OVER ? 1 : 0;
    int bytes = frameBytes + TERMINATOR_BYTES;
    double base = units[channel].toBase(value);
    if (channel == load.index()) {
      feed.loadReading(seq, elapsedMicros, bytes, base, quality);
    } else if (gaugeOfChannel[channel] >= 0) {
      feed.gaugeReading(gaugeOfChannel[channel], seq, elapsedMicros, bytes, base, quality);
    }
    follow();
  }

  private void follow() {
    long rows = feed.tracker().rows();
    if (rows == rowsSeen) {
      return;
    }
    rowsSeen = rows;
    long micros = feed.tracker().micros();
    double newtons = feed.tracker().loadNewtons();
    double width = feed.tracker().widthMillimetres();
    rates.accept(micros, feed.tracker().openingMillimetres());
    slopes.accept(newtons, width);
    switch (lost.accept(micros, newtons, width)) {
      case FELL -> fell(new LoadFall(micros, lost.greatestNewtons(), newtons, width));
      case LOST -> happenings.lost(lost.greatestNewtons(), width);
      case NONE -> {}
    }
    ended = feed.tracker().isStopWidthReached() || lost.isTailOver(micros);
  }

  private void fell(LoadFall fall) {
    happenings.fell(fall);
    if (falls.size() < LoadFall.MOST) {
      falls.add(fall);
    }
  }

  @Override
  public void time(long elapsedMicros) {
    ended |= lost.isTailOver(elapsedMicros);
  }

  @Override
  public List<Happening> takeHappenings() {
    return happenings.take();
  }

  @Override
  public Optional<Ending> ending() {
    if (!ended) {
      return Optional.empty();
    }
    return Optional.of(feed.tracker().isStopWidthReached() ? Ending.RANGE : Ending.BREAK);
  }

  @Override
  public LiveView view() {
    CrackView crack = feed.tracker().view();
    return new LiveView(
        phase(crack),
        lastSeq,
        lastMicros,
        crack.loadNewtons(),
        crack.peakNewtons(),
        Double.NaN,
        Double.NaN,
        Double.NaN,
        Optional.empty(),
        false,
        Optional.of(part(crack)));
  }

  private LiveView.Phase phase(CrackView crack) {
    if (ended) {
      return LiveView.Phase.ENDED;
    }
    if (lost.isLost()) {
      return LiveView.Phase.TAIL;
    }
    if (!feed.isZeroed()) {
      return LiveView.Phase.ZEROING;
    }
    boolean on = crack.peakNewtons() >= rules.fit().fromNewtons();
    return on ? LiveView.Phase.LOADING : LiveView.Phase.READY;
  }

  private CrackPart part(CrackView crack) {
    List<CrackPart.Gauge> shown = new ArrayList<>();
    for (int i = 0; i < gauges.size(); i++) {
      int gauge = i;
      Optional<String> fault =
          crack.losses().stream()
              .filter(loss -> loss.gauge() == gauge)
              .map(loss -> loss.fault().words())
              .findFirst();
      shown.add(new CrackPart.Gauge(gauges.get(i).name(), crack.openings().get(i), fault));
    }
    return new CrackPart(
        crack.micros(),
        shown,
        crack.opening(),
        crack.width(),
        crack.rotation(),
        crack.firstCrack().byDeparture().map(figure -> figure.newtons()),
        crack.firstCrack().bySmallWidth().map(figure -> figure.newtons()),
        crack.next().map(next -> next(next.millimetres(), crack.toNext())),
        crack.loadNewtons() >= FIRST_LOADING * lost.greatestNewtons(),
        state(crack),
        Optional.empty());
  }

  private CrackPart.Next next(double millimetres, double toGo) {
    String meaning =
        rules.thresholds().stream()
            .filter(threshold -> threshold.millimetres() == millimetres)
            .map(CrackRules.Threshold::meaning)
            .findFirst()
            .orElse("");
    return new CrackPart.Next(millimetres, meaning, toGo);
  }

  private static String state(CrackView crack) {
    if (crack.holding()) {
      return "holding, creep " + BothUnits.fixed(crack.creep(), 3) + " mm";
    }
    return crack.unloading() ? "unloading, cycle " + (crack.cycles() + 1) : "";
  }

  @Override
  public void show(Trail shown) {
    trail = shown;
    feed.tracker().watch(shown::row);
  }

  @Override
  public MethodResult finish() {
    if (finished) {
      throw new IllegalStateException("the result was already asked for");
    }
    finished = true;
    feed.finish();
    follow();
    return new CrackOutcome(rules, specimen, setting, objections, load, gauges)
        .result(
            feed.tracker(),
            rates,
            slopes,
            new CrackFaults(overReadings, feed.suspects(), feed.suspectCount(), falls),
            trail);
  }
}
