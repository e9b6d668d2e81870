package io.github.platenwire.study;

import static io.github.platenwire.study.CheckData.digits;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.statistics.LineFit;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * NIST Statistical Reference Datasets (StRD), certified values; read through copies in the
 * commons-math, SciPy, GSL and lmfit repositories.
 */
class NistReferenceTest {
  @ParameterizedTest
  @CsvSource({
    "nist_lew.csv, -177.435000000000, 277.332168044316, 14",
    "nist_lottery.csv, 518.958715596330, 291.699727470969, 14",
    "nist_mavro.csv, 2.00185600000000, 0.000429123454003053, 12",
    "nist_michelso.csv, 299.852400000000, 0.0790105478190518, 12",
    "nist_numacc1.csv, 10000002, 1, 15",
  })
  void statistics_univariateSet_certifiedDigits(
      String file, double mean, double deviation, double least) throws IOException {
    SeriesStatistics series = SeriesStatistics.of(CheckData.read(file).column("y"));
    assertThat(digits(series.mean(), mean)).isGreaterThan(14);
    assertThat(digits(series.standardDeviation().orElseThrow(), deviation)).isGreaterThan(least);
  }

  /** NIST StRD NumAcc2, 3, 4: the middle value once, then 500 pairs 0.1 below and above. */
  @ParameterizedTest
  @CsvSource({
    "1.2, 1.1, 1.3, 14",
    "1000000.2, 1000000.1, 1000000.3, 9",
    "10000000.2, 10000000.1, 10000000.3, 8",
  })
  void statistics_numAcc_digitsThatDoublesHold(
      double middle, double low, double high, double least) {
    double[] values = new double[1001];
    values[0] = middle;
    for (int i = 1; i < values.length; i++) {
      values[i] = i % 2 == 1 ? low : high;
    }
    SeriesStatistics series = SeriesStatistics.of(values);
    assertThat(digits(series.mean(), middle)).isGreaterThan(15);
    assertThat(digits(series.standardDeviation().orElseThrow(), 0.1)).isGreaterThan(least);
  }

  @Test
  void line_norris_certifiedDigits() throws IOException {
    CheckData data = CheckData.read("nist_norris.csv");
    LineFit line = LineFit.of(data.column("x"), data.column("y"));
    assertThat(digits(line.intercept(), -0.262323073774029)).isGreaterThan(11);
    assertThat(digits(line.standardErrorAt(0), 0.232818234301152)).isGreaterThan(12);
    assertThat(digits(line.slope(), 1.00211681802045)).isGreaterThan(13);
    assertThat(digits(line.slopeStandardError(), 0.429796848199937E-03)).isGreaterThan(12);
    assertThat(digits(line.residualDeviation(), 0.884796396144373)).isGreaterThan(12);
    assertThat(digits(line.residualSquares(), 26.6173985294224)).isGreaterThan(12);
    assertThat(digits(line.rSquared(), 0.999993745883712)).isGreaterThan(14);
  }

  /** Load-cell calibration; a quadratic is linear in its coefficients, the curve fit takes both. */
  @Test
  void curve_pontius_certifiedDigits() throws IOException {
    CheckData data = CheckData.read("nist_pontius.csv");
    CurveFit fit = fit(new Quadratic(), data, 0, 7e-7, 0);
    assertFit(
        fit,
        10,
        new double[] {0.673565789473684E-03, 0.732059160401003E-06, -0.316081871345029E-14},
        new double[] {0.107938612033077E-03, 0.157817399981659E-09, 0.486652849992036E-16},
        0.155761768796992E-05,
        0.205177424076185E-03);
  }

  @ParameterizedTest
  @CsvSource({"500, 0.0001", "250, 0.0005"})
  void curve_misra1a_certifiedDigits(double start1, double start2) throws IOException {
    CurveFit fit = fit(new Saturation(), CheckData.read("nist_misra1a.csv"), start1, start2);
    assertFit(
        fit,
        8,
        new double[] {2.3894212918E+02, 5.5015643181E-04},
        new double[] {2.7070075241E+00, 7.2668688436E-06},
        1.2455138894E-01,
        1.0187876330E-01);
  }

  @ParameterizedTest
  @CsvSource({"1, 1", "100, 0.75"})
  void curve_boxBod_certifiedDigits(double start1, double start2) throws IOException {
    CurveFit fit = fit(new Saturation(), CheckData.read("nist_boxbod.csv"), start1, start2);
    assertFit(
        fit,
        8,
        new double[] {2.1380940889E+02, 5.4723748542E-01},
        new double[] {1.2354515176E+01, 1.0455993237E-01},
        1.1680088766E+03,
        1.7088072423E+01);
  }

