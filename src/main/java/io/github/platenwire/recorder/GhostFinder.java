package io.github.platenwire.recorder;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.method.GhostCurve;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.record.SummaryFacts;
import io.github.platenwire.record.SummaryFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Finds the crack that a running test is held beside: the last companion's, or else the last of the
 * study's reference series, or else the last of any other series. Stateless.
 */
public final class GhostFinder {
  private static final Logger LOG = LoggerFactory.getLogger(GhostFinder.class);

  private GhostFinder() {}

  /**
   * The curve to hold a specimen's test beside, if there is one.
   *
   * @param method only tests by this method count
   * @throws LabException if the study file is wrong
   * @throws IOException if the records cannot be listed
   */
  public static Optional<GhostCurve> of(LabFolder lab, Specimen specimen, String method)
      throws LabException, IOException {
    String reference = lab.study().reference();
    List<Predicate<String>> wishes =
        List.of(specimen.series()::equals, reference::equals, series -> true);
    for (Predicate<String> wish : wishes) {
      Optional<GhostCurve> curve = last(lab, specimen, method, wish);
      if (curve.isPresent()) {
        return curve;
      }
    }
    return Optional.empty();
  }

  private static Optional<GhostCurve> last(
      LabFolder lab, Specimen specimen, String method, Predicate<String> series)
      throws IOException {
    List<Path> records = lab.records();
    for (int i = records.size() - 1; i >= 0; i--) {
      Optional<Path> summary = LabFolder.newestSummaryOf(records.get(i));
      try {
        if (summary.isPresent()
            && fits(SummaryFile.read(summary.get()), specimen, method, series)) {
          Optional<GhostCurve> curve = SummaryFile.readCurve(summary.get());
          if (curve.isPresent()) {
            return curve;
          }
        }
      } catch (IOException e) {
        LOG.warn("left out of the comparison: {}", e.getMessage());
      }
    }
    return Optional.empty();
  }

  private static boolean fits(
      SummaryFacts facts, Specimen specimen, String method, Predicate<String> series) {
    return facts.method().equals(method)
        && series.test(facts.series())
        && !facts.specimen().equals(specimen.name());
  }
}
