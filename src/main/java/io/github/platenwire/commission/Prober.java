package io.github.platenwire.commission;

import io.github.platenwire.device.Asking;
import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.LineSettings;
import io.github.platenwire.port.Link;
import io.github.platenwire.port.LinkLostException;
import io.github.platenwire.port.Port;
import io.github.platenwire.port.PortException;
import io.github.platenwire.port.PortOpener;
import io.github.platenwire.reading.EscapedBytes;
import io.github.platenwire.reading.MonotonicClock;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Listens to one port at one setting after another and holds what it hears against definitions.
 * Writes to the port only what a definition reads with, and only if the plan allows it: commands
 * that a definition sends at the opening are left out. Used once a port; not thread-safe.
 */
public final class Prober {
  private static final int ENOUGH_BYTES = 1024;
  private static final int ENOUGH_FRAMES = 3;
  private static final int HEARD_BYTES = 60;

  /** So much of what was heard must be explained before other settings need not be tried. */
  private static final double CERTAIN = 0.98;

  /** A definition that explains less fits by chance, if at all. */
  private static final double LEAST_SHARE = 0.5;

  /** By so much more another setting must explain to go before an earlier, likelier one. */
  private static final double BETTER = 0.02;

  private final ProbePlan plan;
  private final MonotonicClock clock;
  private final Progress progress;
  private final List<ProbeFit> fits = new ArrayList<>();
  private long bytes;
  private double readableShare;
  private Optional<LineSettings> readable = Optional.empty();
  private String heard = "";
  private boolean opened;
  private @Nullable PortException refused;

  /** Opens the port at a setting. */
  @FunctionalInterface
  public interface Opening {
    /** What opens the port with its line so set. */
    PortOpener at(LineSettings settings);
  }

  /** Told what is being tried. */
  @FunctionalInterface
  public interface Progress {
    /**
     * One more thing is tried.
     *
     * @param step from 1
     * @param steps how many there are at most
     * @param words what is tried
     */
    void step(int step, int steps, String words);
  }

  /**
   * Prepares.
   *
   * @param clock ends the listening; the port must stamp by the same one
   */
  public Prober(ProbePlan plan, MonotonicClock clock, Progress progress) {
    this.plan = plan;
    this.clock = clock;
    this.progress = progress;
  }

  /**
   * Probes.
   *
   * @throws IOException if the port cannot be opened, as a {@link
   *     io.github.platenwire.port.PortException} with the remedy
   */
  public ProbeResult probe(Opening opening) throws IOException {
    List<DeviceDefinition> asked =
        plan.definitions().stream().filter(d -> plan.ask() && d.asking().isPresent()).toList();
    int steps = plan.settings().size() + asked.size();
    int step = 0;
    boolean silent = false;
    for (LineSettings settings : plan.settings()) {
      progress.step(++step, steps, "listening at " + words(settings));
      Optional<List<Chunk>> taken = listenIfPossible(opening.at(settings));
      if (taken.isEmpty()) {
        continue;
      }
      List<Chunk> chunks = taken.get();
      silent = chunks.isEmpty();
      if (silent || tryAll(chunks, settings)) {
        break; // a line that is silent at one speed is silent at all of them
      }
    }
    if (!opened && refused != null) {
      throw refused;
    }
    step = plan.settings().size();
    for (DeviceDefinition definition : silent ? asked : List.<DeviceDefinition>of()) {
      progress.step(++step, steps, "asking as '" + definition.name() + "' does");
      ask(definition, opening);
    }
    fits.sort(
        Comparator.comparing((ProbeFit fit) -> -fit.report().share())
            .thenComparing(fit -> -inStatedUnit(fit.report())));
    return new ProbeResult(bytes, fits, readable, heard);
  }

  /** What is heard; empty if the port is there but cannot be set so. */
  private Optional<List<Chunk>> listenIfPossible(PortOpener opener) throws IOException {
    try {
      List<Chunk> chunks = listen(opener, 2 * plan.listenNanos());
      opened = true;
      return Optional.of(chunks);
    } catch (PortException e) {
      if (e.reason() != PortException.Reason.UNUSABLE) {
        throw e;
      }
      refused = e;
      return Optional.empty();
    }
  }

