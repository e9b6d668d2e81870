package io.github.platenwire.study;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.Study;
import io.github.platenwire.method.Method;
import io.github.platenwire.record.StoredSummary;
import io.github.platenwire.record.SummaryFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads a study out of a lab folder; opens nothing for writing. Used once; not thread-safe. */
final class StudyDataReader {
  private final LabFolder lab;
  private final List<ClosedTest> tests = new ArrayList<>();
  private final List<String> remarks = new ArrayList<>();

  StudyDataReader(LabFolder lab) {
    this.lab = lab;
  }

  StudyData read() throws LabException, IOException {
    Study study = lab.study();
    for (Path raw : lab.records()) {
      add(raw);
    }
    return new StudyData(
        lab.settings().labName(),
        lab.settings().zone(),
        lab.settings().unitsFirst(),
        study,
        lab.specimens(),
        tests,
        methods(study),
        remarks);
  }

  private void add(Path raw) {
    Optional<Path> newest = LabFolder.newestSummaryOf(raw);
    if (newest.isEmpty()) {
      remarks.add(
          relative(raw)
              + " has no summary: its test is running, or was interrupted ('platenwire recover'"
              + " closes it). It is left out.");
      return;
    }
    try {
      StoredSummary summary = SummaryFile.stored(newest.get());
      tests.add(new ClosedTest(relative(raw), relative(newest.get()), summary));
    } catch (IOException e) {
      remarks.add(
          relative(newest.get()) + " cannot be read and is left out: " + e.getMessage() + ".");
    }
  }

  private String relative(Path file) {
    return lab.root().relativize(file.toAbsolutePath().normalize()).toString().replace('\\', '/');
  }

  /** A method that the lab no longer has only costs the limits it would have given. */
  private Map<String, Method> methods(Study study) {
    Set<String> names = new LinkedHashSet<>();
    study.series().forEach(series -> series.method().ifPresent(names::add));
    tests.forEach(test -> names.add(test.summary().method().name()));
    names.add(SeriesMethods.OF_CYLINDERS);
    Map<String, Method> methods = new LinkedHashMap<>();
    for (String name : names) {
      try {
        methods.put(name, lab.method(name));
      } catch (LabException e) {
        remarks.add("The method " + name + " cannot be used: " + e.getMessage() + ".");
      }
    }
    return methods;
  }
}
