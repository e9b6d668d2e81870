package io.github.platenwire.live;

import io.github.platenwire.reading.Quality;
import java.util.ArrayList;
import java.util.List;

/**
 * From the readings of a raw file to a followed crack: sets each channel's readings at their
 * moments, sets lone impossible loads aside, watches the gauges, finds the zeros, aligns, and feeds
 * a {@link CrackTracker}. Readings are given in the order of the raw file, whatever their channel;
 * the rows alone drive the clock, so that the same file gives the same doubles.
 *
 * <p>Zeros are taken when the load and every gauge have been quiet for long enough; if the load
 * comes on before, each takes what quiet readings it has, and a gauge with fewer than three is left
 * out. Constant work a reading on average and no allocation, but for what it tells its listener.
 * Not thread-safe.
 */
public final class CrackFeed {
  private static final int LEAST_BURST = 64;
  private static final double GREATEST_RATE = 1100;

  private final ZeroRule zeroRule;
  private final CrackListener listener;
  private final GaugeHealth health;
  private final CrackTracker tracker;
  private final Alignment alignment;
  private final LineTiming loadTiming;
  private final LoneRule loneRule;
  private final LoneReadingFilter filter;
  private final LineTiming[] gaugeTimings;
  private final ZeroSearch loadZero;
  private final ZeroSearch[] gaugeZeros;
  private boolean zeroed;
  private int lossesTold;
  private long loadMicros;

  /**
   * What is known of a channel's line.
   *
   * @param microsPerByte time of one byte on it, microseconds; 0 where there is no line
   * @param delayMicros from measuring to sending, microseconds
   * @param burstMicros longest time that a read may gather frames, and disorder between ports
   * @param gapMicros readings of a gauge further apart are not joined; for the load, the longest
   *     time between two readings that is provided for
   */
  public record Line(double microsPerByte, long delayMicros, long burstMicros, long gapMicros) {
    /** Most that a reading's moment can lie before the clock. */
    long lagMicros() {
      return delayMicros + burstMicros;
    }
  }

  /**
   * What counts as a zero.
   *
   * @param windowMicros how long a channel must be quiet, microseconds
   * @param quietNewtons greatest less least load while it is quiet, at most
   * @param riseNewtons the load has come on when it is above its quiet mean by this
   */
  public record ZeroRule(long windowMicros, double quietNewtons, double riseNewtons) {}

  /**
   * Starts with nothing read.
   *
   * @param settings how to follow the crack
   * @param zeroRule what counts as a zero
   * @param loneRule what the load cannot do between two readings
   * @param loadLine the load's line
   * @param gaugeLines the gauges' lines, as many as the settings have gauges
   * @param listener told of what happens
   * @throws IllegalArgumentException if the numbers of gauges differ or a number is out of range
   */
  public CrackFeed(
      CrackSettings settings,
      ZeroRule zeroRule,
      LoneRule loneRule,
      Line loadLine,
      List<Line> gaugeLines,
      CrackListener listener) {
    if (gaugeLines.size() != settings.gauges().size()) {
      throw new IllegalArgumentException(
          "there must be a line for each gauge, gauges="
              + settings.gauges().size()
              + " lines="
              + gaugeLines.size());
    }
    this.zeroRule = zeroRule;
    this.loneRule = loneRule;
    filter = loneRule.newFilter();
    this.listener = listener;
    health = new GaugeHealth(settings.gauges());
    tracker = new CrackTracker(settings, health, listener);
    alignment = alignment(loadLine, gaugeLines, tracker);
    loadTiming = timing(loadLine, this::load);
    loadZero = new ZeroSearch(zeroRule.quietNewtons(), zeroRule.windowMicros());
    gaugeTimings = new LineTiming[gaugeLines.size()];
    gaugeZeros = new ZeroSearch[gaugeLines.size()];
    for (int i = 0; i < gaugeTimings.length; i++) {
      int gauge = i;
      gaugeTimings[i] =
          timing(
              gaugeLines.get(i),
              (seq, micros, value, over) -> gauge(gauge, seq, micros, value, over));
      gaugeZeros[i] =
          new ZeroSearch(settings.gauges().get(i).quietSpread(), zeroRule.windowMicros());
    }
  }

  private static LineTiming timing(Line line, LineTiming.Sink sink) {
    int burst = LEAST_BURST + readingsIn(line.burstMicros());
    return new LineTiming(line.microsPerByte(), line.delayMicros(), burst, sink);
  }

  private static Alignment alignment(Line load, List<Line> gauges, CrackTracker tracker) {
    List<Alignment.GaugeLine> lines = new ArrayList<>();
    long longest = 0;
    long loadLag = load.lagMicros() + load.gapMicros();
    int kept = 2 * LEAST_BURST + 2 * readingsIn(loadLag);
    for (Line line : gauges) {
      lines.add(new Alignment.GaugeLine(line.gapMicros(), line.lagMicros(), kept));
      longest = Math.max(longest, line.lagMicros() + line.gapMicros());
    }
    int waiting = 2 * LEAST_BURST + 2 * readingsIn(longest);
    return new Alignment(lines, loadLag, waiting, tracker::accept);
  }

