package io.github.platenwire.record;

import io.github.platenwire.calibration.Correction;
import io.github.platenwire.calibration.ScaleCorrection;
import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.method.TestSetting;
import io.github.platenwire.port.PortAddress;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * All that stands in the head of a raw file: enough to decode its rows and compute its figures
 * again with nothing else at hand. Immutable.
 *
 * @param test the test's id, which is also the stem of its file names
 * @param start when the test's clock stood at zero, in UTC
 * @param originNanos the monotonic clock's reading at that moment
 * @param zone the lab's time zone, in which cast times are written
 * @param program name, version and commit of the program that wrote the file
 * @param lab the lab's name
 * @param operator who ran the test, if said
 * @param overrideReason why the test was done although something spoke against it, if so
 * @param specimen the specimen as measured
 * @param method the method
 * @param rig the rig
 * @param channels the rig's channels, in the order of the rig file
 * @param checklist what was checked before the start
 */
public record RawHeader(
    String test,
    Instant start,
    long originNanos,
    ZoneId zone,
    String program,
    String lab,
    Optional<String> operator,
    Optional<String> overrideReason,
    Specimen specimen,
    KeptFile method,
    KeptFile rig,
    List<HeaderChannel> channels,
    List<HeaderCheck> checklist) {
  /** The format that this class writes and reads. */
  public static final String FORMAT = "platenwire-raw 1";

  /** Makes the lists immutable. */
  public RawHeader {
    channels = List.copyOf(channels);
    checklist = List.copyOf(checklist);
  }

  /** The same head with other measurements of the specimen. */
  public RawHeader withSpecimen(Specimen other) {
    return new RawHeader(
        test,
        start,
        originNanos,
        zone,
        program,
        lab,
        operator,
        overrideReason,
        other,
        method,
        rig,
        channels,
        checklist);
  }

  /** What a method needs to know of this test. */
  public TestSetting setting() {
    return new TestSetting(
        start, zone, channels.stream().map(HeaderChannel::facts).toList(), overrideReason);
  }

  /**
   * A definition file kept word for word.
   *
   * @param name the name it was asked for by
   * @param text the whole file
   */
  public record KeptFile(String name, String text) {}

  /**
   * One channel.
   *
   * @param facts its quantity, unit, range and the like
   * @param port where its bytes came from, as the rig file names it
   * @param field index of its value among the device's value fields
   * @param device the device definition
   * @param delayMillis how much older than its arrival a reading is
   * @param lateAfterMillis silence after which it counts as late
   * @param calibration the calibration file, if there is one
   * @param correction what is done to each decoded value, in the channel's unit
   */
  public record HeaderChannel(
      ChannelFacts facts,
      String port,
      int field,
      KeptFile device,
      double delayMillis,
      double lateAfterMillis,
      Optional<KeptFile> calibration,
      Correction correction) {
    /** Whether its readings are typed by a person: these may come when they come. */
    public boolean isTyped() {
      return PortAddress.isTyped(port);
    }

    /**
     * A channel whose decoded values are multiplied by a factor.
     *
     * @param scale the factor, 1 for none
     */
    public HeaderChannel(
        ChannelFacts facts,
        String port,
        int field,
        KeptFile device,
        double delayMillis,
        double lateAfterMillis,
        Optional<KeptFile> calibration,
        double scale) {
      this(
          facts,
          port,
          field,
          device,
          delayMillis,
          lateAfterMillis,
          calibration,
          new ScaleCorrection(scale));
    }
  }

  /**
   * One line of the checklist.
   *
   * @param name what was checked
   * @param state {@code passed}, {@code warning} or {@code failed}
   * @param seen what was seen, with figures
   */
  public record HeaderCheck(String name, String state, String seen) {}
}
