package io.github.platenwire.audit;

import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawRow;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Looks at the load of each record: whether its readings look typed, and whether they stand in
 * another record too. Safe for several threads, one a record.
 */
final class ReadingsDetector implements TraceDetector {
  private final Path lab;

  /** Some 50 MB: the traces of hundreds of tests. Those beyond are read again where needed. */
  private static final long MOST_KEPT = 2_000_000;

  private final List<Seen> seen = new ArrayList<>();
  private final Map<String, LoadTrace> kept = new HashMap<>();
  private long keptReadings;

  /** Reads the raw files that it has to see again below a lab folder. */
  ReadingsDetector(Path lab) {
    this.lab = lab;
  }

  private record Seen(String file, String test, TraceShape shape) {}

  @Override
  public Watch begin(String file, RawHeader header) {
    Optional<ChannelFacts> load = load(header);
    return new LoadWatch(file, header.test(), load);
  }

  private static Optional<ChannelFacts> load(RawHeader header) {
    return header.channels().stream()
        .map(RawHeader.HeaderChannel::facts)
        .filter(facts -> facts.quantity() == Quantity.FORCE)
        .findFirst();
  }

  private final class LoadWatch implements Watch {
    private final String file;
    private final String test;
    private final Optional<ChannelFacts> load;
    private final TraceBuilder builder;

    LoadWatch(String file, String test, Optional<ChannelFacts> load) {
      this.file = file;
      this.test = test;
      this.load = load;
      this.builder = new TraceBuilder(load.map(ChannelFacts::name).orElse(""));
    }

    @Override
    public void row(RawRow row) {
      if (load.isPresent()) {
        builder.accept(row);
      }
    }

    @Override
    public void end(Consumer<Finding> findings) {
      LoadTrace trace = builder.trace();
      for (TypedReadings.Mark mark :
          load.map(facts -> TypedReadings.of(trace, facts.resolution())).orElse(List.of())) {
        findings.accept(
            new Finding(
                TraceCheck.TYPED_READINGS,
                Location.of(file),
                Optional.of(test),
                mark.expected(),
                mark.seen()));
      }
      TraceShape.of(trace).ifPresent(shape -> remember(new Seen(file, test, shape), trace));
    }
  }

  private void remember(Seen record, LoadTrace trace) {
    synchronized (seen) {
      seen.add(record);
      if (keptReadings + trace.length() <= MOST_KEPT) {
        keptReadings += trace.length();
        kept.put(record.file(), trace);
      }
    }
  }

  @Override
  public void across(Consumer<Finding> findings) {
    List<Seen> sorted;
    synchronized (seen) {
      sorted = seen.stream().sorted(Comparator.comparing(Seen::file)).toList();
    }
    TraceTwins twins = new TraceTwins();
    sorted.forEach(record -> twins.add(record.file(), record.shape()));
    try {
      for (TraceTwins.Twin twin : twins.find(this::read)) {
        Optional<String> test = test(sorted, twin.later());
        // two files of one test are a duplicate, which is told elsewhere
        if (!test.equals(test(sorted, twin.earlier()))) {
          findings.accept(finding(twin, test));
        }
      }
    } catch (IOException e) {
      findings.accept(
          new Finding(
              RawCheck.UNREADABLE,
              Location.of("records"),
              Optional.empty(),
              "raw files that can be read again to compare their readings",
              String.valueOf(e.getMessage())));
    }
  }

  private static Optional<String> test(List<Seen> records, String file) {
    return records.stream().filter(r -> r.file().equals(file)).map(Seen::test).findFirst();
  }

  private static Finding finding(TraceTwins.Twin twin, Optional<String> test) {
    TwinTest.Evidence evidence = twin.evidence();
    String how =
        evidence.byNoise()
            ? "noise that correlates by %.2f with that of %s (two tests stay below 0.5)"
            : "steps of which a share of %.3f comes at the same readings as in %s, though neither loading"
                + " was even enough for that";
    return new Finding(
        TraceCheck.REUSED_TRACE,
        Location.of(twin.later()),
        test,
        "readings of its own",
        String.format(Locale.ROOT, how, evidence.figure(), twin.earlier()));
  }

  private LoadTrace read(String file) throws IOException {
    synchronized (seen) {
      LoadTrace known = kept.get(file);
      if (known != null) {
        return known;
      }
    }
    try (RawFileReader reader = RawFileReader.open(lab.resolve(file))) {
      TraceBuilder builder =
          new TraceBuilder(load(reader.header()).map(ChannelFacts::name).orElse(""));
      reader.readRows(builder::accept);
      return builder.trace();
    } catch (RawFileException e) {
      throw new IOException(e.getMessage(), e);
    }
  }
}
