package io.github.platenwire.live;

import io.github.platenwire.live.FollowedRow.Watch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Follows one crack: takes aligned rows in order and knows at any time its width, first cracks,
 * thresholds, virgin curve, cycles, holds, stiffness and work. Silent until it has its zeros; rows
 * from before them are passed over. What a gauge is worth it asks of {@link GaugeHealth}.
 *
 * <p>The same rows give the same doubles, live and afterwards. Constant work a row on average and
 * no allocation, but for what it tells its listener. Not thread-safe.
 */
public final class CrackTracker {
  private static final int CURVE_PLACES = 2048;
  private static final int SMOOTHED_ROWS = 1024;

  private final CrackSettings settings;
  private final GaugeHealth health;
  private final CrackListener listener;
  private final CrackWidth width;
  private final InitialLine line;
  private final RowSmoother smoother;
  private final CrackRow row = new CrackRow();
  private final GreatestLoadToWidth byWidth;
  private final DepartureFromLine byDeparture;
  private final Thresholds thresholds;
  private final LastingCrossing stop;
  private final VirginCurve curve;
  private final CrackedLine cracked;
  private final Cycles cycles;
  private final Holds holds;
  private final Work work = new Work();
  private final CrackUncertainty uncertainty;
  private final ZeroLevel[] gaugeZeros;
  private ZeroLevel loadZero = new ZeroLevel(Double.NaN, Double.NaN, 0, 0, 0);
  private boolean zeroed;
  private long zeroMicros;
  private double peak = Double.NaN;
  private long peakSeq;
  private long rows;
  private long rowsWithoutWidth;
  private @Nullable Watch watch;

  /**
   * Starts without zeros.
   *
   * @param settings how to follow it
   * @param health what the gauges are worth; fed by whoever reads them
   * @param listener told of what happens
   */
  public CrackTracker(CrackSettings settings, GaugeHealth health, CrackListener listener) {
    this.settings = settings;
    this.health = health;
    this.listener = listener;
    width = new CrackWidth(settings.gauges());
    line = new InitialLine(settings.gauges(), settings.fit());
    smoother = new RowSmoother(settings.smoothMicros(), SMOOTHED_ROWS);
    byWidth = new GreatestLoadToWidth(settings.smallWidthMillimetres(), settings.lasting());
    byDeparture = new DepartureFromLine(line, settings.departureFactor(), settings.lasting());
    thresholds = new Thresholds(settings.thresholds(), settings.lasting());
    stop = new LastingCrossing(settings.stopWidthMillimetres(), settings.lasting());
    curve = new VirginCurve(settings.curveStepNewtons(), CURVE_PLACES);
    cracked = new CrackedLine(settings.crackedFromMillimetres(), settings.crackedToMillimetres());
    cycles = new Cycles(settings.cycle());
    holds = new Holds(settings.hold());
    uncertainty = new CrackUncertainty(settings, line, curve, width);
    gaugeZeros = new ZeroLevel[settings.gauges().size()];
    Arrays.fill(gaugeZeros, loadZero);
  }

  /** Shows each row from now on to whoever wants to tell afterwards how a figure came about. */
  public void watch(Watch rowWatch) {
    watch = rowWatch;
  }

  /**
   * Sets the zeros; rows count from then on. Tells the health of each gauge, too.
   *
   * @param micros the moment from which rows count
   * @param load zero of the load; if unknown, 0 is taken
   * @param gauges zeros of the gauges; a gauge without one is left out
   * @throws IllegalStateException if there are zeros already
   */
  public void zero(long micros, ZeroLevel load, List<ZeroLevel> gauges) {
    if (zeroed) {
      throw new IllegalStateException("zeros are taken once, and were taken at " + zeroMicros);
    }
    zeroed = true;
    zeroMicros = micros;
    loadZero = load;
    uncertainty.loadNoise(load.isKnown() ? load.noise() : 0);
    for (int i = 0; i < gaugeZeros.length; i++) {
      gaugeZeros[i] = gauges.get(i);
      width.zero(i, gauges.get(i).value());
      uncertainty.zero(i, gauges.get(i));
      health.zero(i, micros, gauges.get(i).value(), gauges.get(i).noise());
    }
    listener.zeroTaken(load, List.copyOf(gauges));
  }

  /** Takes the next aligned row. */
  public void accept(AlignedRow aligned) {
    if (!zeroed || aligned.micros < zeroMicros || !Double.isFinite(aligned.load)) {
      return;
    }
    double load = aligned.load - (loadZero.isKnown() ? loadZero.value() : 0);
    int mask = health.maskAt(aligned.micros);
    width.accept(aligned, mask);
    double opening = health.isWithheldAt(aligned.micros) ? Double.NaN : width.opening();
    takePeak(aligned.seq, load);
    rows++;
    if (Double.isNaN(opening)) {
      rowsWithoutWidth++;
    } else {
      if (line.accept(aligned, load, width, mask)) {
        takeStretch(mask);
      }
      work.accept(aligned.seq, load, opening, mask);
    }
    smoother.accept(aligned.seq, aligned.micros, load, opening, mask, row);
    row.width = row.opening - width.compliance(mask) * row.load;
    show(aligned, load, opening);
    follow();
  }

  private void show(AlignedRow aligned, double load, double opening) {
    if (watch != null) {
      watch.row(FollowedRow.of(aligned, load, row, opening, width.compliance(row.mask)));
    }
  }

