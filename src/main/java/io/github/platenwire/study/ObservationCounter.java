package io.github.platenwire.study;

import io.github.platenwire.study.StudyComparison.Count;
import io.github.platenwire.study.StudyComparison.Observation;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Counts what people saw, series beside series. Whatever a summary keeps under {@code observations}
 * as a short word is counted; numbers with a unit and free words are not. Immutable.
 */
final class ObservationCounter {
  /** Free words and measures: nothing to count. */
  private static final Set<String> NOT_COUNTED =
      Set.of("notes", "fracture_words", "break_distance_mm");

  /** A longer text is a note. */
  private static final int LONGEST_WORD = 40;

  /** Of the aggregate: nobody could tell. Of the bar's imprint it is a finding. */
  private static final String NOT_SEEN = "not-seen";

  private static final String IMPRINT = "imprint";

  private final List<ClosedTest> tests;
  private final List<String> series;

  /** Counts in tests that count, of the series in the order to report them, the reference last. */
  ObservationCounter(List<ClosedTest> tests, List<String> series) {
    this.tests = tests;
    this.series = series;
  }

  /** One observation for each age, kind and word that tells series apart or was seen at all. */
  List<Observation> count() {
    Map<OptionalDouble, List<ClosedTest>> byAge = new LinkedHashMap<>();
    for (String name : series) {
      tests.stream()
          .filter(test -> test.series().equals(name))
          .forEach(
              test -> byAge.computeIfAbsent(test.ageDays(), any -> new ArrayList<>()).add(test));
    }
    List<Observation> observations = new ArrayList<>();
    byAge.entrySet().stream()
        .sorted((a, b) -> Double.compare(a.getKey().orElse(0), b.getKey().orElse(0)))
        .forEach(entry -> observations.addAll(ofAge(entry.getKey(), entry.getValue())));
    return observations;
  }

  private List<Observation> ofAge(OptionalDouble ageDays, List<ClosedTest> atAge) {
    Set<String> keys = new LinkedHashSet<>();
    atAge.forEach(test -> keys.addAll(test.summary().observed().keySet()));
    keys.removeAll(NOT_COUNTED);
    List<Observation> observations = new ArrayList<>();
    for (String key : keys) {
      Map<String, List<String>> seen = seen(atAge, key);
      for (String word : wordsToTell(seen)) {
        observations.add(observation(ageDays, what(key, word), word, seen));
      }
    }
    return observations;
  }

  /** What was seen in each series, one word a specimen. */
  private Map<String, List<String>> seen(List<ClosedTest> atAge, String key) {
    Map<String, List<String>> seen = new LinkedHashMap<>();
    for (String name : series) {
      List<String> words =
          atAge.stream()
              .filter(test -> test.series().equals(name))
              .filter(test -> test.summary().observed().containsKey(key))
              .map(test -> String.valueOf(test.summary().observed().get(key)))
              .filter(word -> key.equals(IMPRINT) || !word.equals(NOT_SEEN))
              .filter(word -> word.length() <= LONGEST_WORD)
              .toList();
      if (!words.isEmpty()) {
        seen.put(name, words);
      }
    }
    return seen;
  }

  /**
   * Of two words that exclude one another the first says all. Without the reference, or with it
   * alone, there is nothing to compare.
   */
  private Set<String> wordsToTell(Map<String, List<String>> seen) {
    Set<String> words = new TreeSet<>();
    seen.values().forEach(words::addAll);
    if (seen.size() < 2 || !seen.containsKey(series.get(series.size() - 1))) {
      return Set.of();
    }
    if (words.contains(NOT_SEEN)) {
      return Set.of("seen");
    }
    return words.size() == 2 ? Set.of(seen.values().iterator().next().get(0)) : words;
  }

  private static Observation observation(
      OptionalDouble ageDays, String what, String word, Map<String, List<String>> seen) {
    List<Count> counts = new ArrayList<>();
    seen.forEach(
        (name, words) ->
            counts.add(
                new Count(name, (int) words.stream().filter(word::equals).count(), words.size())));
    String told =
        counts.stream()
            .map(count -> count.seen() + " of " + count.looked() + " of " + count.series())
            .collect(Collectors.joining(", "));
    String last = told.substring(told.lastIndexOf(", ") + 2);
    String sentence =
        (ageDays.isPresent() ? "At " + Figures.age(ageDays.getAsDouble()) + ": " : "")
            + told.substring(0, told.lastIndexOf(", "))
            + " "
            + what
            + ", against "
            + last
            + ".";
    return new Observation(what, ageDays, counts, sentence);
  }

  private static String what(String key, String word) {
    return switch (key) {
      case "aggregate" ->
          word.equals("mixed") ? "partly through the aggregate" : word + " the aggregate";
      case "fracture_type" ->
          word.matches("[0-9]+") ? "with fracture type " + word : "with a failure called " + word;
      case IMPRINT -> "with the ribs of the bar seen in the concrete";
      default -> "with " + key.replace('_', ' ') + " " + word;
    };
  }
}
