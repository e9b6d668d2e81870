package io.github.platenwire.recorder;

import io.github.platenwire.method.MethodResult;
import io.github.platenwire.method.MethodRun;
import io.github.platenwire.port.Chunk.Part;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.ChannelTally;
import io.github.platenwire.record.CloseReason;
import io.github.platenwire.record.Closing;
import io.github.platenwire.record.RawFileWriter;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.recorder.RecordedTest.Failure;
import io.github.platenwire.recorder.RecordedTest.Kind;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.LongFunction;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One test from its first row to its last line. {@link #step} and what it calls are confined to the
 * recorder thread; the {@link Recording} face is safe for any thread.
 */
final class ActiveTest implements Recording {
  private static final Logger LOG = LoggerFactory.getLogger(ActiveTest.class);

  private final RecordingPlan plan;
  private final RecordingListener listener;
  private final List<ChannelSetup> channels;
  private final List<Source> sources;
  private final RecorderClocks clocks;
  private final Path file;
  private final RawHeader header;
  private final long originNanos;
  private final MethodRun run;
  private final TestFile test;
  private final List<ChannelTally> tallies;
  private final LateWatch late;
  private final ClockWatch clockWatch;
  private final LinkStates links;
  private final ConcurrentLinkedQueue<String> notes = new ConcurrentLinkedQueue<>();
  private final CompletableFuture<RecordedTest> over = new CompletableFuture<>();
  private volatile boolean stopOrdered;
  private volatile @Nullable Progress progress;

  private ActiveTest(
      RecordingPlan plan,
      RecordingListener listener,
      List<ChannelSetup> channels,
      List<Source> sources,
      RecorderClocks clocks,
      long originNanos,
      Instant start)
      throws IOException {
    this.plan = plan;
    this.listener = listener;
    this.channels = channels;
    this.sources = sources;
    this.clocks = clocks;
    this.originNanos = originNanos;
    this.file = plan.namer().newFile(start);
    this.header = plan.headers().header(start, originNanos, file);
    this.run = plan.method().start(header.specimen(), header.setting());
    this.tallies = channels.stream().map(c -> new ChannelTally(c.header().facts().name())).toList();
    this.late = new LateWatch(channels, clocks.monotonic().nanos());
    this.clockWatch = new ClockWatch(clocks.wall(), clocks.monotonic());
    this.links = new LinkStates(channels, sources);
    this.test =
        new TestFile(
            RawFileWriter.create(plan.folder(), file, header), run, tallies, clocks.stopwatch());
  }

  /**
   * Makes the file and writes what was held before the start.
   *
   * @throws IOException if the file cannot be made
   */
  static ActiveTest start(
      RecordingPlan plan,
      RecordingListener listener,
      List<ChannelSetup> channels,
      List<Source> sources,
      RecorderClocks clocks,
      HeldEvents held)
      throws IOException {
    long nowNanos = clocks.monotonic().nanos();
    LinkEvent oldest = held.oldest();
    long originNanos = oldest == null ? nowNanos : Math.min(nowNanos, oldest.atNanos());
    Instant start = clocks.wall().now().minusNanos(nowNanos - originNanos);
    ActiveTest active =
        new ActiveTest(plan, listener, channels, sources, clocks, originNanos, start);
    sources.forEach(Source::join);
    active.begin(held);
    return active;
  }

  private void begin(HeldEvents held) {
    test.event(0, "start");
    // what a device said before the start may have been let go since; its name may not be
    sources.forEach(source -> tellIdentity(source, 0));
    List<LinkEvent> events = new ArrayList<>();
    for (LinkEvent event = held.take(); event != null; event = held.take()) {
      events.add(event);
    }
    step(events, originNanos, /* mayStop= */ false);
  }

  boolean isOver() {
    return over.isDone();
  }

  boolean isStopOrdered() {
    return stopOrdered;
  }

  /** Records what came, then looks at time and notes, and stops if it may and was told to. */
  void step(List<LinkEvent> events, long nowNanos, boolean mayStop) {
    try {
      for (LinkEvent event : events) {
        handle(event);
        if (test.isFull()) {
          test.writeAndAnalyse();
        }
      }
      takeNotes(nowNanos);
      watch(nowNanos);
      test.writeAndAnalyse();
      test.time(Math.max(micros(nowNanos), test.lastAnyMicros()));
      publish();
      endIfDue(nowNanos, mayStop);
    } catch (IOException e) {
      storageFailed(e);
    }
  }

  private void handle(LinkEvent event) {
    Source source = sources.get(event.source());
    if (event instanceof LinkEvent.Bytes bytes) {
      if (bytes.chunk().part() == Part.IDENTITY && source.identify(bytes.chunk())) {
        tellIdentity(source, micros(bytes.atNanos()));
      }
      source.decode(bytes.chunk(), this::reading);
    } else {
      linkEvent(event, source);
    }
  }

  private void linkEvent(LinkEvent event, Source source) {
    int index = event.source();
    if (event instanceof LinkEvent.Back) {
      source.join();
      write(event, at -> links.back(index, at));
    } else {
      source.cut(this::reading);
      if (event instanceof LinkEvent.Lost lost) {
        LOG.warn("link of {} lost: {}", source.port(), lost.why());
        write(event, at -> links.lost(index, at, lost.why()));
      } else if (event instanceof LinkEvent.Dropped dropped) {
        write(event, at -> links.dropped(index, dropped.bytes(), dropped.frames()));
      }
    }
  }

  private void write(LinkEvent event, LongFunction<List<String>> texts) {
    long at = test.eventMicros(micros(event.atNanos()));
    texts.apply(at).forEach(text -> test.event(at, text));
  }

  private void tellIdentity(Source source, long micros) {
    if (source.identity().isEmpty()) {
      return;
    }
    for (int channel : source.channels()) {
      String name = channels.get(channel).header().facts().name();
      test.event(micros, "identity " + name + " " + source.identity());
    }
  }

  private void reading(
      int channel, byte[] frame, int from, int length, long nanos, double value, Quality quality) {
    late.heard(channel, nanos);
    test.reading(channel, frame, from, length, micros(nanos), value, quality);
  }

  private void takeNotes(long nowNanos) {
    for (String note = notes.poll(); note != null; note = notes.poll()) {
      test.event(micros(nowNanos), "note " + note);
    }
  }

  private void watch(long nowNanos) {
    for (int channel = 0; channel < channels.size(); channel++) {
      if (late.becameLate(channel, nowNanos)) {
        test.late(channel, micros(nowNanos));
      }
    }
    clockWatch
        .look()
        .ifPresent(
            text -> {
              links.clockStepped(text);
              test.event(micros(nowNanos), text);
            });
  }

  private void endIfDue(long nowNanos, boolean mayStop) throws IOException {
    Optional<MethodRun.Ending> ending = run.ending();
    if (ending.isPresent()) {
      CloseReason reason =
          switch (ending.get()) {
            case BREAK -> CloseReason.BREAK;
            case RANGE -> CloseReason.RANGE;
          };
      finish(reason, nowNanos, Optional.empty());
    } else if (mayStop) {
      finish(CloseReason.OPERATOR, nowNanos, Optional.empty());
    } else {
      long silence = late.silenceNanos(nowNanos);
      Optional<Duration> patience = plan.giveUpAfter();
      if (patience.isPresent() && silence > patience.get().toNanos()) {
        String words =
            String.format(
                Locale.ROOT,
                "nothing has come from %s for %.0f s; the record was closed as interrupted. "
                    + "Look at the cable and the device, then test a companion.",
                String.join(", ", sources.stream().map(Source::port).toList()),
                silence / 1e9);
        finish(CloseReason.INTERRUPTED, nowNanos, Optional.of(new Failure(Kind.LINK, words)));
      }
    }
  }

  private void finish(CloseReason reason, long nowNanos, Optional<Failure> failure)
      throws IOException {
    long micros = Math.max(micros(nowNanos), test.lastAnyMicros());
    Closing closing =
        test.finish(
            reason, "stop " + reason.word(), micros, clocks.wall().now(), links.lostReadings());
    publish();
    complete(Optional.of(closing), failure);
  }

  private void storageFailed(IOException cause) {
    LOG.error("the record could not be written on", cause);
    plan.folder().freeReserve(file);
    boolean forceFailed = cause instanceof TestFile.ForceFailedException;
    String words = "the disk failed: " + cause.getMessage();
    Optional<Closing> closing = Optional.empty();
    try {
      closing =
          Optional.of(
              test.finishAfterFailure(
                  "stop interrupted storage failed",
                  clocks.wall().now(),
                  links.lostReadings(),
                  !forceFailed));
    } catch (IOException e) {
      LOG.error("not even the last line could be written", e);
    }
    publish();
    complete(closing, Optional.of(new Failure(Kind.STORAGE, words)));
  }

  /** Ends the record after a fault of the program itself. */
  void fail(RuntimeException fault) {
    storageFailed(new IOException("the program failed: " + fault, fault));
  }

  private void complete(Optional<Closing> closing, Optional<Failure> failure) {
    try {
      test.close();
    } catch (IOException e) {
      LOG.error("{} could not be given back", file, e);
    }
    MethodResult result = links.addTo(run.finish());
    over.complete(new RecordedTest(file, header, result, closing, tallies, failure));
  }

  private void publish() {
    long readings = 0;
    long marked = 0;
    for (ChannelTally tally : tallies) {
      readings += tally.received();
      marked += tally.marked();
    }
    Progress now =
        new Progress(
            file,
            header.start(),
            run.view(),
            readings,
            marked,
            links.lostReadings(),
            links.down(),
            test.lastEvent(),
            test.events());
    progress = now;
    try {
      listener.written(now);
    } catch (RuntimeException e) {
      LOG.error("a listener failed; the recording goes on", e);
    }
  }

  private long micros(long nanos) {
    return Math.max(0, nanos - originNanos) / 1000;
  }

  @Override
  public void stop() {
    stopOrdered = true;
  }

  @Override
  public void note(String words) {
    notes.add(words);
  }

  @Override
  public Optional<Progress> progress() {
    return Optional.ofNullable(progress);
  }

  @Override
  public RecordedTest await() {
    return over.join();
  }
}
