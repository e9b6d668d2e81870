package io.github.platenwire.live;

import io.github.platenwire.live.FollowedRow.Watch;
import io.github.platenwire.reading.Quality;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * From the readings of a raw file to loading cycles: sets each channel's readings at their moments,
 * sets lone impossible ones aside, finds the load's zero, puts the gauges onto the load's moments,
 * averages, and follows the cycles. Readings are given in the order of the raw file, whatever their
 * channel; the rows alone drive the clock, so that the same file gives the same doubles.
 *
 * <p>Constant work a reading on average, bounded memory, no allocation but at the marks of a cycle.
 * Not thread-safe.
 */
public final class StrainFeed {
  /** The filter holds one reading back; what a slow channel holds is at most this old. */
  private static final long HELD_MICROS = 1_000_000;

  private static final int MOST_AVERAGED = 4096;
  private static final int ALL_GAUGES = 1;

  private final ChordSettings settings;
  private final ZeroFinder zero;
  private final LoneReadingFilter loadFilter;
  private final List<LoneReadingFilter> gaugeFilters;
  private final LineTiming loadTiming;
  private final LineTiming[] gaugeTimings;
  private final Alignment alignment;
  private final StrainNoise noise;
  private final RowSmoother along;
  private final RowSmoother wide;
  private final RateWindow loadRate;
  private final RateWindow strainRate;
  private final ChordCycles cycles;
  private final CrackRow row = new CrackRow();
  private final CrackRow acrossRow = new CrackRow();
  private final boolean[] axial;
  private final int axialGauges;
  private double newtons = Double.NaN;
  private double greatest = Double.NEGATIVE_INFINITY;
  private long rows;
  private @Nullable Watch watch;

  /**
   * Starts with nothing read.
   *
   * @param settings how cycles are found
   * @param guards what looks at single readings
   * @param loadLine the load's line
   * @param gaugeLines the gauges' lines, as many as the settings have gauges
   * @param listener told of what happens
   * @throws IllegalArgumentException if the numbers of gauges differ or a number is out of range
   */
  public StrainFeed(
      ChordSettings settings,
      StrainGuards guards,
      CrackFeed.Line loadLine,
      List<CrackFeed.Line> gaugeLines,
      ChordListener listener) {
    int gauges = settings.axial().size();
    if (gaugeLines.size() != gauges || guards.gauges().size() != gauges) {
      throw new IllegalArgumentException(
          "there must be a line and a filter for each gauge, gauges="
              + gauges
              + " lines="
              + gaugeLines.size()
              + " filters="
              + guards.gauges().size());
    }
    this.settings = settings;
    zero = guards.zero();
    loadFilter = guards.load();
    gaugeFilters = List.copyOf(guards.gauges());
    axial = new boolean[gauges];
    for (int i = 0; i < gauges; i++) {
      axial[i] = settings.axial().get(i);
    }
    axialGauges = (int) settings.axial().stream().filter(each -> each).count();
    noise = new StrainNoise(settings);
    along = new RowSmoother(settings.smoothMicros(), MOST_AVERAGED);
    wide = new RowSmoother(settings.smoothMicros(), MOST_AVERAGED);
    loadRate = new RateWindow(guards.rates());
    strainRate = new RateWindow(guards.rates());
    cycles = new ChordCycles(settings, guards.rates().windowMicros(), listener);
    alignment =
        CrackFeed.alignment(
            held(loadLine), gaugeLines.stream().map(StrainFeed::held).toList(), this::aligned);
    loadTiming = CrackFeed.timing(loadLine, this::load);
    gaugeTimings = new LineTiming[gauges];
    Arrays.setAll(
        gaugeTimings,
        i ->
            CrackFeed.timing(
                gaugeLines.get(i), (seq, micros, value, over) -> gauge(i, seq, micros, value)));
  }

  private static CrackFeed.Line held(CrackFeed.Line line) {
    return new CrackFeed.Line(
        line.microsPerByte(),
        line.delayMicros(),
        line.burstMicros() + HELD_MICROS,
        line.gapMicros());
  }

  /**
   * Takes a reading of the load.
   *
   * @param seq its number in the raw file
   * @param stampMicros its stamp there
   * @param frameBytes length of its frame with terminator
   * @param value newtons; NaN where nothing could be decoded
   * @param quality only {@link Quality#OK} is used
   */
  public void loadReading(
      long seq, long stampMicros, int frameBytes, double value, Quality quality) {
    clock(stampMicros);
    loadTiming.accept(
        seq,
        stampMicros,
        frameBytes,
        quality == Quality.OK ? value : Double.NaN,
        /* over= */ false);
  }

  /**
   * Takes a reading of a gauge.
   *
   * @param gauge its index from 0
   * @param seq its number in the raw file
   * @param stampMicros its stamp there
   * @param frameBytes length of its frame with terminator
   * @param strain its value as a strain, rising under load; NaN where nothing could be decoded
   * @param quality only {@link Quality#OK} is used
   */
  public void gaugeReading(
      int gauge, long seq, long stampMicros, int frameBytes, double strain, Quality quality) {
    clock(stampMicros);
    gaugeTimings[gauge].accept(
        seq,
        stampMicros,
        frameBytes,
        quality == Quality.OK ? strain : Double.NaN,
        /* over= */ false);
  }