  private static int readingsIn(long micros) {
    return (int) Math.ceil(GREATEST_RATE * 1e-6 * micros);
  }

  /**
   * Takes a reading of the load.
   *
   * @param seq its number in the raw file
   * @param stampMicros its stamp there
   * @param frameBytes length of its frame with terminator
   * @param newtons its value; NaN where nothing could be decoded
   * @param quality only {@link Quality#OK} is used
   */
  public void loadReading(
      long seq, long stampMicros, int frameBytes, double newtons, Quality quality) {
    clock(stampMicros);
    double value = quality == Quality.OK ? newtons : Double.NaN;
    loadTiming.accept(seq, stampMicros, frameBytes, value, quality == Quality.OVER);
  }

  /**
   * Takes a reading of a gauge.
   *
   * @param gauge its index from 0
   * @param seq its number in the raw file
   * @param stampMicros its stamp there
   * @param frameBytes length of its frame with terminator
   * @param millimetres its value; NaN where nothing could be decoded
   * @param quality only {@link Quality#OK} is used; {@link Quality#OVER} tells a gauge at its end
   */
  public void gaugeReading(
      int gauge, long seq, long stampMicros, int frameBytes, double millimetres, Quality quality) {
    clock(stampMicros);
    boolean shown = quality == Quality.OK || quality == Quality.OVER;
    double value = shown ? millimetres : Double.NaN;
    gaugeTimings[gauge].accept(seq, stampMicros, frameBytes, value, quality == Quality.OVER);
  }

  private void clock(long stampMicros) {
    loadTiming.clock(stampMicros);
    for (LineTiming timing : gaugeTimings) {
      timing.clock(stampMicros);
    }
    health.clock(stampMicros);
    tellLosses();
    alignment.clock(stampMicros);
  }

  private void load(long seq, long micros, double value, boolean over) {
    if (!Double.isFinite(value)) {
      return;
    }
    long before = filter.suspectCount();
    if (filter.accept(seq, micros, value)) {
      trusted(filter.seq(), filter.elapsedMicros(), filter.value());
    }
    tellSuspect(before);
  }

  private void tellSuspect(long before) {
    if (filter.suspectCount() > before && filter.suspectCount() <= filter.suspects().size()) {
      listener.loadSuspect(filter.lastListedSuspect());
    }
  }

  private void trusted(long seq, long micros, double value) {
    loadMicros = micros;
    if (!zeroed) {
      if (loadZero.isLeftBy(value, zeroRule.riseNewtons())) {
        takeZeros();
      } else {
        loadZero.accept(seq, micros, value);
        takeZerosIfQuiet();
      }
    }
    alignment.load(seq, micros, value);
  }

  private void gauge(int gauge, long seq, long micros, double value, boolean over) {
    health.accept(gauge, seq, micros, value, over);
    tellLosses();
    if (over || !Double.isFinite(value)) {
      return;
    }
    if (!zeroed) {
      gaugeZeros[gauge].accept(seq, micros, value);
      takeZerosIfQuiet();
    }
    alignment.gauge(gauge, seq, micros, value);
  }

  private void takeZerosIfQuiet() {
    boolean all = loadZero.isFound();
    for (ZeroSearch search : gaugeZeros) {
      all &= search.isFound();
    }
    if (all) {
      takeZeros();
    }
  }

  private void takeZeros() {
    zeroed = true;
    List<ZeroLevel> levels = new ArrayList<>();
    for (ZeroSearch search : gaugeZeros) {
      levels.add(search.level());
    }
    ZeroLevel load = loadZero.level();
    filter.setMargin(loneRule.margin(load.isKnown() ? load.noise() : 0));
    tracker.zero(loadMicros, load, levels);
    tellLosses();
  }

  private void tellLosses() {
    if (health.lossCount() > lossesTold) {
      for (GaugeLoss loss : health.losses().subList(lossesTold, health.lossCount())) {
        listener.gaugeLost(loss);
      }
      lossesTold = health.lossCount();
    }
  }

  /** Nothing more will come: lets out what is held. */
  public void finish() {
    loadTiming.flush();
    long before = filter.suspectCount();
    if (filter.flush()) {
      trusted(filter.seq(), filter.elapsedMicros(), filter.value());
    }
    tellSuspect(before);
    for (LineTiming timing : gaugeTimings) {
      timing.flush();
    }
    alignment.flush();
  }

  /** How many lone readings of the load were set aside. */
  public long suspectCount() {
    return filter.suspectCount();
  }

  /** The numbers of the first of them. */
  public List<Long> suspects() {
    return filter.suspects();
  }

  /** Whether the zeros are taken. */
  public boolean isZeroed() {
    return zeroed;
  }

  /** The crack as followed so far. */
  public CrackTracker tracker() {
    return tracker;
  }

  /**
   * Load rows that went out without a gauge because too many waited; 0 unless rates are beyond 1
   * kHz.
   */
  public long overflows() {
    return alignment.overflows();
  }
}
