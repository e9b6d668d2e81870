package io.github.platenwire.method;

import io.github.platenwire.live.BandJudge;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.util.List;
import java.util.Optional;

/** One specimen broken by one load. Confined to the recorder thread. */
final class StrengthRun implements MethodRun, LoadFollower.Listener {
  private final StrengthRules rules;
  private final Specimen specimen;
  private final TestSetting setting;
  private final List<Method.Objection> objections;
  private final Section section;
  private final int loadChannel;
  private final Unit unit;
  private final HappeningQueue happenings;
  private final LoadFollower follower;
  private final Optional<LiveView.RateBand> band;
  private long lastSeq;
  private long lastMicros;
  private boolean finished;

  StrengthRun(
      StrengthRules rules,
      Specimen specimen,
      TestSetting setting,
      List<Method.Objection> objections) {
    this.rules = rules;
    this.specimen = specimen;
    this.setting = setting;
    this.objections = objections;
    this.section = rules.shape().section(specimen);
    LoadChannel channel = LoadChannel.find(setting.channels());
    this.loadChannel = channel.index();
    this.unit = channel.unit();
    this.happenings = new HappeningQueue(unit);
    this.band = Optional.of(rules.rate().shown());
    List<BandJudge.Band> bands =
        rules.rate().bands().stream().map(one -> inNewtons(one.limits())).toList();
    this.follower = new LoadFollower(rules.load(), channel, bands, this);
  }

  private BandJudge.Band inNewtons(LiveView.RateBand stresses) {
    return new BandJudge.Band(
        stresses.lowMegapascalsPerSecond() * section.newtonsPerMegapascal(),
        stresses.highMegapascalsPerSecond() * section.newtonsPerMegapascal());
  }

  @Override
  public void reading(long seq, long elapsedMicros, int channel, double value, Quality quality) {
    follower.time(elapsedMicros);
    if (channel != loadChannel) {
      return;
    }
    lastSeq = seq;
    lastMicros = elapsedMicros;
    if (quality == Quality.OVER) {
      follower.overRange();
    } else if (quality == Quality.OK && Double.isFinite(value)) {
      follower.reading(seq, elapsedMicros, unit.toBase(value));
    }
  }

  @Override
  public void time(long elapsedMicros) {
    follower.time(elapsedMicros);
  }

  @Override
  public List<Happening> takeHappenings() {
    return happenings.take();
  }

  @Override
  public void zeroSettled() {
    happenings.addZero(follower.zero());
  }

  @Override
  public void loading() {
    happenings.add("loading", true);
  }

  @Override
  public void broken() {
    happenings.add(
        "break peak="
            + happenings.inUnit(follower.peak().peak())
            + " seq="
            + follower.peak().peakSeq(),
        true);
  }

  @Override
  public void withdrawn() {
    happenings.add("break withdrawn", false);
  }

  @Override
  public void suspect(long seq) {
    happenings.add("suspect load seq=" + seq, false);
  }

  @Override
  public Optional<Ending> ending() {
    return follower.phase() == LiveView.Phase.ENDED ? Optional.of(Ending.BREAK) : Optional.empty();
  }

  @Override
  public LiveView view() {
    double load = follower.loadNewtons();
    double peak = follower.peak().peak();
    return new LiveView(
        follower.phase(),
        lastSeq,
        lastMicros,
        load,
        peak,
        load / section.newtonsPerMegapascal(),
        peak / section.newtonsPerMegapascal(),
        follower.rateNewtonsPerSecond() / section.newtonsPerMegapascal(),
        band,
        follower.phase() == LiveView.Phase.LOADING && !follower.breaks().isLow());
  }

  @Override
  public void show(Trail trail) {
    follower.judge().watch(trail::rate);
  }

  @Override
  public MethodResult finish() {
    if (finished) {
      throw new IllegalStateException("the result was already asked for");
    }
    finished = true;
    follower.finish();
    return new StrengthOutcome(rules, specimen, setting, objections, section, follower).result();
  }
}
