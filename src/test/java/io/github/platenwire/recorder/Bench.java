package io.github.platenwire.recorder;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.emulate.EmulatedClock;
import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.InMemoryPort;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.MonotonicClock;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawHeader.KeptFile;
import io.github.platenwire.record.RawRow;
import io.github.platenwire.record.RecordFolder;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;

/**
 * One load channel on a port in memory, with an emulated clock: time passes only when a test says
 * so.
 */
final class Bench implements AutoCloseable {
  private static final String DEFINITION =
      """
      format = "platenwire-device 1"
      name = "pounds"
      title = "Pounds"
      kind = "line"
      [line]
      layout = "{load} lbf"
      terminator = "CRLF"
      longest = 40
      [fields.load]
      kind = "number"
      unit = "lbf"
      """;

  private static final HeaderChannel CHANNEL =
      TestPlans.load(
          Unit.POUND_FORCE, -1000, 60_000, "memory:test", new KeptFile("pounds", DEFINITION), 1000);

  final EmulatedClock clock = new EmulatedClock(Instant.parse("2026-11-25T07:15:02Z"));
  private final Queue<InMemoryPort> ports = new ArrayDeque<>();
  final RigConnection connection;
  private InMemoryPort port;
  private long nowNanos;
  private volatile boolean setBack;

  Bench() throws Exception {
    this(Duration.ZERO, SystemClocks.monotonic());
  }

  /**
   * A bench whose time of day can be set while it runs, and whose disk is timed by a given clock.
   *
   * @param earlier by how much the time of day is set back once {@link #setTimeOfDayBack} is called
   */
  Bench(Duration earlier, MonotonicClock stopwatch) throws Exception {
    port = new InMemoryPort("memory:test", 4096);
    ports.add(port);
    DeviceDefinition device = DeviceDefinition.parse(DEFINITION, "pounds.toml");
    connection =
        RigConnection.open(
            List.of(new ChannelSetup(CHANNEL, device)),
            (name, settings) ->
                () -> {
                  InMemoryPort next = ports.poll();
                  if (next == null) {
                    throw new IOException("nothing plugged in");
                  }
                  return next;
                },
            new RecorderClocks(
                clock, () -> setBack ? clock.now().minus(earlier) : clock.now(), stopwatch));
    nowNanos = clock.nanos();
  }

  /** Sets the time of day back; the monotonic clock goes on. */
  void setTimeOfDayBack() {
    setBack = true;
  }

  /** Sends a reading after some milliseconds. */
  void send(double afterMillis, String text) throws InterruptedException {
    nowNanos += (long) (afterMillis * 1e6);
    byte[] bytes = (text + "\r\n").getBytes(StandardCharsets.ISO_8859_1);
    port.offer(new Chunk(bytes, nowNanos));
    clock.advanceTo(nowNanos);
  }

  /** Lets time pass in silence. */
  void silence(double millis) {
    nowNanos += (long) (millis * 1e6);
    clock.advanceTo(nowNanos);
  }

  /** Pulls the cable out and plugs another in. */
  void replug() {
    InMemoryPort old = port;
    port = new InMemoryPort("memory:test", 4096);
    ports.add(port);
    old.end();
  }

  /** Pulls the cable out. */
  void unplug() {
    port.end();
  }

  Recording record(RecordFolder folder, Path file, CountingMethod method, Optional<Duration> giveUp)
      throws IOException {
    RecordingPlan plan = TestPlans.plan(folder, file, List.of(CHANNEL), method, giveUp);
    return connection.record(plan, progress -> {});
  }

  static List<RawRow> rows(Path file) throws Exception {
    List<RawRow> rows = new ArrayList<>();
    try (RawFileReader reader = RawFileReader.open(file)) {
      reader.readRows(rows::add);
    }
    return rows;
  }

  static List<String> events(Path file) throws Exception {
    return rows(file).stream()
        .filter(RawRow::isEvent)
        .map(row -> new String(row.received(), StandardCharsets.UTF_8))
        .toList();
  }

  @Override
  public void close() {
    connection.close();
  }
}
