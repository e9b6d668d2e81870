package io.github.platenwire.live;

import io.github.platenwire.reading.Quality;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;

/**
 * A split beam with a known truth: elastic up to first crack, then a jump and a width that grows
 * with a power of the load beyond it (bond-controlled), part of it staying on unloading, creep in
 * holds, two faces opening unequally. Invented; the same seed gives the same readings.
 */
final class SyntheticBeam {
  final double crackNewtons;
  final double[] compliance;
  double jump;
  double power;
  double widthAtTwice;
  double residualShare = 0.3;
  double faceDifference;
  double gaugeNoise;
  double gaugeResolution;
  double loadNoise;
  double loadResolution;
  double creepShare;
  double[] gaugeRates = {10, 60};
  double loadRate = 100;
  long[] delays = {0, 0};
  final List<double[]> path = new ArrayList<>();
  final List<double[]> holds = new ArrayList<>();

  SyntheticBeam(double crackNewtons, double... compliance) {
    this.crackNewtons = crackNewtons;
    this.compliance = compliance;
    path.add(new double[] {0, 0});
  }

  void to(double newtons, double newtonsPerSecond) {
    double[] last = path.get(path.size() - 1);
    double seconds = Math.abs(newtons - last[1]) / newtonsPerSecond;
    path.add(new double[] {last[0] + seconds, newtons});
  }

  void hold(double seconds) {
    double[] last = path.get(path.size() - 1);
    path.add(new double[] {last[0] + seconds, last[1]});
    holds.add(new double[] {last[0], last[0] + seconds, last[1]});
  }

  double seconds() {
    return path.get(path.size() - 1)[0];
  }

  double loadAt(double seconds) {
    for (int i = 1; i < path.size(); i++) {
      double[] from = path.get(i - 1);
      double[] to = path.get(i);
      if (seconds <= to[0]) {
        return from[1] + (to[1] - from[1]) * (seconds - from[0]) / (to[0] - from[0]);
      }
    }
    return path.get(path.size() - 1)[1];
  }

  double greatestUpTo(double seconds) {
    double greatest = loadAt(seconds);
    for (double[] corner : path) {
      greatest = corner[0] <= seconds ? Math.max(greatest, corner[1]) : greatest;
    }
    return greatest;
  }

  /** Width on first loading without creep. */
  double firstWidth(double newtons) {
    if (newtons <= crackNewtons) {
      return 0;
    }
    double beyond = newtons / crackNewtons - 1;
    return jump + (widthAtTwice - jump) * Math.pow(beyond, power);
  }

  /** Creep grows in proportion to time in holds at more than half the greatest load so far. */
  double creepUpTo(double seconds) {
    double creep = 0;
    for (double[] hold : holds) {
      double share = Math.min(1, Math.max(0, (seconds - hold[0]) / (hold[1] - hold[0])));
      boolean high = hold[2] >= greatestUpTo(hold[0]) / 2;
      creep += high ? creepShare * firstWidth(hold[2]) * share : 0;
    }
    return creep;
  }

  double widthAt(double seconds) {
    double greatest = greatestUpTo(seconds);
    double virgin = firstWidth(greatest) + creepUpTo(seconds);
    double share = greatest > 0 ? loadAt(seconds) / greatest : 0;
    return virgin * (residualShare + (1 - residualShare) * share);
  }

  double gaugeAt(int gauge, double seconds) {
    double sign = gauge % 2 == 0 ? 1 : -1;
    return compliance[gauge] * loadAt(seconds)
        + widthAt(seconds) * (1 + sign * faceDifference)
        + 0.1 * (gauge + 1);
  }

  /** One reading: channel -1 is the load. */
  record Reading(long stampMicros, int channel, double value) {}

  List<Reading> readings(long seed) {
    Random random = new Random(~seed * 0x9E3779B97F4A7C15L);
    List<Reading> list = new ArrayList<>();
    double end = seconds();
    for (double t = 0.001 * random.nextDouble(); t < end; t += 1 / loadRate) {
      double value = loadAt(t) + 25 + loadNoise * random.nextGaussian();
      list.add(new Reading(Math.round(t * 1e6), -1, stepped(value, loadResolution)));
    }
    for (int gauge = 0; gauge < compliance.length; gauge++) {
      for (double t = random.nextDouble() / gaugeRates[gauge];
          t < end;
          t += 1 / gaugeRates[gauge]) {
        double value = gaugeAt(gauge, t) + gaugeNoise * random.nextGaussian();
        list.add(
            new Reading(
                Math.round(t * 1e6) + delays[gauge], gauge, stepped(value, gaugeResolution)));
      }
    }
    list.sort(Comparator.comparingLong(Reading::stampMicros));
    return list;
  }

  private static double stepped(double value, double step) {
    return step == 0 ? value : Math.rint(value / step) * step;
  }

  List<GaugeLimits> limits() {
    List<GaugeLimits> list = new ArrayList<>();
    for (int i = 0; i < compliance.length; i++) {
      list.add(new GaugeLimits(i % 2, -1, 10, gaugeResolution, 1.0, 0.02));
    }
    return list;
  }

  CrackSettings settings() {
    return CrackSettings.splitBeam(limits(), new CrackSettings.FitWindow(500, 5_000));
  }

  CrackFeed feed(CrackSettings settings, CrackListener listener) {
    List<CrackFeed.Line> lines = new ArrayList<>();
    for (long delay : delays) {
      lines.add(new CrackFeed.Line(0, delay, 20_000, 300_000));
    }
    return new CrackFeed(
        settings,
        new CrackFeed.ZeroRule(2_000_000, 200, 250),
        new LoneRule(100_000, 20_000, 0, 6),
        new CrackFeed.Line(0, 0, 20_000, 300_000),
        lines,
        listener);
  }

  static void give(CrackFeed feed, List<Reading> readings) {
    giveLive(feed, readings);
    feed.finish();
  }

  static void giveLive(CrackFeed feed, List<Reading> readings) {
    long seq = 0;
    for (Reading reading : readings) {
      seq++;
      if (reading.channel() < 0) {
        feed.loadReading(seq, reading.stampMicros(), 10, reading.value(), Quality.OK);
      } else {
        feed.gaugeReading(
            reading.channel(), seq, reading.stampMicros(), 10, reading.value(), Quality.OK);
      }
    }
  }
}
