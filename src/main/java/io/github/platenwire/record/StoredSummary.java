package io.github.platenwire.record;

import io.github.platenwire.method.MethodResult;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One closed test as its summary file tells it afterwards. Immutable.
 *
 * @param file the summary
 * @param test the test's id
 * @param program the program that recorded it, with its version
 * @param specimen as it stood when the summary was made
 * @param rig the frame it was broken on
 * @param method what it was broken by
 * @param start when, UTC
 * @param zone the lab's zone then
 * @param raw the raw file
 * @param result figures with their budgets and rows, checks, departures, the virgin curve
 * @param channels in the order of the raw file's head
 * @param observed what people saw, by the keys of the summary's {@code observations}
 * @param failure what went wrong, if anything did
 * @param witnessBefore witness of the register line before this summary's own
 */
public record StoredSummary(
    Path file,
    String test,
    String program,
    StoredSpecimen specimen,
    String rig,
    StoredMethod method,
    Instant start,
    ZoneId zone,
    StoredRaw raw,
    MethodResult result,
    List<StoredChannel> channels,
    Map<String, String> observed,
    Optional<String> failure,
    Optional<String> witnessBefore) {
  /** Makes list and map immutable; the map keeps the order of the file. */
  public StoredSummary {
    channels = List.copyOf(channels);
    observed = Collections.unmodifiableMap(new LinkedHashMap<>(observed));
  }

  /**
   * The specimen.
   *
   * @param name unique in the lab
   * @param series what it is a companion in
   * @param shape such as {@code cylinder}
   * @param cast when it was cast, in the lab's zone
   * @param plannedAgeDays the age at which it was to be broken
   * @param asWritten its row of the table
   */
  public record StoredSpecimen(
      String name,
      String series,
      String shape,
      Optional<LocalDateTime> cast,
      OptionalDouble plannedAgeDays,
      Map<String, String> asWritten) {
    /** Makes the map immutable. */
    public StoredSpecimen {
      asWritten = Collections.unmodifiableMap(new LinkedHashMap<>(asWritten));
    }
  }

  /**
   * The method.
   *
   * @param name such as {@code compression-cylinder-c39}
   * @param title in words
   * @param standard the standard it computes by
   */
  public record StoredMethod(String name, String title, String standard) {}

  /**
   * The raw file.
   *
   * @param name without folder; it lies beside the summary
   * @param sha256 of the whole file, hex
   * @param rows how many it has
   * @param reason why it ended, such as {@code break}
   */
  public record StoredRaw(String name, String sha256, long rows, String reason) {}

  /**
   * One channel.
   *
   * @param name as in the rig file
   * @param unit its unit's symbol
   * @param readings how many came
   * @param marked how many were marked
   * @param calibration its calibration on the day, in words
   */
  public record StoredChannel(
      String name, String unit, long readings, long marked, String calibration) {}

  /** The raw file's path, beside the summary. */
  public Path rawFile() {
    return file.resolveSibling(raw.name());
  }
}
