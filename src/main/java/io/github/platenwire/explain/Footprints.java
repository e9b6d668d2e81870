package io.github.platenwire.explain;

import io.github.platenwire.live.BandJudge;
import io.github.platenwire.live.ChordCycle;
import io.github.platenwire.live.CrackResult;
import io.github.platenwire.live.FollowedRow;
import io.github.platenwire.method.FrontPart;
import io.github.platenwire.method.Trail;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Keeps what a method showed of its way. Not thread-safe while it is filled. */
final class Footprints implements Trail {
  private final List<BandJudge.Step> rates = new ArrayList<>();
  private final List<FollowedRow> rows = new ArrayList<>();
  private Optional<CrackResult> crack = Optional.empty();
  private List<ChordCycle> cycles = List.of();
  private List<FrontPart.Reading> readings = List.of();

  @Override
  public void rate(BandJudge.Step step) {
    rates.add(step);
  }

  @Override
  public void row(FollowedRow row) {
    rows.add(row);
  }

  @Override
  public void crack(CrackResult result) {
    crack = Optional.of(result);
  }

  @Override
  public void cycles(List<ChordCycle> all) {
    cycles = List.copyOf(all);
  }

  @Override
  public void readings(List<FrontPart.Reading> counted) {
    readings = List.copyOf(counted);
  }

  List<BandJudge.Step> rates() {
    return rates;
  }

  List<FollowedRow> rows() {
    return rows;
  }

  Optional<CrackResult> crack() {
    return crack;
  }

  List<ChordCycle> cycles() {
    return cycles;
  }

  List<FrontPart.Reading> readings() {
    return readings;
  }
}
