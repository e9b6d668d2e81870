package io.github.platenwire.device;

import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.Chunk.Part;
import io.github.platenwire.port.Link.Pause;
import io.github.platenwire.port.LinkLostException;
import io.github.platenwire.port.Port;
import io.github.platenwire.reading.MonotonicClock;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * A port to a device that must be asked. Each {@link #read} goes one step on: waits for the next
 * request to be due, or sends it, or waits for the answer. Nothing that the device sends is thrown
 * away: an answer comes as one chunk, what nobody asked for as a stray one. As thread-safe as a
 * port is.
 *
 * <p>An answer has no number. So no request is sent while bytes wait to be read, and after a
 * time-out none before the line has been still: a late answer then cannot pass for that to the next
 * request.
 */
final class AskingPort implements Port {
  private static final long SLICE_NANOS = TimeUnit.MILLISECONDS.toNanos(50);

  private final Port port;
  private final Asking asking;
  private final MonotonicClock clock;
  private final Pause pause;
  private final CountDownLatch closing = new CountDownLatch(1);
  private final byte[] answer;
  private final Queue<Chunk> ready = new ArrayDeque<>();
  private State state = State.OPENING;
  private int length;
  private long askedNanos;
  private long lastByteNanos;
  private long dueNanos;
  private boolean identifying;

  /** Where the talk with the device stands. */
  private enum State {
    /** Nothing has been sent yet. */
    OPENING,
    /** The next request is not due yet. */
    WAITING,
    /** A request was sent, its answer is not whole yet. */
    ASKED,
    /** An answer is overdue; whatever of it may still come is let pass first. */
    SETTLING
  }

  AskingPort(Port port, Asking asking, MonotonicClock clock, Pause pause) {
    this.port = port;
    this.asking = asking;
    this.clock = clock;
    this.pause = pause;
    this.answer = new byte[asking.longest()];
  }

  @Override
  public String address() {
    return port.address();
  }

  @Override
  public Optional<Chunk> read() throws IOException {
    if (ready.isEmpty()) {
      step();
    }
    return Optional.ofNullable(ready.poll());
  }

  private void step() throws IOException {
    switch (state) {
      case OPENING -> open();
      case WAITING -> askWhenDue();
      case ASKED -> awaitAnswer();
      case SETTLING -> settle();
    }
  }

  private void open() throws IOException {
    if (takeStray()) {
      return;
    }
    for (byte[] command : asking.opening()) {
      port.write(command);
    }
    dueNanos = clock.nanos();
    identifying = asking.identity().isPresent();
    state = State.WAITING;
  }

  private void askWhenDue() throws IOException {
    long leftNanos = dueNanos - clock.nanos();
    if (leftNanos > 0 && !takeStray()) {
      await(Math.min(leftNanos, SLICE_NANOS));
      leftNanos = dueNanos - clock.nanos();
    }
    if (leftNanos > 0 || !ready.isEmpty() || takeStray()) {
      return;
    }
    port.write(identifying ? asking.identity().orElseThrow() : asking.request());
    askedNanos = clock.nanos();
    dueNanos = identifying ? askedNanos : Math.max(dueNanos + asking.intervalNanos(), askedNanos);
    length = 0;
    state = State.ASKED;
  }

  private void await(long nanos) throws LinkLostException {
    try {
      pause.pause(nanos, closing);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    if (closing.getCount() == 0) {
      throw new LinkLostException(address() + ": closed by this program");
    }
  }

  /** Whether bytes waited that nobody had asked for. */
  private boolean takeStray() throws IOException {
    if (!port.hasBytes()) {
      return false;
    }
    Optional<Chunk> stray = port.read();
    stray.ifPresent(this::stray);
    return stray.isPresent();
  }

  private void stray(Chunk chunk) {
    ready.add(new Chunk(chunk.bytes(), chunk.arrivalNanos(), Part.STRAY));
  }

  private void awaitAnswer() throws IOException {
    Optional<Chunk> chunk = port.read();
    if (chunk.isPresent()) {
      take(chunk.get());
    }
    if (state == State.ASKED && clock.nanos() - askedNanos >= asking.timeoutNanos()) {
      giveUp();
    }
  }

  private void take(Chunk chunk) {
    byte[] bytes = chunk.bytes();
    int taken = Math.min(bytes.length, answer.length - length);
    System.arraycopy(bytes, 0, answer, length, taken);
    length += taken;
    lastByteNanos = chunk.arrivalNanos();
    int whole =
        (identifying ? asking.identityAnswers() : asking.answers()).wholeLength(answer, length);
    if (whole > 0) {
      hand(whole, identifying ? Part.IDENTITY : Part.STREAM);
      strayAfter(Arrays.copyOfRange(answer, whole, length));
      identifying = false;
      state = State.WAITING;
    } else if (length == answer.length) {
      giveUp();
    }
    strayAfter(Arrays.copyOfRange(bytes, taken, bytes.length));
  }

  private void hand(int count, Part part) {
    ready.add(new Chunk(Arrays.copyOf(answer, count), lastByteNanos, part));
  }

  private void strayAfter(byte[] rest) {
    if (rest.length > 0) {
      ready.add(new Chunk(rest, lastByteNanos, Part.STRAY));
    }
  }

  private void giveUp() {
    if (length > 0) {
      hand(length, identifying ? Part.STRAY : Part.TORN);
    }
    identifying = false;
    state = State.SETTLING;
  }

  private void settle() throws IOException {
    Optional<Chunk> late = port.read();
    late.ifPresent(this::stray);
    if (late.isEmpty()) {
      state = State.WAITING;
    }
  }

  @Override
  public boolean hasBytes() {
    return !ready.isEmpty();
  }

  /** A device that is asked by its definition is asked nothing else. */
  @Override
  public void write(byte[] bytes) throws IOException {
    throw new IOException(address() + ": only the definition's requests are sent to this device");
  }

  @Override
  public void close() {
    closing.countDown();
    port.close();
  }
}
