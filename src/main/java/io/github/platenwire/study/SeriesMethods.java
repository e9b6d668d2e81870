package io.github.platenwire.study;

import io.github.platenwire.lab.Study;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.Specimen;
import java.util.List;
import java.util.Optional;

/**
 * By which method the specimens of a series are broken: the one the plan names, else the one its
 * last test was done by, else that of a cylinder where its specimens are cylinders. Immutable.
 */
final class SeriesMethods {
  /** What a cylinder is broken by when nothing else is said, as {@code record} takes it too. */
  static final String OF_CYLINDERS = "compression-cylinder-c39";

  private static final String CYLINDER = "cylinder";

  private final StudyData data;

  SeriesMethods(StudyData data) {
    this.data = data;
  }

  Optional<Method> of(String series) {
    Optional<String> name =
        data.study()
            .find(series)
            .flatMap(Study.Series::method)
            .or(() -> ofLastTest(series))
            .or(() -> ofShape(series));
    return name.flatMap(known -> Optional.ofNullable(data.methods().get(known)));
  }

  private Optional<String> ofLastTest(String series) {
    List<ClosedTest> tests = data.testsOf(series);
    return tests.isEmpty()
        ? Optional.empty()
        : Optional.of(tests.get(tests.size() - 1).summary().method().name());
  }

  private Optional<String> ofShape(String series) {
    List<Specimen> own =
        data.specimens().stream().filter(specimen -> specimen.series().equals(series)).toList();
    return !own.isEmpty() && own.stream().allMatch(s -> s.shape().equals(CYLINDER))
        ? Optional.of(OF_CYLINDERS)
        : Optional.empty();
  }
}
