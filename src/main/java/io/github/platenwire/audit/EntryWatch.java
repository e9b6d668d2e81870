package io.github.platenwire.audit;

import io.github.platenwire.method.TypedEntry;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawRow;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/**
 * Follows the entries of one typed channel: which were put right, whether their times follow each
 * other, and how long after being read they were typed. Confined to one thread.
 */
final class EntryWatch implements TraceDetector.Watch {
  /** Times of day are typed to the minute. */
  private static final double ROUNDING_SECONDS = 60;

  /** This program's own limit: nobody has a depth in his head for longer. */
  private static final double LATE_SECONDS = 3600;

  private final String file;
  private final RawHeader header;
  private final RawHeader.HeaderChannel channel;
  private final List<Entry> entries = new ArrayList<>();
  private final Map<Long, Integer> indexBySeq = new HashMap<>();
  private final List<Finding> found = new ArrayList<>();
  private double latestSeconds = Double.NEGATIVE_INFINITY;
  private double zeroSeconds = Double.NaN;

  EntryWatch(String file, RawHeader header, RawHeader.HeaderChannel channel) {
    this.file = file;
    this.header = header;
    this.channel = channel;
  }

  /** What counts of an entry now; seconds since the test's origin. */
  private record Entry(double seconds, double value) {}

  @Override
  public void row(RawRow row) {
    boolean counts =
        row.quality() == Quality.OK
            && Double.isFinite(row.value())
            && row.channel().equals(channel.facts().name());
    if (counts) {
      parse(row).ifPresent(said -> entry(row, said));
    }
  }

  /** Empty for what the method leaves out too. */
  private static Optional<TypedEntry> parse(RawRow row) {
    try {
      return TypedEntry.parse(new String(row.received(), StandardCharsets.UTF_8));
    } catch (DateTimeException | NumberFormatException e) {
      return Optional.empty();
    }
  }

  private void entry(RawRow row, TypedEntry said) {
    double typedSeconds = row.elapsedMicros() / 1e6;
    OptionalDouble told = told(said, typedSeconds);
    if (said.corrects().isPresent()) {
      Integer index = indexBySeq.get(said.corrects().getAsLong());
      if (index != null) {
        correct(row, said.corrects().getAsLong(), index, told);
      }
      return;
    }
    double seconds = told.orElse(typedSeconds);
    zeroSeconds = entries.isEmpty() ? seconds : zeroSeconds;
    if (seconds < latestSeconds - ROUNDING_SECONDS) {
      backward(row, latestSeconds, seconds);
    }
    if (typedSeconds - seconds > LATE_SECONDS) {
      add(
          EntryCheck.ENTRY_TYPED_LATE,
          row,
          "entry " + row.seq() + " typed within an hour of " + moment(seconds),
          "typed at " + moment(typedSeconds));
    }
    latestSeconds = Math.max(latestSeconds, seconds);
    indexBySeq.put(row.seq(), entries.size());
    entries.add(new Entry(seconds, row.value()));
  }

  /** When it was read, by what it says, in seconds since the test's origin. */
  private OptionalDouble told(TypedEntry said, double typedSeconds) {
    if (said.at().isPresent()) {
      Duration since = Duration.between(header.start(), said.at().get());
      return OptionalDouble.of(since.toMillis() / 1e3);
    }
    if (said.afterSeconds().isEmpty()) {
      return OptionalDouble.empty();
    }
    double after = said.afterSeconds().getAsDouble();
    return OptionalDouble.of(entries.isEmpty() ? typedSeconds : zeroSeconds + after);
  }

  private void correct(RawRow row, long corrected, int index, OptionalDouble told) {
    Entry before = entries.get(index);
    Entry now = new Entry(told.orElse(before.seconds()), row.value());
    add(
        EntryCheck.ENTRY_CORRECTED,
        row,
        "entry " + corrected + " as it was: " + words(before),
        words(now)
            + ", by entry "
            + row.seq()
            + ", typed at "
            + moment(row.elapsedMicros() / 1e6)
            + " by "
            + header.operator().orElse("somebody who is not named"));
    if (index > 0 && now.seconds() < entries.get(index - 1).seconds() - ROUNDING_SECONDS) {
      backward(row, entries.get(index - 1).seconds(), now.seconds());
    }
    entries.set(index, now);
    indexBySeq.put(row.seq(), index);
  }

  private void backward(RawRow row, double before, double seconds) {
    add(
        EntryCheck.ENTRY_TIME_BACKWARD,
        row,
        "entry " + row.seq() + " read at " + moment(before) + " or later, as the one before it",
        "by what it says read at " + moment(seconds));
  }

  private String words(Entry entry) {
    return String.format(
        Locale.ROOT,
        "%s %s at %s",
        entry.value(),
        channel.facts().unit().symbol(),
        moment(entry.seconds()));
  }

  private String moment(double seconds) {
    return header
        .start()
        .plusMillis(Math.round(seconds * 1000))
        .truncatedTo(ChronoUnit.SECONDS)
        .toString();
  }

  private void add(EntryCheck check, RawRow row, String expected, String seen) {
    found.add(
        new Finding(
            check, Location.of(file, row.line()), Optional.of(header.test()), expected, seen));
  }

  @Override
  public void end(Consumer<Finding> findings) {
    found.forEach(findings);
  }
}
