package io.github.platenwire.port;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.emulate.PseudoTerminal;
import io.github.platenwire.reading.SystemClocks;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

@Timeout(30)
class LinkTest {
  private final AtomicLong nowNanos = new AtomicLong(5_000);
  private final List<String> told = Collections.synchronizedList(new ArrayList<>());
  private final LinkListener listener = new Told();

  /** Writes down what it is told, with the thread's name. */
  private final class Told implements LinkListener {
    @Override
    public void bytes(Chunk chunk) {
      told.add("bytes " + new String(chunk.bytes(), StandardCharsets.US_ASCII));
    }

    @Override
    public void lost(long atNanos, String why) {
      told.add("lost " + atNanos + " " + why);
    }

    @Override
    public void back(long atNanos) {
      told.add("back " + atNanos);
    }
  }

  private static Chunk chunk(String text) {
    return new Chunk(text.getBytes(StandardCharsets.US_ASCII), 0);
  }

  private static InMemoryPort endedAfter(String... texts) {
    InMemoryPort port = new InMemoryPort("memory", 100);
    try {
      for (String text : texts) {
        port.offer(chunk(text));
      }
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
    port.end();
    return port;
  }

  private Link open(PortOpener opener, Link.FirstOpen first, Link.Pause pause) throws IOException {
    return Link.open("test", opener, listener, nowNanos::get, first, pause);
  }

  private static PortException missing() {
    return new PortException(PortException.Reason.MISSING, "memory: not there");
  }

  @Test
  void open_portMissing_failsAtOnceAndStartsNothing() {
    assertThatThrownBy(
            () ->
                Link.open(
                    "none",
                    () -> {
                      throw missing();
                    },
                    listener,
                    nowNanos::get))
        .isInstanceOf(PortException.class)
        .hasMessage("memory: not there");
    assertThat(Thread.getAllStackTraces().keySet())
        .extracting(Thread::getName)
        .doesNotContain("link-none");
    assertThat(told).isEmpty();
  }

  @Test
  void open_portMayComeLater_lostThenBack() throws IOException {
    AtomicInteger opens = new AtomicInteger();
    InMemoryPort port = new InMemoryPort("memory", 1);
    PortOpener opener =
        () -> {
          if (opens.incrementAndGet() < 3) {
            throw missing();
          }
          return port;
        };
    try (Link link = open(opener, Link.FirstOpen.MAY_COME_LATER, (nanos, closing) -> true)) {
      Eventually.holds(() -> told.size() == 2);
      assertThat(told).containsExactly("lost 5000 memory: not there", "back 5000");
      assertThat(link).isNotNull();
    }
    assertThat(opens).hasValue(3);
  }

  @Test
  void run_portLost_toldInOrderAndReopened() throws IOException {
    List<Port> ports = new ArrayList<>(List.of(endedAfter("a", "b"), endedAfter("c")));
    InMemoryPort last = new InMemoryPort("memory", 1);
    ports.add(last);
    PortOpener opener = () -> ports.remove(0);
    try (Link link = open(opener, Link.FirstOpen.MUST_SUCCEED, (nanos, closing) -> true)) {
      Eventually.holds(() -> told.size() == 7);
      assertThat(link).isNotNull();
    }
    assertThat(told)
        .containsExactly(
            "bytes a",
            "bytes b",
            "lost 5000 memory: the device has gone",
            "back 5000",
            "bytes c",
            "lost 5000 memory: the device has gone",
            "back 5000");
  }

  @Test
  void run_portStaysAway_waitsDoubleUpToTwoSecondsAndAnewAfterBytes() throws IOException {
    List<Long> waitsMillis = Collections.synchronizedList(new ArrayList<>());
    AtomicInteger opens = new AtomicInteger();
    PortOpener opener =
        () ->
            switch (opens.incrementAndGet()) {
              case 1 -> endedAfter();
              case 9 -> endedAfter("x");
              case 11 -> new InMemoryPort("memory", 1);
              default -> throw missing();
            };
    Link.Pause pause = (nanos, closing) -> waitsMillis.add(nanos / 1_000_000);
    try (Link link = open(opener, Link.FirstOpen.MUST_SUCCEED, pause)) {
      Eventually.holds(() -> opens.get() == 11);
      assertThat(link).isNotNull();
    }
    assertThat(waitsMillis)
        .containsExactly(100L, 200L, 400L, 800L, 1600L, 2000L, 2000L, 2000L, 100L, 200L);
  }

  @Test
  void run_portComesAndGoesWithoutBytes_waitsStillGrow() throws IOException {
    List<Long> waitsMillis = Collections.synchronizedList(new ArrayList<>());
    AtomicInteger opens = new AtomicInteger();
    PortOpener opener =
        () -> opens.incrementAndGet() < 4 ? endedAfter() : new InMemoryPort("memory", 1);
    Link.Pause pause = (nanos, closing) -> waitsMillis.add(nanos / 1_000_000);
    try (Link link = open(opener, Link.FirstOpen.MUST_SUCCEED, pause)) {
      Eventually.holds(() -> opens.get() == 4);
      assertThat(link).isNotNull();
    }
    assertThat(waitsMillis).containsExactly(100L, 200L, 400L);
  }

  @Test
  void run_listenerThrows_linkGoesOn() throws IOException {
    LinkListener failing =
        new LinkListener() {
          @Override
          public void bytes(Chunk chunk) {
            listener.bytes(chunk);
            throw new IllegalStateException("listener failed");
          }

          @Override
          public void lost(long atNanos, String why) {
            listener.lost(atNanos, why);
            throw new AssertionError("listener failed");
          }

          @Override
          public void back(long atNanos) {
            listener.back(atNanos);
            throw new IllegalStateException("listener failed");
          }
        };
    List<Port> ports = new ArrayList<>(List.of(endedAfter("a", "b")));
    ports.add(endedAfter("c"));
    ports.add(new InMemoryPort("memory", 1));
    try (Link link =
        Link.open(
            "test",
            () -> ports.remove(0),
            failing,
            nowNanos::get,
            Link.FirstOpen.MUST_SUCCEED,
            (nanos, closing) -> true)) {
      Eventually.holds(() -> told.size() == 7);
      assertThat(link).isNotNull();
    }
    assertThat(told).contains("bytes a", "bytes b", "bytes c");
  }

  /** Tells which thread closed it. */
  private static final class Watched implements Port {
    private final List<String> closers = Collections.synchronizedList(new ArrayList<>());
    private final CountDownLatch reading = new CountDownLatch(1);

    @Override
    public String address() {
      return "watched";
    }

    @Override
    public Optional<Chunk> read() {
      reading.countDown();
      return Optional.empty();
    }

    @Override
    public void write(byte[] bytes) {}

    @Override
    public void close() {
      closers.add(Thread.currentThread().getName());
    }
  }

  @Test
  void close_whileReading_portIsClosedByItsReaderAndNoLossIsTold() throws Exception {
    Watched port = new Watched();
    Link link = open(() -> port, Link.FirstOpen.MUST_SUCCEED, Link.Pause.REAL);
    port.reading.await();

    link.close();
    link.close();

    assertThat(port.closers).containsExactly("link-test");
    assertThat(told).isEmpty();
  }

  @Test
  void close_readStuck_portIsClosedForIt() throws Exception {
    CountDownLatch closed = new CountDownLatch(1);
    Port stuck =
        new Port() {
          @Override
          public String address() {
            return "stuck";
          }

          @Override
          public Optional<Chunk> read() throws IOException {
            try {
              closed.await();
            } catch (InterruptedException e) {
              throw new IllegalStateException(e);
            }
            throw new LinkLostException("closed");
          }

          @Override
          public void write(byte[] bytes) {}

          @Override
          public void close() {
            closed.countDown();
          }
        };
    Link link = open(() -> stuck, Link.FirstOpen.MUST_SUCCEED, Link.Pause.REAL);

    link.close();

    assertThat(closed.getCount()).isZero();
    assertThat(told).isEmpty();
  }

  @Test
  void close_whileWaitingToReopen_endsAtOnce() throws Exception {
    AtomicInteger opens = new AtomicInteger();
    CountDownLatch waiting = new CountDownLatch(1);
    PortOpener opener =
        () -> {
          if (opens.incrementAndGet() > 1) {
            throw missing();
          }
          return endedAfter();
        };
    Link.Pause pause =
        (nanos, closing) -> {
          waiting.countDown();
          closing.await();
          return true;
        };
    Link link = open(opener, Link.FirstOpen.MUST_SUCCEED, pause);
    waiting.await();

    link.close();

    assertThat(opens).hasValue(1);
    Eventually.holds(
        () ->
            Thread.getAllStackTraces().keySet().stream()
                .noneMatch(thread -> thread.getName().equals("link-test")));
  }

  @Test
  void close_byTheListener_endsTheLink() throws Exception {
    AtomicReference<Link> link = new AtomicReference<>();
    CountDownLatch known = new CountDownLatch(1);
    InMemoryPort port = new InMemoryPort("memory", 1);
    LinkListener closing =
        new LinkListener() {
          @Override
          public void bytes(Chunk chunk) {
            try {
              known.await();
            } catch (InterruptedException e) {
              throw new IllegalStateException(e);
            }
            link.get().close();
          }

          @Override
          public void lost(long atNanos, String why) {
            listener.lost(atNanos, why);
          }

          @Override
          public void back(long atNanos) {
            listener.back(atNanos);
          }
        };
    link.set(Link.open("test", () -> port, closing, nowNanos::get));
    known.countDown();

    port.offer(chunk("stop"));

    Eventually.holds(() -> !offered(port));
    assertThat(told).isEmpty();
  }

  private static boolean offered(InMemoryPort port) {
    try {
      return port.offer(chunk("more"));
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  @EnabledOnOs({OS.LINUX, OS.MAC})
  void run_devicePluggedInAgainUnderAnotherName_foundThroughItsLink(@TempDir Path folder)
      throws IOException {
    Path name = folder.resolve("load-frame");
    PseudoTerminal first = PseudoTerminal.open();
    try (PseudoTerminal second = PseudoTerminal.open()) {
      Files.createSymbolicLink(name, Path.of(first.path()));
      PortOpener opener =
          Ports.opener(
              PortAddress.parse(name.toString()), LineSettings.COMMON, SystemClocks.monotonic());
      AtomicInteger waits = new AtomicInteger();
      Link.Pause pause = (nanos, closing) -> replug(waits, name, second);
      try (Link link = open(opener, Link.FirstOpen.MUST_SUCCEED, pause)) {
        first.write(new byte[] {'1'}, 0, 1);
        Eventually.holds(() -> told.contains("bytes 1"));
        first.close();
        Eventually.holds(() -> told.contains("back 5000"));
        second.write(new byte[] {'2'}, 0, 1);
        Eventually.holds(() -> told.contains("bytes 2"));
        assertThat(link).isNotNull();
      }
    }
    assertThat(told).hasSize(4);
    assertThat(told.get(1)).startsWith("lost 5000 " + name + ": the line hung up");
  }

  /** Nothing is there at the first attempt; the device is back at the second. */
  private static boolean replug(AtomicInteger waits, Path name, PseudoTerminal device) {
    try {
      if (waits.incrementAndGet() == 1) {
        Files.delete(name);
      } else if (Files.notExists(name)) {
        Files.createSymbolicLink(name, Path.of(device.path()));
      }
      return true;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