  @ParameterizedTest
  @CsvSource({"100, 1, 0.1", "75, 2.5, 0.07"})
  void curve_rat42_certifiedDigits(double start1, double start2, double start3) throws IOException {
    CurveFit fit = fit(new Logistic(), CheckData.read("nist_rat42.csv"), start1, start2, start3);
    assertFit(
        fit,
        8,
        new double[] {7.2462237576E+01, 2.6180768402, 6.7359200066E-02},
        new double[] {1.7340283401, 8.8295217536E-02, 3.4465663377E-03},
        8.0565229338,
        1.1587725499);
  }

  @ParameterizedTest
  @CsvSource({
    "nist_sirstv.csv, 5.11462616000000E-02, 2.16636560000000E-01, 1.18046237440255, "
        + "1.90999039051129E-01, 1.04076068334656E-01, 10",
    "nist_smls01.csv, 1.68, 1.80, 21.0, 4.82758620689655E-01, 0.1, 13",
    "nist_smls04.csv, 1.68, 1.80, 21.0, 4.82758620689655E-01, 0.1, 8",
  })
  void analysis_oneWaySet_certifiedDigits(
      String file,
      double between,
      double within,
      double f,
      double rSquared,
      double deviation,
      double least)
      throws IOException {
    OneWayAnalysis analysis = analysis(CheckData.read(file).groups("group", "y"));
    assertThat(digits(analysis.betweenSquares(), between)).isGreaterThan(least);
    assertThat(digits(analysis.withinSquares(), within)).isGreaterThan(least);
    assertThat(digits(analysis.f(), f)).isGreaterThan(least);
    assertThat(digits(analysis.rSquared(), rSquared)).isGreaterThan(least);
    assertThat(digits(Math.sqrt(analysis.withinVariance()), deviation)).isGreaterThan(least);
  }

  /** NIST e-Handbook GEAR.DAT, Bartlett p 0.0136358632781 as in SciPy's test_morestats.py. */
  @Test
  void analysis_gear_bartlettAsPublished() throws IOException {
    CheckData data = CheckData.read("nist_gear.csv");
    OneWayAnalysis analysis = analysis(data.groups("batch", "y"));
    assertThat(digits(analysis.equalSpreadProbability(), 0.0136358632781)).isGreaterThan(9);
    // Computed with SciPy.
    assertThat(digits(analysis.f(), 2.296912413358539)).isGreaterThan(10);
  }

  private static OneWayAnalysis analysis(Map<String, double[]> groups) {
    List<SeriesStatistics> series = new ArrayList<>();
    groups.values().forEach(values -> series.add(SeriesStatistics.of(values)));
    return OneWayAnalysis.of(series);
  }

  private static CurveFit fit(CurveFit.Curve curve, CheckData data, double... start) {
    return CurveFit.of(curve, data.column("x"), data.column("y"), start).orElseThrow();
  }

  private static void assertFit(
      CurveFit fit,
      double least,
      double[] parameters,
      double[] errors,
      double squares,
      double deviation) {
    for (int i = 0; i < parameters.length; i++) {
      assertThat(digits(fit.parameters().get(i), parameters[i])).isGreaterThan(least);
      assertThat(digits(fit.standardErrors().get(i), errors[i])).isGreaterThan(least - 1);
    }
    assertThat(digits(fit.residualSquares(), squares)).isGreaterThan(least);
    assertThat(digits(fit.residualDeviation(), deviation)).isGreaterThan(least);
  }

  /** b1 + b2·x + b3·x². */
  private record Quadratic() implements CurveFit.Curve {
    @Override
    public double value(double x, double[] b) {
      return b[0] + x * (b[1] + x * b[2]);
    }

    @Override
    public double[] slopes(double x, double[] b) {
      return new double[] {1, x, x * x};
    }
  }

  /** b1(1 − exp(−b2·x)). */
  private record Saturation() implements CurveFit.Curve {
    @Override
    public double value(double x, double[] b) {
      return b[0] * (1 - Math.exp(-b[1] * x));
    }

    @Override
    public double[] slopes(double x, double[] b) {
      return new double[] {1 - Math.exp(-b[1] * x), b[0] * x * Math.exp(-b[1] * x)};
    }
  }

  /** b1/(1 + exp(b2 − b3·x)). */
  private record Logistic() implements CurveFit.Curve {
    @Override
    public double value(double x, double[] b) {
      return b[0] / (1 + Math.exp(b[1] - b[2] * x));
    }

    @Override
    public double[] slopes(double x, double[] b) {
      double e = Math.exp(b[1] - b[2] * x);
      double common = b[0] * e / ((1 + e) * (1 + e));
      return new double[] {1 / (1 + e), -common, x * common};
    }
  }
}
