package io.github.platenwire.study;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.study.StudyComparison.Subject;
import io.github.platenwire.toml.Suggestions;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/** Finds which figure of which method is compared. Used once; not thread-safe. */
final class SubjectFinder {
  private final List<ClosedTest> tests;
  private final StudyQuestion question;
  private final List<String> warnings = new ArrayList<>();

  /** Looks among tests. */
  SubjectFinder(List<ClosedTest> tests, StudyQuestion question) {
    this.tests = tests;
    this.question = question;
  }

  /** What had to be chosen, in whole sentences. */
  List<String> warnings() {
    return warnings;
  }

  Subject find() throws LabException {
    if (tests.isEmpty()) {
      throw new LabException(
          "there is no closed test of the series asked for yet; 'platenwire study status' tells what"
              + " is to break");
    }
    String figure = figure();
    Map<String, List<ClosedTest>> byMethod = new LinkedHashMap<>();
    for (ClosedTest test : tests) {
      if (test.figure(figure).isPresent()) {
        byMethod
            .computeIfAbsent(test.summary().method().name(), any -> new ArrayList<>())
            .add(test);
      }
    }
    String method = method(figure, byMethod);
    ClosedTest first = testsBy(method, byMethod).get(0);
    Figure found = first.figure(figure).orElseThrow();
    return new Subject(
        figure,
        found.title(),
        found.unit(),
        found.inchPoundUnit(),
        method,
        first.summary().method().title(),
        first.summary().method().standard());
  }

  private String figure() throws LabException {
    Set<String> names = new LinkedHashSet<>();
    for (ClosedTest test : tests) {
      test.summary().result().figures().stream()
          .map(Figure::name)
          .filter(name -> test.figure(name).isPresent())
          .forEach(names::add);
    }
    if (names.contains(question.figure())) {
      tellOthers(question.figure(), names);
      return question.figure();
    }
    Optional<String> first =
        MainFigures.compared(names).stream().findFirst().or(() -> names.stream().findFirst());
    if (question.figure().equals(StudyQuestion.STRENGTH) && first.isPresent()) {
      warnings.add("No test came to a strength; compared is " + first.get() + ".");
      tellOthers(first.get(), names);
      return first.get();
    }
    throw new LabException(
        "no closed test came to a figure '"
            + question.figure()
            + "'"
            + Suggestions.nearest(question.figure(), names)
                .map(near -> ", did you mean '" + near + "'?")
                .orElse("; there are: " + String.join(", ", names)));
  }

  /** Names the other main figures to whom asked for nothing special. */
  private void tellOthers(String figure, Set<String> names) {
    List<String> others = new ArrayList<>(MainFigures.compared(names));
    others.remove(figure);
    boolean special =
        question.method().isPresent() || !question.figure().equals(StudyQuestion.STRENGTH);
    if (!special && !others.isEmpty()) {
      warnings.add(
          "There are other figures to compare (--figure): " + String.join(", ", others) + ".");
    }
  }

  /** The one asked for, else the one with most tests; the others are named. */
  private String method(String figure, Map<String, List<ClosedTest>> byMethod) throws LabException {
    if (question.method().isPresent()) {
      String asked = question.method().get();
      if (!byMethod.containsKey(asked)) {
        throw new LabException(
            "no closed test by the method '"
                + asked
                + "' came to a figure '"
                + figure
                + "'; there are: "
                + String.join(", ", byMethod.keySet()));
      }
      return asked;
    }
    String most = byMethod.keySet().iterator().next();
    for (Map.Entry<String, List<ClosedTest>> entry : byMethod.entrySet()) {
      most = entry.getValue().size() > testsBy(most, byMethod).size() ? entry.getKey() : most;
    }
    if (byMethod.size() > 1) {
      Set<String> others = new LinkedHashSet<>(byMethod.keySet());
      others.remove(most);
      warnings.add(
          "Only figures by the method "
              + most
              + " are compared; there are also some by "
              + String.join(", ", others)
              + " (--method).");
    }
    return most;
  }

  private static List<ClosedTest> testsBy(String method, Map<String, List<ClosedTest>> byMethod) {
    return Objects.requireNonNull(byMethod.get(method));
  }
}
