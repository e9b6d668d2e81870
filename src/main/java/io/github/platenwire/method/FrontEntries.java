package io.github.platenwire.method;

import io.github.platenwire.method.FrontPart.Reading;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What was read of a front, in the order in which it was read, with the entries that put earlier
 * ones right. Nothing is ever taken out: an entry that is put right stays in the raw file and only
 * no longer counts. Not thread-safe.
 *
 * <p>Time zero is the moment of the first entry: what is read when the water touches.
 */
final class FrontEntries {
  private final Instant start;
  private final List<Reading> readings = new ArrayList<>();

  /** The reading that each entry stands for: its own, or the one that it puts right. */
  private final Map<Long, Integer> indexBySeq = new HashMap<>();

  private final List<String> leftOut = new ArrayList<>();
  private double zeroSeconds = Double.NaN;

  /**
   * Nothing read yet.
   *
   * @param start when the test's clock stood at zero
   */
  FrontEntries(Instant start) {
    this.start = start;
  }

  /** A gauge's reading, at the moment at which it came. */
  void gauge(long seq, long elapsedMicros, double base) {
    add(seq, elapsedMicros / 1e6, base);
  }

  /**
   * A line that a person typed.
   *
   * @return why it was left out, if it was
   */
  Optional<String> typed(long seq, long elapsedMicros, String line, double base) {
    Optional<TypedEntry> entry;
    try {
      entry = TypedEntry.parse(line);
    } catch (DateTimeException | NumberFormatException e) {
      return leaveOut(seq, "its time is no time");
    }
    if (entry.isEmpty()) {
      return leaveOut(seq, "what follows its ';' is not understood");
    }
    double arrival = elapsedMicros / 1e6;
    Optional<Double> told = told(entry.get(), arrival);
    if (entry.get().corrects().isPresent()) {
      return correct(seq, entry.get().corrects().getAsLong(), told, base);
    }
    add(seq, told.orElse(arrival), base);
    return Optional.empty();
  }

  /** When it was read, in seconds since the test's origin, if the line says so. */
  private Optional<Double> told(TypedEntry entry, double arrivalSeconds) {
    if (entry.at().isPresent()) {
      return Optional.of((entry.at().get().toEpochMilli() - start.toEpochMilli()) / 1e3);
    }
    if (entry.afterSeconds().isEmpty()) {
      return Optional.empty();
    }
    double seconds = entry.afterSeconds().getAsDouble();
    if (readings.isEmpty()) {
      zeroSeconds = arrivalSeconds - seconds;
    }
    return Optional.of(zeroSeconds + seconds);
  }

  private void add(long seq, double originSeconds, double base) {
    if (Double.isNaN(zeroSeconds)) {
      zeroSeconds = originSeconds;
    }
    indexBySeq.put(seq, readings.size());
    readings.add(new Reading(seq, originSeconds - zeroSeconds, base));
  }

  private Optional<String> correct(long seq, long corrects, Optional<Double> told, double base) {
    Integer index = indexBySeq.get(corrects);
    if (index == null) {
      return leaveOut(seq, "it puts entry " + corrects + " right, and there is none");
    }
    Reading before = readings.get(index);
    double seconds = told.map(origin -> origin - zeroSeconds).orElse(before.seconds());
    readings.set(index, new Reading(seq, seconds, base));
    indexBySeq.put(seq, index);
    return Optional.empty();
  }

  private Optional<String> leaveOut(long seq, String why) {
    leftOut.add("Entry " + seq + " was left out: " + why + ".");
    return Optional.of(why);
  }

  boolean isEmpty() {
    return readings.isEmpty();
  }

  int size() {
    return readings.size();
  }

  /** The reading that an entry stands for. */
  Reading ofEntry(long seq) {
    return readings.get(indexBySeq.getOrDefault(seq, readings.size() - 1));
  }

  /** What counts, by time; readings from before time zero are left out, and said to be. */
  List<Reading> counted() {
    return readings.stream()
        .filter(reading -> reading.seconds() >= 0)
        .sorted(Comparator.comparingDouble(Reading::seconds))
        .toList();
  }

  /** Which entries do not count, and why, in whole sentences. */
  List<String> leftOut() {
    List<String> all = new ArrayList<>(leftOut);
    for (Reading reading : readings) {
      if (reading.seconds() < 0) {
        all.add(
            "Entry "
                + reading.seq()
                + " was left out: its time lies before the first entry, where time begins.");
      }
    }
    return all;
  }
}
