package io.github.platenwire.recorder;

import io.github.platenwire.method.LiveView;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.MethodResult;
import io.github.platenwire.method.MethodRun;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.method.TestSetting;
import io.github.platenwire.reading.Quality;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A method that counts what it is shown, announces the first reading above a threshold, and ends
 * after a number of readings.
 */
final class CountingMethod implements Method {
  private final long endAfter;
  final List<Long> seqs = new ArrayList<>();
  final List<Double> values = new ArrayList<>();

  CountingMethod(long endAfter) {
    this.endAfter = endAfter;
  }

  @Override
  public String name() {
    return "counting";
  }

  @Override
  public String title() {
    return "Counts";
  }

  @Override
  public String standard() {
    return "none";
  }

  @Override
  public String text() {
    return "";
  }

  @Override
  public List<Objection> examine(Specimen specimen, TestSetting setting) {
    return List.of();
  }

  @Override
  public MethodRun start(Specimen specimen, TestSetting setting) {
    return new Run();
  }

  private final class Run implements MethodRun {
    private long lastSeq;
    private long lastMicros;
    private List<Happening> happenings = List.of();

    @Override
    public void reading(long seq, long elapsedMicros, int channel, double value, Quality quality) {
      lastSeq = seq;
      lastMicros = elapsedMicros;
      seqs.add(seq);
      values.add(value);
      if (value > 1000) {
        happenings = List.of(new Happening("high seq=" + seq, /* force= */ true));
      }
    }

    @Override
    public void time(long elapsedMicros) {}

    @Override
    public List<Happening> takeHappenings() {
      List<Happening> taken = happenings;
      happenings = List.of();
      return taken;
    }

    @Override
    public Optional<Ending> ending() {
      return seqs.size() >= endAfter ? Optional.of(Ending.BREAK) : Optional.empty();
    }

    @Override
    public LiveView view() {
      return new LiveView(
          LiveView.Phase.LOADING, lastSeq, lastMicros, 0, 0, 0, 0, 0, Optional.empty(), false);
    }

    @Override
    public MethodResult finish() {
      return new MethodResult(List.of(), List.of(), List.of(), List.of());
    }
  }
}
