package io.github.platenwire.live;

/**
 * How well the mean of readings that are shown in steps is known. Noise averages out with the
 * number of readings; what the steps alone put in does so only as far as the noise spreads the
 * readings over several of them. For a value that may lie anywhere within its step and a normal
 * noise s, the mean of ever so many readings in steps q is still off by a root mean square of
 *
 * <pre>bias^2 = sum over k = 1, 2, ... of q^2 / (2 pi^2 k^2) exp(-(2 pi k s / q)^2)</pre>
 *
 * (the Fourier series of the rounding error; without noise it comes to q^2 / 12). Stateless.
 */
final class SteppedMean {
  private static final int TERMS = 200;
  private static final double LEAST_TERM = 1e-4;

  private SteppedMean() {}

  /**
   * Variance of the mean.
   *
   * @param seen standard deviation of the readings as shown, steps in it
   * @param step of the readings; 0 where they have none
   * @param count how many independent readings
   */
  static double variance(double seen, double step, double count) {
    double averaged = seen * seen / Math.max(1, count);
    return step > 0
        ? averaged + bias(Math.max(0, seen * seen / step / step - 1.0 / 12), step)
        : averaged;
  }

  /** Left over of the steps for a noise whose square over that of the step is given. */
  private static double bias(double noise, double step) {
    double sum = 0;
    double term = 1;
    for (int k = 1; k <= TERMS && term > LEAST_TERM * sum; k++) {
      double turns = 2 * Math.PI * k;
      term = 2 / (turns * turns) * Math.exp(-turns * turns * noise);
      sum += term;
    }
    return sum * step * step;
  }
}