  /** Whether a definition explains the bytes so well that no other setting need be tried. */
  private boolean tryAll(List<Chunk> chunks, LineSettings settings) {
    Sample sample = new Sample("port", chunks, /* timed= */ true);
    byte[] all = sample.bytes();
    bytes += all.length;
    look(all, settings);
    boolean certain = false;
    for (DeviceDefinition definition : plan.definitions()) {
      if (definition.asking().isEmpty()) {
        certain |=
            keep(
                new ProbeFit(
                    definition, settings, false, SampleDecoder.decode(definition, sample)));
      }
    }
    return certain;
  }

  private boolean keep(ProbeFit fit) {
    SampleReport report = fit.report();
    boolean fine = report.frames() >= 2 && report.share() >= LEAST_SHARE;
    Optional<ProbeFit> earlier =
        fits.stream()
            .filter(f -> f.definition().name().equals(fit.definition().name()))
            .findFirst();
    if (fine && (earlier.isEmpty() || earlier.get().report().share() + BETTER < report.share())) {
      earlier.ifPresent(fits::remove);
      fits.add(fit);
    }
    return report.frames() >= ENOUGH_FRAMES && report.share() >= CERTAIN;
  }

  /** Keeps the setting at which the bytes look most like text. */
  private void look(byte[] all, LineSettings settings) {
    long plain = 0;
    for (byte b : all) {
      plain += (b >= ' ' && b <= '~') || b == '\r' || b == '\n' || b == '\t' ? 1 : 0;
    }
    double share = (double) plain / all.length;
    if (share > readableShare) {
      readableShare = share;
      readable = Optional.of(settings);
      heard = EscapedBytes.encode(Arrays.copyOf(all, Math.min(all.length, HEARD_BYTES)));
    }
  }

  /** Of definitions that fit alike, the one whose unit is sent goes first. */
  private static long inStatedUnit(SampleReport report) {
    return report.channels().stream().mapToLong(ChannelRange::inStatedUnit).sum();
  }

  private void ask(DeviceDefinition definition, Opening opening) throws IOException {
    Asking full = definition.asking().orElseThrow();
    Asking reading =
        new Asking(
            List.of(),
            Optional.empty(),
            full.request(),
            full.intervalNanos(),
            full.timeoutNanos(),
            full.longest(),
            full.answers(),
            full.identityAnswers());
    long nanos = Math.max(plan.listenNanos(), 3 * full.timeoutNanos());
    List<Chunk> answers =
        listen(reading.opener(setFor(definition, opening), clock, Link.Pause.REAL), nanos).stream()
            .filter(chunk -> chunk.part() == Chunk.Part.STREAM)
            .toList();
    if (!answers.isEmpty()) {
      Sample sample = new Sample("port", answers, /* timed= */ true);
      keep(
          new ProbeFit(
              definition,
              definition.lineSettings(),
              true,
              SampleDecoder.decode(definition, sample)));
    }
  }

  /** The definition's own settings; those tried first where the line cannot be set so. */
  private PortOpener setFor(DeviceDefinition definition, Opening opening) {
    return () -> {
      try {
        return opening.at(definition.lineSettings()).open();
      } catch (PortException e) {
        if (e.reason() != PortException.Reason.UNUSABLE) {
          throw e;
        }
        return opening.at(plan.settings().get(0)).open();
      }
    };
  }

  /** What comes within a time, or until there is enough of it. */
  private List<Chunk> listen(PortOpener opener, long nanos) throws IOException {
    List<Chunk> chunks = new ArrayList<>();
    try (Port port = opener.open()) {
      long begun = clock.nanos();
      int count = 0;
      while (count < ENOUGH_BYTES && clock.nanos() - begun < (count > 0 ? nanos / 2 : nanos)) {
        Optional<Chunk> chunk = port.read();
        chunk.ifPresent(chunks::add);
        count += chunk.map(c -> c.bytes().length).orElse(0);
      }
    } catch (LinkLostException e) {
      return chunks; // the log has come to its end, or the device has gone: what was heard counts
    }
    return chunks;
  }

  /** Such as {@code 9600 8N1}. */
  public static String words(LineSettings settings) {
    return settings.baud()
        + " "
        + settings.dataBits()
        + settings.parity().name().charAt(0)
        + settings.stopBits();
  }
}
