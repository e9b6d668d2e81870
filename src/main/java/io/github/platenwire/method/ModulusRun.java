package io.github.platenwire.method;

import io.github.platenwire.live.LoneReadingFilter;
import io.github.platenwire.live.StrainFeed;
import io.github.platenwire.live.StrainGuards;
import io.github.platenwire.live.StrainView;
import io.github.platenwire.live.ZeroFinder;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** One cylinder whose modulus is measured. Confined to the recorder thread. */
final class ModulusRun implements MethodRun {
  /** A frame's terminator is not among its bytes as received; two are common (CR, LF). */
  private static final int TERMINATOR_BYTES = 2;

  private final ModulusRules rules;
  private final Specimen specimen;
  private final TestSetting setting;
  private final List<Method.Objection> objections;
  private final Section section;
  private final LoadChannel load;
  private final Unit loadUnit;
  private final List<StrainGauge> gauges;
  private final int[] gaugeOfChannel;
  private final long[] suspectsTold;
  private final ModulusHappenings happenings;
  private final StrainFeed feed;
  private long loadSuspectsTold;
  private long lastSeq;
  private long lastMicros;
  private long completeMicros = Long.MAX_VALUE;
  private long overReadings;
  private boolean zeroTold;
  private boolean loadingTold;
  private boolean ended;
  private boolean finished;
  private Trail trail = new Trail() {};

  ModulusRun(
      ModulusRules rules,
      Specimen specimen,
      TestSetting setting,
      List<Method.Objection> objections) {
    this.rules = rules;
    this.specimen = specimen;
    this.setting = setting;
    this.objections = objections;
    section = rules.shape().section(specimen);
    load = LoadChannel.find(setting.channels());
    loadUnit = load.unit();
    gauges = StrainGauge.find(setting.channels(), specimen);
    gaugeOfChannel = new int[setting.channels().size()];
    Arrays.fill(gaugeOfChannel, -1);
    for (int i = 0; i < gauges.size(); i++) {
      gaugeOfChannel[gauges.get(i).index()] = i;
    }
    suspectsTold = new long[gauges.size()];
    happenings =
        new ModulusHappenings(
            loadUnit,
            section.newtonsPerMegapascal(),
            specimen.dimension(Dimension.COMPANION_STRENGTH).orElseThrow());
    feed =
        new StrainFeed(
            rules.settings(specimen, section.newtonsPerMegapascal(), gauges),
            new StrainGuards(
                rules.load().newZeroFinder(load),
                rules.load().newFilter(load),
                gauges.stream().map(this::filter).toList(),
                rules.load().windowSettings()),
            rules.line(load.facts()),
            gauges.stream().map(gauge -> rules.line(gauge.facts())).toList(),
            happenings);
  }

  private LoneReadingFilter filter(StrainGauge gauge) {
    double slope =
        gauge.facts().greatestSlope().isPresent()
            ? gauge.size(gauge.facts().greatestSlope().getAsDouble())
            : rules.gauge().slope();
    return rules.load().newFilter(slope, rules.gauge().jump());
  }

  @Override
  public void reading(long seq, long elapsedMicros, int channel, double value, Quality quality) {
    reading(seq, elapsedMicros, channel, 0, value, quality);
  }

  @Override
  public void reading(
      long seq, long elapsedMicros, int channel, int frameBytes, double value, Quality quality) {
    time(elapsedMicros);
    if (ended) {
      return;
    }
    lastSeq = seq;
    lastMicros = Math.max(lastMicros, elapsedMicros);
    int bytes = frameBytes + TERMINATOR_BYTES;
    int gauge = gaugeOfChannel[channel];
    if (channel == load.index()) {
      overReadings += quality == Quality.OVER ? 1 : 0;
      feed.loadReading(seq, elapsedMicros, bytes, loadUnit.toBase(value), quality);
    } else if (gauge >= 0) {
      feed.gaugeReading(gauge, seq, elapsedMicros, bytes, gauges.get(gauge).strain(value), quality);
    }
    follow(elapsedMicros);
  }

