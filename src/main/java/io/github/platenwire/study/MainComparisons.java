package io.github.platenwire.study;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.method.MethodResult.Figure;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Everything a study has to compare when nothing else is asked: the main figures of each method
 * that its series were tested by, never figures of different methods. Stateless.
 */
final class MainComparisons {
  private MainComparisons() {}

  static List<StudyComparison> of(StudyData data) throws LabException {
    Map<String, List<String>> byMethod = new LinkedHashMap<>();
    for (ClosedTest test : data.tests()) {
      if (data.study().find(test.series()).isPresent()) {
        test.summary().result().figures().stream()
            .map(Figure::name)
            .filter(name -> test.figure(name).isPresent())
            .forEach(
                name ->
                    byMethod
                        .computeIfAbsent(test.summary().method().name(), any -> new ArrayList<>())
                        .add(name));
      }
    }
    List<StudyComparison> comparisons = new ArrayList<>();
    for (Map.Entry<String, List<String>> method : byMethod.entrySet()) {
      for (String figure : MainFigures.compared(method.getValue())) {
        comparisons.add(compare(data, figure, method.getKey()));
      }
    }
    if (comparisons.isEmpty() && !byMethod.isEmpty()) {
      Map.Entry<String, List<String>> any = byMethod.entrySet().iterator().next();
      comparisons.add(compare(data, any.getValue().get(0), any.getKey()));
    }
    comparisons.sort((a, b) -> Integer.compare(rank(a), rank(b)));
    return comparisons;
  }

  private static StudyComparison compare(StudyData data, String figure, String method)
      throws LabException {
    return StudyComparison.of(
        data,
        new StudyQuestion(
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            figure,
            Optional.of(method)));
  }

  /** Strengths first, those of the method with most specimens before the others. */
  private static int rank(StudyComparison comparison) {
    boolean strength = comparison.subject().figure().equals(StudyQuestion.STRENGTH);
    int specimens = comparison.sets().stream().mapToInt(set -> set.values().size()).sum();
    return strength ? -specimens : 1;
  }
}
