package io.github.platenwire.recorder;

import io.github.platenwire.port.Link;
import io.github.platenwire.port.PortException;
import io.github.platenwire.port.PortOpener;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;

/**
 * A rig whose links are open: first to look at what they say, then to record one test. From the
 * moment of opening one thread takes everything that the links' threads bring; what came in the
 * last seconds before the start becomes the beginning of the record.
 *
 * <p>Safe for any thread.
 */
public final class RigConnection implements AutoCloseable {
  /** Chunks, not bytes: each is what one read brought, at most 64 KiB. */
  private static final int QUEUE_CHUNKS = 1024;

  private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(5);

  private final List<Link> links = new ArrayList<>();
  private final List<Intake> intakes = new ArrayList<>();
  private final RecorderThread recorder;

  private RigConnection(RecorderThread recorder) {
    this.recorder = recorder;
  }

  /**
   * Opens every port of a rig.
   *
   * @param channels the rig's channels
   * @param openers knows how to open its ports
   * @param clocks stamps and times
   * @throws PortException if a port cannot be opened, with the remedy; those opened before are
   *     given back
   * @throws IOException for any other failure of a port
   * @throws IllegalArgumentException if the channels do not go together
   */
  public static RigConnection open(
      List<ChannelSetup> channels, OpenerFactory openers, RecorderClocks clocks)
      throws IOException {
    List<Source> sources = Sources.of(channels);
    BlockingQueue<LinkEvent> queue = new ArrayBlockingQueue<>(QUEUE_CHUNKS);
    RigConnection connection =
        new RigConnection(new RecorderThread(channels, sources, queue, clocks));
    connection.recorder.start();
    try {
      for (int i = 0; i < sources.size(); i++) {
        connection.openLink(i, sources.get(i), queue, openers, clocks);
      }
    } catch (IOException | RuntimeException e) {
      connection.close();
      throw e;
    }
    return connection;
  }

  private void openLink(
      int index,
      Source source,
      BlockingQueue<LinkEvent> queue,
      OpenerFactory openers,
      RecorderClocks clocks)
      throws IOException {
    Intake intake = new Intake(index, queue, source.device()::countFrames, PATIENCE_NANOS);
    intakes.add(intake);
    PortOpener plain = openers.opener(source.port(), source.device().lineSettings());
    PortOpener opener =
        source
            .device()
            .asking()
            .map(asking -> asking.opener(plain, clocks.monotonic(), Link.Pause.REAL))
            .orElse(plain);
    links.add(Link.open(source.port(), opener, intake, clocks.monotonic()));
  }

  /** What the links say now. */
  public Preview preview() {
    return recorder.preview();
  }

  /**
   * Waits until the links have said enough.
   *
   * @param enough whether a preview is enough
   * @param atMostNanos how long to wait, in the machine's own time
   * @return the preview then, enough or not
   */
  public Preview awaitPreview(Predicate<Preview> enough, long atMostNanos) {
    return recorder.awaitPreview(enough, atMostNanos);
  }

  /**
   * Starts to record a test. Once only.
   *
   * @param plan what and where
   * @param listener told after each write
   * @throws IllegalStateException if a test was started before
   * @throws IOException if the raw file cannot be made
   */
  public Recording record(RecordingPlan plan, RecordingListener listener) throws IOException {
    return recorder.record(plan, listener);
  }

  /**
   * Gives the ports back. A test still being recorded is ended in order first, with reason {@code
   * operator}.
   */
  @Override
  public void close() {
    recorder.end();
    intakes.forEach(Intake::end);
    links.forEach(Link::close);
  }
}
