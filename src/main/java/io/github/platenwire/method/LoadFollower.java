package io.github.platenwire.method;

import io.github.platenwire.live.BandJudge;
import io.github.platenwire.live.BreakDetector;
import io.github.platenwire.live.LoneReadingFilter;
import io.github.platenwire.live.PeakTracker;
import io.github.platenwire.live.RateWindow;
import io.github.platenwire.live.SmallestStep;
import io.github.platenwire.live.ZeroFinder;
import java.util.List;

/**
 * Follows one load from its zero over its peak to its loss. Readings go through the filter for lone
 * ones first, so everything but the load shown is one reading behind the stream.
 *
 * <p>Calls of {@link #time} may only end a test, at a moment that is fixed by the readings before
 * it; each reading implies one. So it makes no difference to the result whether and how often it
 * was called. After the end readings are passed over. Not thread-safe.
 */
final class LoadFollower {
  private final LoadRules rules;
  private final LoadChannel channel;
  private final Listener listener;
  private final LoneReadingFilter filter;
  private final ZeroFinder zero;
  private final RateWindow window;
  private final PeakTracker peak = new PeakTracker();
  private final BreakDetector breaks;
  private final BandJudge judge;
  private final SmallestStep step = new SmallestStep();
  private ZeroFinder zeroAfter;
  private LiveView.Phase phase = LiveView.Phase.ZEROING;
  private double loadOnNewtons;
  private double rawNewtons = Double.NaN;
  private double rateAtPeak = Double.NaN;
  private long intervalAtPeakMicros;
  private long overReadings;

  LoadFollower(
      LoadRules rules, LoadChannel channel, List<BandJudge.Band> bands, Listener listener) {
    this.rules = rules;
    this.channel = channel;
    this.listener = listener;
    this.filter = rules.newFilter(channel);
    this.zero = rules.newZeroFinder(channel);
    this.zeroAfter = rules.newZeroAfterFinder(channel);
    this.window = rules.newWindow();
    this.breaks = rules.newBreakDetector(channel);
    this.judge = new BandJudge(rules.windowMicros(), bands);
  }

  /** Told of what happens, at the reading that brings it about. */
  interface Listener {
    void zeroSettled();

    void loading();

    void broken();

    void withdrawn();

    void suspect(long seq);
  }

  /** The next reading of the load channel that can be trusted so far as its frame goes. */
  void reading(long seq, long elapsedMicros, double newtons) {
    if (phase == LiveView.Phase.ENDED) {
      return;
    }
    rawNewtons = newtons;
    step.accept(newtons);
    long suspectsBefore = filter.suspectCount();
    if (filter.accept(seq, elapsedMicros, newtons)) {
      trusted();
    }
    tellOfSuspect(suspectsBefore);
  }

  /** A reading beyond the range of the channel. */
  void overRange() {
    if (phase != LiveView.Phase.ENDED) {
      overReadings++;
    }
  }

  /** Ends the test if its tail is over. */
  void time(long elapsedMicros) {
    if (phase == LiveView.Phase.ENDED || !breaks.isLow()) {
      return;
    }
    long end = tailEndMicros();
    if (elapsedMicros >= end) {
      finish();
      phase = LiveView.Phase.ENDED;
    }
  }

  private long tailEndMicros() {
    if (!filter.holdsTrustworthy()) {
      return breaks.tailEndMicros();
    }
    return breaks.tailEndMicrosWith(filter.heldMicros(), filter.heldValue() - zero.zero());
  }

  /** Takes in what is still held back; no more readings come. */
  void finish() {
    if (phase == LiveView.Phase.ENDED) {
      return;
    }
    long suspectsBefore = filter.suspectCount();
    if (filter.flush()) {
      trusted();
    }
    tellOfSuspect(suspectsBefore);
    if (phase == LiveView.Phase.ZEROING) {
      zero.settle();
    }
  }

  private void tellOfSuspect(long before) {
    if (filter.suspectCount() > before && filter.suspectCount() <= filter.suspects().size()) {
      listener.suspect(filter.lastListedSuspect());
    }
  }

  private void trusted() {
    if (phase == LiveView.Phase.ZEROING && !settleZero()) {
      return;
    }
    load(filter.seq(), filter.elapsedMicros(), filter.value() - zero.zero());
  }

  private boolean settleZero() {
    ZeroFinder.State state = zero.accept(filter.seq(), filter.elapsedMicros(), filter.value());
    if (state == ZeroFinder.State.SEEKING) {
      return false;
    }
    filter.setMargin(rules.marginNewtons(channel, zero.noise()));
    loadOnNewtons = rules.loadOnNewtons(channel, zero.noise());
    phase = LiveView.Phase.READY;
    listener.zeroSettled();
    return true;
  }

  private void load(long seq, long elapsedMicros, double newtons) {
    window.accept(elapsedMicros, newtons);
    if (peak.accept(seq, elapsedMicros, newtons)) {
      rateAtPeak = window.slope();
      intervalAtPeakMicros = window.meanIntervalMicros();
    }
    if (phase == LiveView.Phase.READY && newtons >= loadOnNewtons) {
      phase = LiveView.Phase.LOADING;
      listener.loading();
    }
    if (phase == LiveView.Phase.LOADING || phase == LiveView.Phase.TAIL) {
      followLoading(seq, elapsedMicros, newtons);
    }
  }

  private void followLoading(long seq, long elapsedMicros, double newtons) {
    judge.accept(elapsedMicros, newtons, window.slope());
    switch (breaks.accept(seq, elapsedMicros, newtons)) {
      case BREAK -> {
        phase = LiveView.Phase.TAIL;
        zeroAfter = rules.newZeroAfterFinder(channel);
        listener.broken();
      }
      case WITHDRAWN -> {
        phase = LiveView.Phase.LOADING;
        listener.withdrawn();
      }
      case NONE -> {}
    }
    if (phase == LiveView.Phase.TAIL) {
      zeroAfter.accept(seq, elapsedMicros, newtons);
    }
  }

  LiveView.Phase phase() {
    return phase;
  }

  LoadChannel channel() {
    return channel;
  }

  ZeroFinder zero() {
    return zero;
  }

  /** Finds the zero after the break, zero taken off; QUIET if it was seen. */
  ZeroFinder zeroAfter() {
    return zeroAfter;
  }

  PeakTracker peak() {
    return peak;
  }

  BreakDetector breaks() {
    return breaks;
  }

  BandJudge judge() {
    return judge;
  }

  LoneReadingFilter filter() {
    return filter;
  }

  /** Load of the latest reading, zero taken off; NaN before there is a zero. */
  double loadNewtons() {
    return phase == LiveView.Phase.ZEROING ? Double.NaN : rawNewtons - zero.zero();
  }

  /** Rate of loading now, newtons a second; NaN while unknown. */
  double rateNewtonsPerSecond() {
    return window.slope();
  }

  /** Whether a specimen was loaded. */
  boolean wasLoaded() {
    return phase != LiveView.Phase.ZEROING && phase != LiveView.Phase.READY;
  }

  /** How far the true peak can lie above the greatest reading, newtons; NaN if unknown. */
  double samplingBoundNewtons() {
    return peak.samplingBound(rateAtPeak, intervalAtPeakMicros);
  }

  /** Resolution of the readings, newtons: as the rig file has it, else as seen; NaN if neither. */
  double resolutionNewtons() {
    return channel.resolutionNewtons().orElse(step.value());
  }

  /** How many readings were beyond the range. */
  long overReadings() {
    return overReadings;
  }
}
