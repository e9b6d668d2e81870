package io.github.platenwire.study;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.Study;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.quantity.UnitSystem;
import java.io.IOException;
import java.time.ZoneId;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All that a lab folder holds of its study: the plan, the table of specimens, and every closed test
 * by the newest version of its summary. Reading changes nothing. Immutable.
 *
 * @param labName the lab, as printed on reports
 * @param zone the time zone in which times are shown
 * @param unitsFirst the system of units that is shown first; both are always shown
 * @param study the plan: series, reference, ages, replicates
 * @param specimens the table, in its order
 * @param tests closed tests that have a summary, the oldest first; those of every series, also of
 *     one that the plan does not name
 * @param methods the methods that the plan or a test names, by name, as far as the lab has them
 * @param remarks what was left out, and why, in whole sentences
 */
public record StudyData(
    String labName,
    ZoneId zone,
    UnitSystem unitsFirst,
    Study study,
    List<Specimen> specimens,
    List<ClosedTest> tests,
    Map<String, Method> methods,
    List<String> remarks) {
  /** Makes the lists and the map immutable. */
  public StudyData {
    specimens = List.copyOf(specimens);
    tests = List.copyOf(tests);
    methods = Collections.unmodifiableMap(new LinkedHashMap<>(methods));
    remarks = List.copyOf(remarks);
  }

  /**
   * Reads the study of a lab folder.
   *
   * @throws LabException if {@code study.toml} or the table of specimens cannot be used
   * @throws IOException if the records cannot be listed; a single summary that cannot be read is
   *     named in the remarks
   */
  public static StudyData read(LabFolder lab) throws LabException, IOException {
    return new StudyDataReader(lab).read();
  }

  /** The tests of one series, the oldest first. */
  public List<ClosedTest> testsOf(String series) {
    return tests.stream().filter(test -> test.series().equals(series)).toList();
  }

  /** What people call a series: its label in the plan, else its name. */
  public String label(String series) {
    return study.find(series).map(Study.Series::label).orElse(series);
  }

  /** The method a planned series is broken by, if that is known. */
  Optional<Method> methodOf(String series) {
    return new SeriesMethods(this).of(series);
  }
}
