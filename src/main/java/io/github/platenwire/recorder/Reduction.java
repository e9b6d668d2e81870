package io.github.platenwire.recorder;

import io.github.platenwire.method.BreakPosition;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.MethodRun;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.method.Trail;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.ChannelTally;
import io.github.platenwire.record.Observations;
import io.github.platenwire.record.Provenance;
import io.github.platenwire.record.RawFileEnd;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawRow;
import io.github.platenwire.record.Summary;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Computes a test again from its raw file alone: the bytes as received go through the device
 * definitions, calibrations and the method that the file's own head keeps, by the same code as
 * live. Immutable.
 *
 * <p>What the stream around a frame told is taken as recorded: that nothing came ({@code late}),
 * that a frame may have been torn where the stream was joined ({@code suspect}) or was cut off
 * ({@code garbled}). Such rows are used for no figure. Of every other row value and quality are
 * made anew from its bytes.
 *
 * @param test what it came to; never with a failure
 * @param method the method in the head
 * @param rowDifferences rows whose bytes do not give what stands beside them
 */
public record Reduction(RecordedTest test, Method method, List<String> rowDifferences) {
  private static final int MOST_DIFFERENCES = 20;

  /** Makes the list immutable. */
  public Reduction {
    rowDifferences = List.copyOf(rowDifferences);
  }

  /**
   * Computes a test again.
   *
   * @throws IOException if the file cannot be read
   * @throws RawFileException if it is not as the format says
   */
  public static Reduction of(Path raw) throws IOException, RawFileException {
    return of(raw, specimen -> specimen);
  }

  /**
   * Computes a test again with other measurements of its specimen.
   *
   * @param correct gives the right specimen for the one in the head
   */
  public static Reduction of(Path raw, Function<Specimen, Specimen> correct)
      throws IOException, RawFileException {
    try (RawFileReader reader = RawFileReader.open(raw)) {
      return of(raw, reader, correct, row -> {}, new Trail() {});
    }
  }

  /**
   * Computes a test again, and shows what it works with.
   *
   * @param correct gives the right specimen for the one in the head
   * @param beside is shown each row before it is used
   * @param trail is shown what the method works with
   */
  public static Reduction of(
      Path raw, Function<Specimen, Specimen> correct, Consumer<RawRow> beside, Trail trail)
      throws IOException, RawFileException {
    try (RawFileReader reader = RawFileReader.open(raw)) {
      return of(raw, reader, correct, beside, trail);
    }
  }

  /**
   * Computes a test again from a raw file that was opened, while somebody else looks at its rows
   * too: the file is read once.
   *
   * @param reader stands at the file's first row
   * @param beside is shown each row before it is used
   */
  public static Reduction of(
      Path raw, RawFileReader reader, Function<Specimen, Specimen> correct, Consumer<RawRow> beside)
      throws IOException, RawFileException {
    return of(raw, reader, correct, beside, new Trail() {});
  }

  private static Reduction of(
      Path raw,
      RawFileReader reader,
      Function<Specimen, Specimen> correct,
      Consumer<RawRow> beside,
      Trail trail)
      throws IOException, RawFileException {
    RawHeader header = corrected(reader.header(), correct);
    Replay replay;
    Method method;
    try {
      method = Definitions.method(header.method().text(), header.method().name());
      replay = new Replay(header, method.start(header.specimen(), header.setting()));
      replay.run.show(trail);
    } catch (TomlException | IllegalArgumentException e) {
      throw new RawFileException(
          String.valueOf(raw.getFileName()),
          1,
          "what the head keeps cannot be used: " + e.getMessage());
    }
    RawFileEnd end =
        reader.readRows(
            row -> {
              beside.accept(row);
              replay.row(row);
            });
    return new Reduction(replay.finish(raw, end), method, replay.differences);
  }

  /** The same with the result as the position of a beam's break has it. */
  public Reduction placed(BreakPosition position) {
    return new Reduction(test.placed(method, position), method, rowDifferences);
  }

  /**
   * The summary that follows from the raw file; without what only other tests tell.
   *
   * @param seen what people saw: where a beam broke decides by which formula its strength is
   *     computed
   * @throws IllegalArgumentException if the raw file is not closed
   * @throws TomlException if a calibration in the head cannot be read
   */
  public Summary summary(Observations seen) throws TomlException {
    return TestSummary.of(
        method,
        test,
        seen,
        Optional.empty(),
        new Provenance(Provenance.Maker.CLOSE, Optional.empty(), Optional.empty()));
  }

