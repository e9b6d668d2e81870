package io.github.platenwire.method;

import io.github.platenwire.method.MethodResult.Figure;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Errors of one kind of figure against what was claimed of them. A claim is a standard uncertainty;
 * expanded with k = 2 it means to cover 95.45 % of honest draws, so that about one figure in twenty
 * lies beyond it. Not thread-safe.
 */
final class ClaimTally {
  private static final double BEYOND_TWO = 0.0455;
  private static final double FARTHEST = 4.5;

  final String name;
  private final double bound;
  private final List<Sample> samples = new ArrayList<>();

  /** One figure; the error and the claim in the unit of the bound. */
  private record Sample(long seed, double error, double standard) {
    double ratio() {
      return error / standard;
    }
  }

  /** Starts empty; the bound is an error that is always good enough. */
  ClaimTally(String name, double bound) {
    this.name = name;
    this.bound = bound;
  }

  /** Takes a figure; error and claim are divided by {@code scale} before they meet the bound. */
  void add(long seed, double truth, Figure figure, double scale) {
    double standard = figure.uncertainty().orElseThrow().combined();
    samples.add(new Sample(seed, (figure.exact() - truth) / scale, standard / scale));
  }

  /** The same errors with every claim made wider or narrower. */
  ClaimTally withClaimsTimes(double factor) {
    ClaimTally other = new ClaimTally(name + ", claims times " + factor, bound);
    samples.forEach(
        each -> other.samples.add(new Sample(each.seed, each.error, each.standard * factor)));
    return other;
  }

  int count() {
    return samples.size();
  }

  /** Share of the figures whose error lies within twice their standard uncertainty. */
  double covered() {
    return samples.stream().filter(each -> Math.abs(each.ratio()) <= 2).count()
        / (double) samples.size();
  }

  /** Root mean square of error over standard uncertainty; 1 where the claims are right. */
  double ratio() {
    return Math.sqrt(
        samples.stream().mapToDouble(each -> each.ratio() * each.ratio()).average().orElse(0));
  }

  /** What is wrong with the claims or the errors; empty if nothing is. */
  List<String> objections() {
    List<String> list = new ArrayList<>();
    if (covered() < 0.93 || covered() > 0.97) {
      list.add(String.format(Locale.ROOT, "covered %.1f %%, not 93 to 97", 100 * covered()));
    }
    long beyond =
        samples.stream()
            .filter(each -> Math.abs(each.error) > Math.max(bound, 2 * each.standard))
            .count();
    double spread = Math.sqrt(BEYOND_TWO * (1 - BEYOND_TWO) * samples.size());
    if (beyond > BEYOND_TWO * samples.size() + 2 * spread) {
      list.add(beyond + " beyond both the bound and twice the standard uncertainty");
    }
    samples.stream()
        .filter(each -> !(Math.abs(each.error) <= Math.max(bound, FARTHEST * each.standard)))
        .forEach(each -> list.add("beyond the bound and 4.5 standard uncertainties: " + each));
    return list;
  }

  String line() {
    double[] errors = samples.stream().mapToDouble(Sample::error).sorted().toArray();
    double[] claims = samples.stream().mapToDouble(Sample::standard).sorted().toArray();
    double farthest = samples.stream().mapToDouble(each -> Math.abs(each.ratio())).max().orElse(0);
    int n = errors.length;
    return String.format(
        Locale.ROOT,
        "%-24s n=%4d off by min %+.4f p5 %+.4f median %+.4f p95 %+.4f max %+.4f"
            + " | claimed (k=2) median %.4f | covered %.1f %% | error/claim rms %.2f most %.2f",
        name,
        n,
        errors[0],
        errors[n / 20],
        errors[n / 2],
        errors[n * 19 / 20],
        errors[n - 1],
        2 * claims[n / 2],
        100 * covered(),
        ratio(),
        farthest);
  }

  @Override
  public String toString() {
    return name + " " + Arrays.toString(objections().toArray());
  }
}
