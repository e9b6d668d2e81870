package io.github.platenwire.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class BandJudgeTest {
  private static final List<BandJudge.Band> BANDS =
      List.of(new BandJudge.Band(1500, 2500), new BandJudge.Band(1900, 1950));

  private final BandJudge judge = new BandJudge(1_000_000, BANDS);
  private long micros;
  private double load;

  private void ramp(double rate, double toLoad) {
    while (load < toLoad) {
      micros += 100_000;
      load += rate * 0.1;
      judge.accept(micros, load, rate);
    }
  }

  @Test
  void judge_fastFirstHalfThenInBand_countsOnlyTheLatterHalf() {
    ramp(20_000, 120_000);
    ramp(2000, 250_000);
    BandJudge.Verdict verdict = judge.judge(0.5, 0.9).orElseThrow();
    assertThat(verdict.shares()).containsExactly(1.0, 0.0);
    assertThat(verdict.least()).isEqualTo(2000);
    assertThat(verdict.greatest()).isEqualTo(2000);
    assertThat(verdict.mean()).isCloseTo(2000, within(1e-9));
    // 50 s from 125 to 225 kN; the bins may take 0.8 % of the level at either end, the steps one
    assertThat(verdict.seconds()).isBetween(47.5, 52.0);
  }

  @Test
  void judge_halfOfTheJudgedTimeTooFast_saysAboutHalf() {
    ramp(2000, 175_000);
    ramp(4000, 275_000);
    ramp(1000, 280_000);
    BandJudge.Verdict verdict = judge.judge(0.5, 0.9).orElseThrow();
    // from 140 to 175 kN in 17.5 s, from 175 to 252 kN in 19.25 s
    assertThat(verdict.shares().get(0)).isCloseTo(17.5 / 36.75, within(0.04));
    assertThat(verdict.greatest()).isEqualTo(4000);
  }

  @Test
  void judge_breakInAStep_isNotCounted() {
    ramp(200_000, 250_000);
    for (int i = 0; i < 50; i++) {
      micros += 100_000;
      judge.accept(micros, 1000, -250_000);
    }
    judge.judge(0.0001, 1).ifPresent(verdict -> assertThat(verdict.least()).isEqualTo(200_000));
  }

  @Test
  void judge_pauseInTheLatterHalf_isOutOfBand() {
    ramp(2000, 150_000);
    for (int i = 0; i < 100; i++) {
      micros += 100_000;
      judge.accept(micros, load, 0);
    }
    ramp(2000, 200_000);
    BandJudge.Verdict verdict = judge.judge(0.5, 0.9).orElseThrow();
    assertThat(verdict.least()).isZero();
    // 40 s of loading between 100 and 180 kN and 10 s of pause
    assertThat(verdict.shares().get(0)).isCloseTo(0.8, within(0.03));
  }

  @Test
  void judge_pauseAtThePeak_isNotCounted() {
    ramp(2000, 200_000);
    for (int i = 0; i < 100; i++) {
      micros += 100_000;
      judge.accept(micros, load, 0);
    }
    assertThat(judge.judge(0.5, 1).orElseThrow().least()).isEqualTo(2000);
  }

  @Test
  void judge_tooShort_isEmpty() {
    ramp(2000, 1000);
    assertThat(judge.judge(0.5, 0.9)).isEmpty();
    assertThat(new BandJudge(1_000_000, BANDS).judge(0.5, 0.9)).isEmpty();
  }

  @Test
  void judge_rateAtTheLimits_isWithin() {
    ramp(1500, 50_000);
    ramp(2500, 110_000);
    assertThat(judge.judge(0.2, 0.9).orElseThrow().shares().get(0)).isEqualTo(1.0);
  }
}