  private static RawHeader corrected(RawHeader header, Function<Specimen, Specimen> correct) {
    return header.withSpecimen(correct.apply(header.specimen()));
  }

  /** Feeds rows to the method, as the recorder did. */
  private static final class Replay {
    private final RawHeader header;
    private final MethodRun run;
    private final List<Source> sources;
    private final LinkStates links;
    private final List<ChannelTally> tallies;
    private final Map<String, Integer> channelByName = new HashMap<>();
    private final Map<Integer, Source> sourceByChannel = new HashMap<>();
    private final Batch batch = new Batch();
    private final List<String> differences = new ArrayList<>();
    private int different;
    private long lastMicros;
    private double value;
    private Quality quality = Quality.GARBLED;

    Replay(RawHeader header, MethodRun run) throws TomlException {
      this.header = header;
      this.run = run;
      List<ChannelSetup> channels = new ArrayList<>();
      for (HeaderChannel channel : header.channels()) {
        channelByName.put(channel.facts().name(), channels.size());
        channels.add(
            new ChannelSetup(
                channel, Definitions.device(channel.device().text(), channel.device().name())));
      }
      this.sources = Sources.of(channels);
      this.links = new LinkStates(channels, sources);
      this.tallies =
          channels.stream().map(c -> new ChannelTally(c.header().facts().name())).toList();
      sources.forEach(source -> source.channels().forEach(c -> sourceByChannel.put(c, source)));
    }

    void row(RawRow row) {
      lastMicros = Math.max(lastMicros, row.elapsedMicros());
      if (row.isEvent()) {
        links.replay(row.elapsedMicros(), new String(row.received(), StandardCharsets.UTF_8));
        return;
      }
      Integer channel = channelByName.get(row.channel());
      Source source = sourceByChannel.get(channel);
      if (channel == null || source == null) {
        differ(row, "there is no channel '" + row.channel() + "' in the head");
        return;
      }
      decode(row, channel, source);
      String line =
          header.channels().get(channel).isTyped() && row.quality() != Quality.LATE
              ? new String(row.received(), StandardCharsets.UTF_8)
              : null;
      batch.add(
          row.seq(), row.elapsedMicros(), channel, row.received().length, value, quality, line);
      batch.release(row.seq(), run, tallies);
    }

    /** Leaves the row's value and quality, made anew from its bytes. */
    private void decode(RawRow row, int channel, Source source) {
      value = Double.NaN;
      quality = Quality.GARBLED;
      if (row.quality() == Quality.LATE || row.quality() == Quality.GARBLED) {
        quality = row.quality();
        if (!Double.isNaN(row.value())) {
          differ(row, "a row marked " + row.quality().word() + " has a value");
        }
        return;
      }
      source.decodeFrame(
          row.received(),
          (c, frame, from, length, nanos, decoded, judged) -> {
            if (c == channel) {
              value = decoded;
              quality = judged;
            }
          });
      if (row.quality() == Quality.SUSPECT && quality != Quality.GARBLED) {
        quality = Quality.SUSPECT;
      }
      compare(row);
    }

    private void compare(RawRow row) {
      boolean same = Double.doubleToLongBits(value) == Double.doubleToLongBits(row.value());
      if (!same || quality != row.quality()) {
        differ(
            row,
            "recorded "
                + row.value()
                + " "
                + row.quality().word()
                + ", but its bytes give "
                + value
                + " "
                + quality.word());
      }
    }

    private void differ(RawRow row, String words) {
      different++;
      if (different <= MOST_DIFFERENCES) {
        differences.add("row " + row.seq() + " (line " + row.line() + "): " + words);
      }
    }

    RecordedTest finish(Path raw, RawFileEnd end) {
      if (different > MOST_DIFFERENCES) {
        differences.add("and " + (different - MOST_DIFFERENCES) + " rows more");
      }
      run.time(lastMicros);
      return new RecordedTest(
          raw, header, links.addTo(run.finish()), end.closing(), tallies, Optional.empty());
    }
  }
}
