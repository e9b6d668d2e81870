package io.github.platenwire.chart;

import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.method.CrackPart;
import io.github.platenwire.method.LiveView;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.MethodResult;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.method.MethodRun;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawRow;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The load of one test over time, followed once more by the method out of the raw file's rows, as
 * it was while the test ran. Made by {@link #read}; only read afterwards.
 */
public final class LoadTrace {
  private final RawHeader header;
  private final List<ChannelFacts> channels;
  private final MethodRun run;
  private final int load;
  private double[] seconds = new double[4096];
  private double[] newtons = new double[4096];
  private double[] rates = new double[4096];
  private long[] seqs = new long[4096];
  private int count;
  private double zeroSeconds = Double.NaN;
  private double breakSeconds = Double.NaN;
  private Optional<LiveView.RateBand> band = Optional.empty();
  private double bandFrom = Double.NaN;
  private double bandTo = Double.NaN;
  private Optional<MethodResult> result = Optional.empty();
  private Optional<CrackTrace> crack = Optional.empty();
  private final StrainTrace strain = new StrainTrace();

  private LoadTrace(RawHeader header, Method method) throws RawFileException {
    this.header = header;
    this.channels = header.setting().channels();
    this.load = loadIndex();
    this.run = method.start(header.specimen(), header.setting());
  }

  /**
   * Reads a raw file and follows its load.
   *
   * @throws IOException if the file cannot be read
   * @throws RawFileException if it is not as the format says, or has no channel of force
   */
  public static LoadTrace read(Path file) throws IOException, RawFileException {
    try (RawFileReader reader = RawFileReader.open(file)) {
      RawHeader header = reader.header();
      LoadTrace trace = new LoadTrace(header, method(header));
      reader.readRows(trace::row);
      trace.result = Optional.of(trace.run.finish());
      return trace;
    }
  }

  private static Method method(RawHeader header) throws RawFileException {
    try {
      return Method.parse(header.method().text(), "method " + header.method().name());
    } catch (TomlException e) {
      throw new RawFileException(
          header.test(), 1, "the method in the head cannot be read: " + e.getMessage());
    }
  }

  private int loadIndex() throws RawFileException {
    for (int i = 0; i < channels.size(); i++) {
      if (channels.get(i).quantity() == Quantity.FORCE) {
        return i;
      }
    }
    throw new RawFileException(header.test(), 1, "no channel of this record measures a force");
  }

  private void row(RawRow row) {
    double at = row.elapsedMicros() / 1e6;
    if (row.isEvent()) {
      event(new String(row.received(), StandardCharsets.UTF_8), at);
      return;
    }
    int channel = index(row.channel());
    if (channel < 0) {
      return;
    }
    run.reading(
        row.seq(), row.elapsedMicros(), channel, row.received().length, row.value(), row.quality());
    run.takeHappenings();
    LiveView view = run.view();
    view.crack().ifPresent(part -> follow(view, part, row.seq()));
    if (channel == load && row.quality() == Quality.OK) {
      add(row, at);
    }
  }

  private void follow(LiveView view, CrackPart part, long seq) {
    if (crack.isEmpty()) {
      crack = Optional.of(new CrackTrace());
    }
    crack.get().add(view.loadNewtons(), part, seq);
  }

  private void event(String text, double at) {
    if (text.startsWith("zero load=")) {
      zeroSeconds = at;
    } else if (text.startsWith("break withdrawn")) {
      breakSeconds = Double.NaN;
    } else if (text.startsWith("break")) {
      breakSeconds = at;
    }
  }

  private int index(String channel) {
    for (int i = 0; i < channels.size(); i++) {
      if (channels.get(i).name().equals(channel)) {
        return i;
      }
    }
    return -1;
  }

  private void add(RawRow row, double at) {
    if (count == seconds.length) {
      seconds = Arrays.copyOf(seconds, 2 * count);
      newtons = Arrays.copyOf(newtons, 2 * count);
      rates = Arrays.copyOf(rates, 2 * count);
      seqs = Arrays.copyOf(seqs, 2 * count);
    }
    LiveView view = run.view();
    view.chord().ifPresent(part -> strain.add(view.stressMegapascals(), part));
    double raw = channels.get(load).unit().toBase(row.value());
    seconds[count] = at;
    newtons[count] = Double.isNaN(view.loadNewtons()) ? raw : view.loadNewtons();
    rates[count] =
        view.phase() == LiveView.Phase.LOADING ? view.rateMegapascalsPerSecond() : Double.NaN;
    seqs[count] = row.seq();
    count++;
    if (view.band().isPresent() && view.bandApplies()) {
      band = view.band();
      bandFrom = Double.isNaN(bandFrom) ? at : bandFrom;
      bandTo = at;
    }
  }

  /** The raw file's head. */
  public RawHeader header() {
    return header;
  }

  /** What the test came to. */
  public MethodResult result() {
    return result.orElseThrow();
  }

  /** Its crack, if the method followed one. */
  public Optional<CrackTrace> crack() {
    return crack;
  }

  /** Its stress over strain, if the method followed strains. */
  public Optional<StrainTrace> strain() {
    return strain.isEmpty() ? Optional.empty() : Optional.of(strain);
  }

  /** When each good reading of the load came, in seconds since the origin. */
  double[] seconds() {
    return Arrays.copyOf(seconds, count);
  }

  /** The load at each, in newtons, zero taken off once there is one. */
  double[] newtons() {
    return Arrays.copyOf(newtons, count);
  }

  /** The rate at each, in megapascals a second; NaN while nothing is being loaded. */
  double[] rates() {
    return Arrays.copyOf(rates, count);
  }

  /** The band of the rate, if the method has one that applied at any time. */
  Optional<LiveView.RateBand> band() {
    return band;
  }

  /** Whether a rate of loading is drawn. */
  public boolean hasRate() {
    return band.isPresent();
  }

  /** When the band began to apply, in seconds. */
  double bandFrom() {
    return bandFrom;
  }

  /** When it last applied, in seconds. */
  double bandTo() {
    return bandTo;
  }

  /** When the zero was taken, in seconds, if it was. */
  OptionalDouble zeroSeconds() {
    return Double.isNaN(zeroSeconds) ? OptionalDouble.empty() : OptionalDouble.of(zeroSeconds);
  }

  /** When the load fell for good, in seconds, if it did. */
  OptionalDouble breakSeconds() {
    return Double.isNaN(breakSeconds) ? OptionalDouble.empty() : OptionalDouble.of(breakSeconds);
  }

  /** Index of the reading on which the greatest load rests, if the test came to one. */
  Optional<Integer> peakIndex() {
    Optional<Figure> peak = result().figure("peak-load");
    if (peak.isEmpty() || peak.get().rows().isEmpty()) {
      return Optional.empty();
    }
    int index = Arrays.binarySearch(seqs, 0, count, peak.get().rows().get(0));
    return index < 0 ? Optional.empty() : Optional.of(index);
  }
}