  private void takePeak(long seq, double load) {
    if (!(load <= peak)) {
      peak = load;
      peakSeq = seq;
    }
  }

  private void takeStretch(int mask) {
    if (!settings.takeOffStretch()) {
      return;
    }
    double before = width.compliance(mask);
    for (int i = 0; i < gaugeZeros.length; i++) {
      width.compliance(i, line.slope(i));
    }
    curve.takeOff(width.compliance(mask) - before);
  }

  private void follow() {
    if (cycles.accept(row)) {
      listener.cycleEnded(cycles.count());
    }
    if (holds.accept(row)) {
      listener.holdEnded(holds.count());
    }
    if (!row.hasWidth()) {
      return;
    }
    if (curve.accept(row)) {
      cracked.accept(row);
    }
    if (byDeparture.accept(row)) {
      line.freeze();
      takeStretch(row.mask);
      listener.firstCrackByDeparture(departureFigure());
    }
    if (byWidth.accept(row)) {
      listener.firstCrackByWidth(widthFigure());
    }
    if (thresholds.accept(row)) {
      tellCrossings();
    }
    if (stop.accept(row, row.width)) {
      listener.stopWidthReached();
    }
  }

  private void tellCrossings() {
    for (int i = 0; i < thresholds.size(); i++) {
      if (thresholds.isNew(i)) {
        listener.crossed(crossing(i));
      }
    }
  }

  private Thresholds.Crossing crossing(int index) {
    double load = thresholds.load(index);
    return thresholds.crossing(index, uncertainty.ofLoad(load, false));
  }

  private FirstCrack.Figure departureFigure() {
    return byDeparture.figure(uncertainty.loadNoise());
  }

  private FirstCrack.Figure widthFigure() {
    double atPeak = 2 * uncertainty.loadNoise() / Math.sqrt(Math.max(1, row.rows));
    double load = byWidth.load();
    return byWidth.isAtCrossing()
        ? byWidth.figure(uncertainty.ofLoad(load, true), uncertainty.newtonsPerOpening(load))
        : byWidth.figure(atPeak, 0);
  }

  private FirstCrack firstCrack() {
    return new FirstCrack(
        byWidth.isKnown() ? Optional.of(widthFigure()) : Optional.empty(),
        byDeparture.isKnown() ? Optional.of(departureFigure()) : Optional.empty());
  }

  /** Width where a load was reached for the first time; empty if it was not, or without a width. */
  public Optional<WidthAtLoad> widthAt(double newtons) {
    int place = curve.placeOf(newtons);
    if (place < 0) {
      return Optional.empty();
    }
    int upper = newtons > place * curve.step() ? place + 1 : place;
    return Optional.of(
        new WidthAtLoad(
            newtons,
            curve.widthAt(newtons),
            uncertainty.ofWidth(place, newtons),
            curve.mask(upper),
            curve.firstSeq(place),
            curve.lastSeq(upper)));
  }

  /** Load of the latest row, averaged like the width, zero taken off; 0 before the first. */
  public double loadNewtons() {
    return row.load;
  }

  /** Width of the latest row, millimetres; NaN while unknown. */
  public double widthMillimetres() {
    return row.width;
  }

  /** Mean opening of the latest row, millimetres; NaN while unknown. */
  public double openingMillimetres() {
    return row.opening;
  }

  /** Moment of the latest row, microseconds; 0 before the first. */
  public long micros() {
    return row.micros;
  }

  /** How many rows there were since the zero. */
  public long rows() {
    return rows;
  }

  /** Whether the stop width was reached lastingly. */
  public boolean isStopWidthReached() {
    return stop.isConfirmed();
  }

  /** What to show now; a new immutable value at each call. */
  public CrackView view() {
    List<Double> openings = new ArrayList<>();
    for (int i = 0; i < gaugeZeros.length; i++) {
      openings.add(width.opening(i));
    }
    Optional<CrackSettings.Threshold> next = thresholds.next();
    return new CrackView(
        row.seq,
        row.micros,
        rows == 0 ? Double.NaN : row.load,
        peak,
        openings,
        row.opening,
        row.width,
        width.rotation(),
        health.mask(),
        firstCrack(),
        next,
        next.map(threshold -> threshold.millimetres() - row.width).orElse(Double.NaN),
        cycles.isFalling(),
        holds.isHolding(),
        holds.creepNow(),
        cycles.count(),
        holds.count(),
        work.newtonMillimetres(),
        health.losses());
  }

  /**
   * The result from the rows so far.
   *
   * @param askedNewtons loads at which the width is asked for
   */
  public CrackResult result(List<Double> askedNewtons) {
    List<Thresholds.Crossing> crossings =
        thresholds.confirmed().stream().map(this::crossing).toList();
    List<WidthAtLoad> widths =
        askedNewtons.stream().flatMap(newtons -> widthAt(newtons).stream()).toList();
    return new CrackResult(
        peak,
        peakSeq,
        loadZero,
        Arrays.asList(gaugeZeros),
        firstCrack(),
        crossings,
        widths,
        curve.points(),
        Stiffness.of(line, cracked, health.mask(), settings.smoothMicros() > 0),
        cycles.kept(uncertainty),
        cycles.count(),
        holds.kept(uncertainty),
        holds.count(),
        work.newtonMillimetres(),
        work.firstSeq(),
        work.lastSeq(),
        health.losses(),
        health.mask(),
        rows,
        rowsWithoutWidth);
  }
}
