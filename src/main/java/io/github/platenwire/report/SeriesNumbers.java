package io.github.platenwire.report;

import io.github.platenwire.study.StudyComparison;
import java.util.LinkedHashMap;
import java.util.Map;

/** Gives each series of a comparison one number, so that all its charts show it alike. */
final class SeriesNumbers {
  private SeriesNumbers() {}

  static Map<String, Integer> of(StudyComparison comparison) {
    Map<String, Integer> numbers = new LinkedHashMap<>();
    comparison.sets().forEach(set -> numbers.putIfAbsent(set.series(), numbers.size()));
    comparison.trends().forEach(trend -> numbers.putIfAbsent(trend.series(), numbers.size()));
    return numbers;
  }
}