  private void clock(long stampMicros) {
    loadTiming.clock(stampMicros);
    for (LineTiming timing : gaugeTimings) {
      timing.clock(stampMicros);
    }
    alignment.clock(stampMicros);
  }

  private void load(long seq, long micros, double value, boolean over) {
    if (Double.isFinite(value) && loadFilter.accept(seq, micros, value)) {
      trustedLoad();
    }
  }

  private void trustedLoad() {
    long seq = loadFilter.seq();
    long micros = loadFilter.elapsedMicros();
    double value = loadFilter.value();
    noise.load(micros, value);
    if (zero.state() == ZeroFinder.State.SEEKING) {
      zero.accept(seq, micros, value);
    }
    if (isZeroed()) {
      newtons = value - zero.zero();
      greatest = Math.max(greatest, newtons);
      alignment.load(seq, micros, newtons);
    }
  }

  private void gauge(int gauge, long seq, long micros, double value) {
    LoneReadingFilter filter = gaugeFilters.get(gauge);
    if (Double.isFinite(value) && filter.accept(seq, micros, value)) {
      trustedGauge(gauge);
    }
  }

  private void trustedGauge(int gauge) {
    LoneReadingFilter filter = gaugeFilters.get(gauge);
    noise.gauge(gauge, filter.elapsedMicros(), filter.value());
    alignment.gauge(gauge, filter.seq(), filter.elapsedMicros(), filter.value());
  }

  private void aligned(AlignedRow aligned) {
    double strain = mean(aligned, /* across= */ false);
    double across = settings.hasAcross() ? mean(aligned, /* across= */ true) : Double.NaN;
    along.accept(aligned.seq(), aligned.micros(), aligned.loadNewtons(), strain, ALL_GAUGES, row);
    if (settings.hasAcross()) {
      wide.accept(
          aligned.seq(), aligned.micros(), aligned.loadNewtons(), across, ALL_GAUGES, acrossRow);
    }
    loadRate.accept(aligned.micros(), aligned.loadNewtons());
    if (Double.isNaN(strain)) {
      return;
    }
    rows++;
    strainRate.accept(aligned.micros(), strain);
    show(aligned, strain);
    cycles.accept(row, acrossRow.opening, loadRate.slope(), strainRate.slope());
  }

  private void show(AlignedRow aligned, double strain) {
    if (watch != null) {
      watch.row(FollowedRow.of(aligned, aligned.loadNewtons(), row, strain, /* stretch= */ 0));
    }
  }

  /** Shows each row from now on to whoever wants to tell afterwards how a figure came about. */
  public void watch(Watch rowWatch) {
    watch = rowWatch;
  }

  private double mean(AlignedRow aligned, boolean across) {
    double sum = 0;
    for (int i = 0; i < axial.length; i++) {
      if (axial[i] != across) {
        sum += aligned.millimetres(i);
      }
    }
    return sum / (across ? axial.length - axialGauges : axialGauges);
  }

  /** Nothing more will come: lets out what is held, and ends the cycle under way. */
  public void finish() {
    loadTiming.flush();
    if (loadFilter.flush()) {
      trustedLoad();
    }
    for (int i = 0; i < gaugeTimings.length; i++) {
      gaugeTimings[i].flush();
      if (gaugeFilters.get(i).flush()) {
        trustedGauge(i);
      }
    }
    alignment.flush();
    zero.settle();
    cycles.finish();
  }

  /** Whether the load's zero is taken, or none could be. */
  public boolean isZeroed() {
    return zero.state() != ZeroFinder.State.SEEKING;
  }

  /** The load's zero. */
  public ZeroFinder zero() {
    return zero;
  }

  /** Loads set aside. */
  public LoneReadingFilter loadFilter() {
    return loadFilter;
  }

  /** Readings of each gauge set aside. */
  public List<LoneReadingFilter> gaugeFilters() {
    return gaugeFilters;
  }

  /** The cycles that are over. */
  public List<ChordCycle> cycles() {
    return cycles.ended();
  }

  /** Whether as many cycles are over as were planned. */
  public boolean isComplete() {
    return cycles.endedCount() >= settings.planned();
  }

  /** How often the load came down between the two marks. */
  public int turnedBack() {
    return cycles.turnedBack();
  }

  /** Latest load, newtons, zero taken off, not averaged; NaN before there is a zero. */
  public double newtons() {
    return newtons;
  }

  /** Greatest load so far; negative infinity before there is a zero. */
  public double greatestNewtons() {
    return greatest;
  }

  /** How many rows had load and strain along the axis. */
  public long rows() {
    return rows;
  }

  /** What to show. */
  public StrainView view() {
    return new StrainView(
        rows == 0 ? Double.NaN : row.load,
        rows == 0 ? Double.NaN : row.opening - cycles.zeroStrain(),
        rows == 0 ? Double.NaN : acrossRow.opening - cycles.zeroAcross(),
        loadRate.slope(),
        cycles.current(),
        cycles.hasFirst(),
        cycles.hasPassed());
  }

  /** Noise of load and strains, averaged as they are used. */
  public StrainNoise noise() {
    return noise;
  }
}
