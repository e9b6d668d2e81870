package io.github.platenwire.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Watches every gauge and leaves out the unfit, each once and for good. A gauge is unfit when it
 *
 * <ul>
 *   <li>is silent for {@value #SILENT_MICROS} microseconds;
 *   <li>stands at the end of its range for two readings and {@value #END_MICROS} microseconds;
 *   <li>jumps by more than its greatest slope, noise and {@value #JITTER_MICROS} microseconds of
 *       jitter explain, stays there for {@value #JUMP_MICROS} microseconds, and no other gauge
 *       moved the same way by a fifth as much; the only gauge left must jump by {@value
 *       #LONE_MILLIMETRES} mm more, since a crack may open at once and nothing bears it out;
 *   <li>has shown the same value for {@value #STUCK_MICROS} microseconds while the others moved by
 *       more than four times what its noise and resolution hide, or for so many readings as its
 *       noise makes equal only once in 10^8 while the others moved by more than two steps and the
 *       noise. A lone gauge cannot be found stuck.
 * </ul>
 *
 * <p>A gauge that is silent or at its end or has jumped is <em>withheld</em> from its last good
 * reading on: no mean is formed until it is either cleared or left out, so it is never averaged in.
 * A stuck gauge is averaged in until it is seen; nothing tells it apart before. Rates below 2 Hz
 * are not provided for. The rules and their numbers are ours.
 *
 * <p>Constant work a reading and no allocation but for the loss itself. Not thread-safe.
 */
public final class GaugeHealth {
  static final long SILENT_MICROS = 800_000;
  static final long END_MICROS = 100_000;
  static final long JUMP_MICROS = 600_000;
  static final long STUCK_MICROS = 700_000;
  static final long CLOCK_STEP_MICROS = 500_000;
  private static final long LOOK_BACK_MICROS = 200_000;
  private static final double SHARE_OF_JUMP = 0.2;

  /** How far a stamp can be off against the one before it; USB adapters gather for 16 ms. */
  static final long JITTER_MICROS = 20_000;

  /** A crack may open by so much at once when no other gauge can bear it out. */
  static final double LONE_MILLIMETRES = 0.25;

  private static final int LEAST_EQUAL_READINGS = 3;

  private final GaugeState[] gauges;
  private final List<GaugeLoss> losses = new ArrayList<>();
  private final long[] leftOutFrom;
  private long clockMicros;
  private boolean hasClock;
  private boolean armed;
  private int mask;

  /** Starts with every gauge fit. */
  public GaugeHealth(List<GaugeLimits> limits) {
    gauges = new GaugeState[limits.size()];
    leftOutFrom = new long[limits.size()];
    for (int i = 0; i < gauges.length; i++) {
      gauges[i] = new GaugeState(limits.get(i), gauges.length);
    }
    mask = (1 << gauges.length) - 1;
  }

  /**
   * Sets a gauge's zero and its noise there, and starts judging it.
   *
   * @param zeroMillimetres its zero; NaN if it has none, and then it is left out at once
   * @param noiseMillimetres standard deviation of its readings at zero
   */
  public void zero(int gauge, long micros, double zeroMillimetres, double noiseMillimetres) {
    armed = true;
    if (Double.isNaN(zeroMillimetres)) {
      gauges[gauge].goodMicros = Long.MIN_VALUE;
      lose(gauge, GaugeFault.NO_ZERO, micros, 0, "gave no quiet zero before the load came on");
      return;
    }
    GaugeState state = gauges[gauge];
    state.zero = zeroMillimetres;
    state.setNoise(noiseMillimetres);
    state.goodMicros = micros;
  }

  /**
   * Takes a reading of a gauge.
   *
   * @param seq its number in the raw file
   * @param micros the moment to which it belongs
   * @param value millimetres; passed over if it is not finite, unless it is {@code over}
   * @param over whether the device said that it is beyond its range
   */
  public void accept(int gauge, long seq, long micros, double value, boolean over) {
    GaugeState state = gauges[gauge];
    if (state.lost || (!over && !Double.isFinite(value))) {
      return;
    }
    boolean first = !state.seen;
    state.seen = true;
    state.silentMicros = 0;
    if (!armed) {
      takeAsGood(state, micros, over ? state.lastValue : value);
      return;
    }
    if (isAtEnd(state, value, over)) {
      judgeEnd(gauge, seq, micros, value);
      return;
    }
    state.atEnd = false;
    state.lastValue = value;
    if (!first && isJump(state, micros, value)) {
      judgeJump(gauge, seq, micros, value);
    } else {
      state.jumping = false;
      takeAsGood(state, micros, value);
    }
    if (!state.lost) {
      judgeRun(gauge, seq, micros, value);
    }
  }

  /**
   * Time has come this far, as any channel's stamp tells; finds the silent. One step of the clock
   * counts as {@value #CLOCK_STEP_MICROS} microseconds at most, so that a halt of the whole machine
   * is not held against the gauge that happens to be read last after it.
   */
  public void clock(long micros) {
    long step = hasClock ? Math.min(CLOCK_STEP_MICROS, micros - clockMicros) : 0;
    clockMicros = hasClock ? Math.max(clockMicros, micros) : micros;
    hasClock = true;
    for (int i = 0; armed && step > 0 && i < gauges.length; i++) {
      GaugeState state = gauges[i];
      state.silentMicros += step;
      if (!state.lost && state.silentMicros > SILENT_MICROS) {
        double seconds = state.silentMicros * 1e-6;
        lose(i, GaugeFault.SILENT, micros, 0, words("nothing readable for %.2f s", seconds));
      }
    }
  }

  /** Others are remembered from a little earlier, since a delayed gauge sees a jump after them. */
  private void takeAsGood(GaugeState state, long micros, double value) {
    state.lastValue = value;
    state.goodValue = value;
    state.goodMicros = Math.max(state.goodMicros, micros);
    if (state.newerMicros == Long.MIN_VALUE || micros - state.newerMicros >= LOOK_BACK_MICROS) {
      System.arraycopy(state.othersNewer, 0, state.othersBefore, 0, gauges.length);
      copyOthers(state.othersNewer);
      state.newerMicros = micros;
    }
  }

  private void copyOthers(double[] target) {
    for (int i = 0; i < gauges.length; i++) {
      target[i] = gauges[i].lost ? Double.NaN : gauges[i].lastValue;
    }
  }

  private static boolean isAtEnd(GaugeState state, double value, boolean over) {
    double hidden = state.limits.resolution() / 2;
    return over
        || value >= state.limits.rangeHigh() - hidden
        || value <= state.limits.rangeLow() + hidden;
  }

  private void judgeEnd(int gauge, long seq, long micros, double value) {
    GaugeState state = gauges[gauge];
    if (!state.atEnd) {
      state.atEnd = true;
      state.endReadings = 0;
      state.endMicros = micros;
    }
    state.endReadings++;
    if (state.endReadings >= 2 && micros - state.endMicros >= END_MICROS) {
      String reason =
          Double.isFinite(value)
              ? words("stands at %.4f mm", value)
              : "says that it is beyond its range";
      lose(gauge, GaugeFault.SATURATED, micros, seq, reason);
    }
  }

  private boolean isJump(GaugeState state, long micros, double value) {
    double change = Math.abs(value - state.goodValue);
    if (state.jumping) {
      return change > Math.abs(state.jumpValue - state.goodValue) / 2;
    }
    double seconds = (Math.max(0, micros - state.goodMicros) + JITTER_MICROS) * 1e-6;
    double alone = Integer.bitCount(mask) == 1 ? LONE_MILLIMETRES : 0;
    return change > state.limits.greatestSlope() * seconds + state.margin() + alone;
  }

  private void judgeJump(int gauge, long seq, long micros, double value) {
    GaugeState state = gauges[gauge];
    if (!state.jumping) {
      state.jumping = true;
      state.jumpReadings = 0;
      state.jumpMicros = micros;
      state.jumpValue = value;
    }
    state.jumpReadings++;
    double jump = state.jumpValue - state.goodValue;
    if (othersMovedLike(gauge, jump)) {
      state.jumping = false;
      takeAsGood(state, micros, value);
    } else if (state.jumpReadings >= 2 && micros - state.jumpMicros >= JUMP_MICROS) {
      boolean below = jump < 0 && value < state.zero - state.margin();
      GaugeFault fault = below ? GaugeFault.FELL_OFF : GaugeFault.JUMPED;
      lose(gauge, fault, micros, seq, words("jumped by %.4f mm and stayed there", jump));
    }
  }

  private boolean othersMovedLike(int gauge, double jump) {
    for (int i = 0; i < gauges.length; i++) {
      double moved = gauges[i].lastValue - gauges[gauge].othersBefore[i];
      if (i != gauge
          && !gauges[i].lost
          && moved * Math.signum(jump) >= SHARE_OF_JUMP * Math.abs(jump)) {
        return true;
      }
    }
    return false;
  }

  private void judgeRun(int gauge, long seq, long micros, double value) {
    GaugeState state = gauges[gauge];
    if (!(Math.abs(value - state.runValue) <= state.limits.resolution() / 4)) {
      state.runValue = value;
      state.runReadings = 1;
      state.runMicros = micros;
      copyOthers(state.othersAtRunStart);
      return;
    }
    state.runReadings++;
    long span = micros - state.runMicros;
    if (span < STUCK_MICROS || state.runReadings < LEAST_EQUAL_READINGS) {
      return;
    }
    double moved = othersMoved(gauge);
    boolean byMovement = moved > 4 * state.margin();
    boolean byNoise =
        state.runReadings > state.equalReadingsAllowed
            && moved > 2 * state.limits.resolution() + state.noise;
    if (byMovement || byNoise) {
      state.goodMicros = micros;
      lose(gauge, GaugeFault.STUCK, micros, seq, words("has not changed for %.2f s", span * 1e-6));
    }
  }

  /** Mean movement of the other fit gauges since this one last changed; 0 if there is none. */
  private double othersMoved(int gauge) {
    double sum = 0;
    int count = 0;
    for (int i = 0; i < gauges.length; i++) {
      double moved = gauges[i].lastValue - gauges[gauge].othersAtRunStart[i];
      if (i != gauge && !gauges[i].lost && !Double.isNaN(moved)) {
        sum += Math.abs(moved);
        count++;
      }
    }
    return count == 0 ? 0 : sum / count;
  }

  private void lose(int gauge, GaugeFault fault, long micros, long seq, String reason) {
    GaugeState state = gauges[gauge];
    state.lost = true;
    mask &= ~(1 << gauge);
    leftOutFrom[gauge] = state.goodMicros;
    losses.add(new GaugeLoss(gauge, fault, reason, state.goodMicros, micros, seq));
  }

  private static String words(String format, double figure) {
    return String.format(Locale.ROOT, format, figure);
  }

  /**
   * The gauges that count at a moment, bit 0 for the first; the lost count up to their last good.
   */
  public int maskAt(long micros) {
    int result = mask;
    for (int i = 0; i < gauges.length; i++) {
      if (gauges[i].lost && micros <= leftOutFrom[i]) {
        result |= 1 << i;
      }
    }
    return result;
  }

  /** Whether a gauge that counts at that moment is under suspicion there. */
  public boolean isWithheldAt(long micros) {
    for (GaugeState state : gauges) {
      if (!state.lost && state.isSuspected() && micros > state.goodMicros) {
        return true;
      }
    }
    return false;
  }

  /** The gauges that still count, bit 0 for the first. */
  public int mask() {
    return mask;
  }

  /** What was lost so far, in order. */
  public List<GaugeLoss> losses() {
    return List.copyOf(losses);
  }

  /** How many were lost so far; no allocation. */
  public int lossCount() {
    return losses.size();
  }
}
