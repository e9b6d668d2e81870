package io.github.platenwire.method;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.statistics.LineFit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** One front followed. Confined to the recorder thread. */
final class FrontRun implements MethodRun {
  private final FrontRules rules;
  private final Specimen specimen;
  private final TestSetting setting;
  private final int channel;
  private final Unit unit;
  private final FrontEntries entries;
  private final long everyMicros;
  private List<Happening> happenings = List.of();
  private Optional<String> leftOut = Optional.empty();
  private long takenMicros;
  private @Nullable FrontPart part;
  private long seen;
  private long lastSeq;
  private long lastMicros;
  private boolean finished;
  private Trail trail = new Trail() {};

  FrontRun(FrontRules rules, Specimen specimen, TestSetting setting) {
    this.rules = rules;
    this.specimen = specimen;
    this.setting = setting;
    this.channel =
        IntStream.range(0, setting.channels().size())
            .filter(i -> setting.channels().get(i).quantity() == rules.quantity())
            .findFirst()
            .orElseThrow();
    this.unit = setting.channels().get(channel).unit();
    this.entries = new FrontEntries(setting.start());
    this.everyMicros = Math.round(rules.everySeconds() * 1e6);
  }

  @Override
  public void reading(long seq, long elapsedMicros, int from, double value, Quality quality) {
    boolean due = entries.isEmpty() || elapsedMicros - takenMicros >= everyMicros;
    if (from == channel && quality == Quality.OK && Double.isFinite(value) && due) {
      entries.gauge(seq, elapsedMicros, unit.toBase(value));
      takenMicros = elapsedMicros;
      took(seq, elapsedMicros, Optional.empty());
    }
  }

  @Override
  public void entry(
      long seq, long elapsedMicros, int from, String line, double value, Quality quality) {
    if (from == channel && quality == Quality.OK && Double.isFinite(value)) {
      Optional<String> why = entries.typed(seq, elapsedMicros, line, unit.toBase(value));
      why.ifPresent(words -> happen("entry left out seq=" + seq));
      took(seq, elapsedMicros, why);
    }
  }

  private void took(long seq, long elapsedMicros, Optional<String> why) {
    seen++;
    lastSeq = seq;
    lastMicros = elapsedMicros;
    leftOut = why;
    part = null;
  }

  private void happen(String text) {
    if (happenings.isEmpty()) {
      happenings = new ArrayList<>();
    }
    happenings.add(new Happening(text, /* force= */ false));
  }

  @Override
  public void time(long elapsedMicros) {
    // A front has no moments of its own: it ends when the operator ends it.
  }

  @Override
  public List<Happening> takeHappenings() {
    List<Happening> taken = happenings;
    happenings = List.of();
    return taken;
  }

  @Override
  public Optional<Ending> ending() {
    return Optional.empty();
  }

  @Override
  public LiveView view() {
    LiveView.Phase phase =
        finished
            ? LiveView.Phase.ENDED
            : entries.isEmpty() ? LiveView.Phase.READY : LiveView.Phase.LOADING;
    if (part == null) {
      part = part();
    }
    return LiveView.ofFront(phase, lastSeq, lastMicros, part);
  }

  private FrontPart part() {
    boolean none = entries.isEmpty();
    FrontPart.Reading last = none ? null : entries.ofEntry(lastSeq);
    List<FrontPart.Reading> counted = entries.counted();
    Optional<FrontLines> lines =
        rules.absorption().isPresent() ? Optional.empty() : FrontLines.of(counted);
    return new FrontPart(
        seen,
        entries.size(),
        lastSeq,
        last == null ? Double.NaN : last.seconds(),
        last == null ? Double.NaN : last.base(),
        rules.quantity(),
        leftOut,
        slope(lines.map(FrontLines::advance).map(FrontAdvance::linear)),
        slope(lines.map(FrontLines::advance).map(FrontAdvance::squareRoot)),
        counted);
  }

  private static OptionalDouble slope(Optional<LineFit> line) {
    return line.map(fit -> OptionalDouble.of(fit.slope())).orElse(OptionalDouble.empty());
  }

  @Override
  public void show(Trail shown) {
    trail = shown;
  }

  @Override
  public MethodResult finish() {
    if (finished) {
      throw new IllegalStateException("the result was already asked for");
    }
    finished = true;
    trail.readings(entries.counted());
    ChannelFacts facts = setting.channels().get(channel);
    return rules.absorption().isPresent()
        ? new AbsorptionOutcome(rules, specimen, entries).result()
        : new FrontOutcome(rules, facts, entries).result();
  }
}