  private void follow(long elapsedMicros) {
    if (!zeroTold && feed.isZeroed()) {
      zeroTold = true;
      feed.loadFilter().setMargin(rules.load().marginNewtons(load, feed.zero().noise()));
      happenings.zeroSettled(feed.zero());
    }
    if (!loadingTold && isLoaded()) {
      loadingTold = true;
      happenings.loading();
    }
    loadSuspectsTold = tell(load.facts().name(), feed.loadFilter(), loadSuspectsTold);
    for (int i = 0; i < suspectsTold.length; i++) {
      suspectsTold[i] = tell(gauges.get(i).name(), feed.gaugeFilters().get(i), suspectsTold[i]);
    }
    if (completeMicros == Long.MAX_VALUE && feed.isComplete()) {
      completeMicros = elapsedMicros;
    }
  }

  private long tell(String channel, LoneReadingFilter filter, long told) {
    long count = filter.suspectCount();
    if (count > told && filter.lastListedSuspect() > 0) {
      happenings.suspect(channel, filter.lastListedSuspect());
    }
    return count;
  }

  private boolean isLoaded() {
    return feed.greatestNewtons() >= rules.load().loadOnNewtons(load, feed.zero().noise());
  }

  @Override
  public void time(long elapsedMicros) {
    ended |= elapsedMicros - rules.cycles().tailMicros() >= completeMicros;
  }

  @Override
  public List<Happening> takeHappenings() {
    return happenings.take();
  }

  @Override
  public Optional<Ending> ending() {
    return ended ? Optional.of(Ending.COMPLETE) : Optional.empty();
  }

  @Override
  public LiveView view() {
    StrainView view = feed.view();
    double area = section.newtonsPerMegapascal();
    double newtons = feed.newtons();
    double greatest = feed.isZeroed() ? feed.greatestNewtons() : Double.NaN;
    return new LiveView(
        phase(),
        lastSeq,
        lastMicros,
        newtons,
        greatest,
        newtons / area,
        greatest / area,
        view.newtonsPerSecond() / area,
        Optional.of(rules.rate().shown()),
        view.firstMarked() && !view.secondPassed(),
        Optional.of(part(view)));
  }

  private LiveView.Phase phase() {
    if (ended) {
      return LiveView.Phase.ENDED;
    }
    if (!feed.isZeroed()) {
      return LiveView.Phase.ZEROING;
    }
    return loadingTold ? LiveView.Phase.LOADING : LiveView.Phase.READY;
  }

  private ChordPart part(StrainView view) {
    return new ChordPart(
        view.strain(),
        gauges.stream().anyMatch(StrainGauge::across)
            ? Optional.of(view.across())
            : Optional.empty(),
        view.cycle(),
        rules.cycles().planned(),
        next(view),
        rules.chord().firstStrain(),
        rules.secondStress(specimen) * section.newtonsPerMegapascal(),
        happenings.lastMegapascals(),
        happenings.lastCycle());
  }

  private ChordPart.Next next(StrainView view) {
    if (feed.isComplete()) {
      return ChordPart.Next.DONE;
    }
    if (view.secondPassed()) {
      return ChordPart.Next.UNLOAD;
    }
    return view.firstMarked() ? ChordPart.Next.SECOND_MARK : ChordPart.Next.FIRST_MARK;
  }

  @Override
  public void show(Trail shown) {
    trail = shown;
    feed.watch(shown::row);
  }

  @Override
  public MethodResult finish() {
    if (finished) {
      throw new IllegalStateException("the result was already asked for");
    }
    finished = true;
    feed.finish();
    trail.cycles(feed.cycles());
    ZeroFinder zero = feed.zero();
    return new ModulusOutcome(rules, specimen, setting, section, load, gauges)
        .result(feed, zero, objections, overReadings);
  }
}
