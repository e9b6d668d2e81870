package io.github.platenwire.emulate;

import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.Locale;
import java.util.NoSuchElementException;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/**
 * What one device of a beam test reads and sends, made while it is asked for: the same truth,
 * device and seed give the same readings. Lines are {@code +012.34 kN} and {@code +0.1234 mm}, each
 * ended by CR and LF. Not thread-safe.
 */
public final class BeamReadings implements Iterator<BeamReadings.Reading> {
  private static final double FALL_MILLIMETRES = -2.5;
  private static final double JUMP_MILLIMETRES = 0.5;
  private static final double END_MILLIMETRES = 5.5;

  private final BeamTruth truth;
  private final BeamDevice device;
  private final Random random;
  private double seconds;
  private double stuckAt = Double.NaN;
  private @Nullable Reading upcoming;

  /**
   * One reading.
   *
   * @param sentNanos when it is sent, since the start of the program
   * @param value newtons or millimetres as shown
   */
  public record Reading(long sentNanos, double value) {}

  /** Starts at the program's start. */
  public BeamReadings(BeamTruth truth, BeamDevice device, long seed) {
    this.truth = truth;
    this.device = device;
    random = new Random(seed * 0x9E3779B97F4A7C15L + device.face());
    seconds = random.nextDouble() / device.rateHertz();
  }

  @Override
  public boolean hasNext() {
    if (upcoming == null) {
      upcoming = make();
    }
    return upcoming != null;
  }

  @Override
  public Reading next() {
    Reading next = hasNext() ? upcoming : null;
    if (next == null) {
      throw new NoSuchElementException("the emulated test is over");
    }
    upcoming = null;
    return next;
  }

  private @Nullable Reading make() {
    double at = seconds;
    seconds += 1 / device.rateHertz();
    boolean silent =
        device.fault().isPresent()
            && device.fault().get().kind() == BeamDevice.Kind.FALLS_SILENT
            && at >= device.fault().get().seconds();
    if (at >= truth.seconds() || silent) {
      return null;
    }
    double real = device.isLoad() ? truth.loadAt(at) : truth.openingAt(device.face(), at);
    double value = real * device.scale() + device.zero() + device.noise() * random.nextGaussian();
    double shown = stepped(faulty(value, at));
    return new Reading(Math.round(at * 1e9) + device.delayNanos(), shown);
  }

  private double faulty(double value, double at) {
    if (device.fault().isEmpty() || at < device.fault().get().seconds()) {
      return value;
    }
    if (Double.isNaN(stuckAt)) {
      stuckAt = value;
    }
    return switch (device.fault().get().kind()) {
      case STICKS -> stuckAt;
      case FALLS_OFF -> FALL_MILLIMETRES;
      case SATURATES -> END_MILLIMETRES;
      case JUMPS -> value + JUMP_MILLIMETRES;
      case FALLS_SILENT -> value;
    };
  }

  private double stepped(double value) {
    return device.step() == 0 ? value : Math.rint(value / device.step()) * device.step();
  }

  /** A reading as the line that its device sends. */
  public byte[] line(Reading reading) {
    String text =
        device.isLoad()
            ? String.format(Locale.ROOT, "%+08.3f kN\r\n", reading.value() / 1000)
            : String.format(Locale.ROOT, "%+07.4f mm\r\n", reading.value());
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  /** All that it sends, as timed bytes. */
  public Iterator<TimedBytes> bytes() {
    return new Iterator<>() {
      @Override
      public boolean hasNext() {
        return BeamReadings.this.hasNext();
      }

      @Override
      public TimedBytes next() {
        Reading reading = BeamReadings.this.next();
        return new TimedBytes(reading.sentNanos(), line(reading));
      }
    };
  }
}
