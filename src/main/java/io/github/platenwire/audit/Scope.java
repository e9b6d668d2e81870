package io.github.platenwire.audit;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.recorder.RecordStart;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Which records of a lab an audit looks at: each limit that is given narrows it. Registers are
 * always read whole, since a chain cannot be judged in part. Immutable.
 *
 * @param places raw files, or folders of them; empty for all that the lab has
 * @param from first day, in the lab's zone
 * @param to last day, in the lab's zone
 * @param series names of series; empty for all
 */
public record Scope(
    List<Path> places, Optional<LocalDate> from, Optional<LocalDate> to, Set<String> series) {
  /** The whole archive. */
  public static final Scope ARCHIVE =
      new Scope(List.of(), Optional.empty(), Optional.empty(), Set.of());

  /** Makes places absolute and the collections immutable. */
  public Scope {
    places = places.stream().map(place -> place.toAbsolutePath().normalize()).toList();
    series = Set.copyOf(series);
  }

  /** Whether nothing is left out. */
  public boolean isArchive() {
    return places.isEmpty() && from.isEmpty() && to.isEmpty() && series.isEmpty();
  }

  /** What is looked at, in words. */
  public String words() {
    if (isArchive()) {
      return "the whole archive";
    }
    List<String> parts = new ArrayList<>();
    if (!places.isEmpty()) {
      parts.add(String.join(", ", places.stream().map(Scope::name).toList()));
    }
    if (!series.isEmpty()) {
      parts.add("series " + String.join(", ", series.stream().sorted().toList()));
    }
    from.ifPresent(day -> parts.add("from " + day));
    to.ifPresent(day -> parts.add("to " + day));
    return String.join(", ", parts);
  }

  private static String name(Path place) {
    return String.valueOf(place.getFileName());
  }

  /** The raw files of a lab that may be in it, oldest first. */
  List<Path> rawFiles(LabFolder lab) throws IOException {
    List<Path> chosen = new ArrayList<>();
    for (Path raw : lab.records()) {
      if (isAt(raw) && isOn(String.valueOf(raw.getFileName()), lab.settings().zone())) {
        chosen.add(raw);
      }
    }
    for (Path place : places) {
      if (place.toString().endsWith(".raw.csv") && !chosen.contains(place)) {
        chosen.add(place);
      }
    }
    return chosen;
  }

  /** Whether a series is in it. */
  boolean isSeries(String name) {
    return series.isEmpty() || series.contains(name);
  }

  /** Whether a test that only the register tells of should have been among the records. */
  boolean expects(LabFolder lab, String test) {
    boolean placed = places.isEmpty() || places.contains(lab.root().resolve("records"));
    return placed && series.isEmpty() && isOn(test + "_", lab.settings().zone());
  }

  private boolean isAt(Path raw) {
    return places.isEmpty() || places.stream().anyMatch(raw::startsWith);
  }

  /** A name that tells no day is let through: it cannot be left out unseen. */
  private boolean isOn(String fileName, ZoneId zone) {
    Optional<LocalDate> day =
        RecordStart.of(fileName).map(start -> LocalDate.ofInstant(start, zone));
    return day.isEmpty()
        || (from.map(first -> !day.get().isBefore(first)).orElse(true)
            && to.map(last -> !day.get().isAfter(last)).orElse(true));
  }
}
