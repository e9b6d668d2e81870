package io.github.platenwire.recorder;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.method.Companions;
import io.github.platenwire.method.Companions.Conditions;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.record.SummaryFacts;
import io.github.platenwire.record.SummaryFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * How a specimen stands among its companions (same series, same planned age, same method), once it
 * is broken. Immutable.
 *
 * @param words the range against the limit, and how many are still to come
 * @param last whether none is still to come
 */
public record CompanionSet(String words, boolean last) {
  private static final Logger LOG = LoggerFactory.getLogger(CompanionSet.class);

  /**
   * The set with this test in it; empty if the test came to no strength, or the method knows no
   * companions.
   *
   * @throws LabException if the specimen table cannot be read
   * @throws IOException if the records cannot be listed
   */
  public static Optional<CompanionSet> of(LabFolder lab, Method method, RecordedTest recorded)
      throws LabException, IOException {
    Optional<Companions> rules = method.companions();
    Optional<Figure> strength = recorded.result().figure("strength");
    Optional<Figure> size =
        recorded.result().figure("diameter").or(() -> recorded.result().figure("width"));
    Specimen specimen = recorded.header().specimen();
    if (rules.isEmpty()
        || strength.isEmpty()
        || size.isEmpty()
        || specimen.plannedAgeDays().isEmpty()) {
      return Optional.empty();
    }
    List<String> broken = new ArrayList<>(List.of(specimen.name()));
    List<Double> strengths = new ArrayList<>();
    for (SummaryFacts other : summaries(lab)) {
      if (isCompanion(other, specimen, method) && !broken.contains(other.specimen())) {
        broken.add(other.specimen());
        other.strengthMegapascals().ifPresent(strengths::add);
      }
    }
    strengths.add(strength.get().exact());
    long toCome =
        lab.specimens().stream()
            .filter(s -> sameSet(s, specimen) && !broken.contains(s.name()))
            .count();
    String words =
        rules
            .get()
            .judge(
                Conditions.ofRow(specimen.asWritten()),
                size.get().exact(),
                strengths,
                lab.settings().unitsFirst())
            .words();
    return Optional.of(
        new CompanionSet(
            specimen.series()
                + " at "
                + days(specimen.plannedAgeDays())
                + ": "
                + words
                + (toCome == 0 ? "." : "; " + toCome + " still to break."),
            toCome == 0));
  }

  private static boolean isCompanion(SummaryFacts other, Specimen specimen, Method method) {
    return other.series().equals(specimen.series())
        && other.method().equals(method.name())
        && other.reason().equals("break")
        && other.plannedAgeDays().isPresent()
        && OptionalDouble.of(other.plannedAgeDays().get()).equals(specimen.plannedAgeDays());
  }

  private static boolean sameSet(Specimen a, Specimen b) {
    return a.series().equals(b.series()) && a.plannedAgeDays().equals(b.plannedAgeDays());
  }

  private static String days(OptionalDouble age) {
    double days = age.orElseThrow();
    return (days == Math.rint(days) ? Long.toString((long) days) : Double.toString(days)) + " days";
  }

  private static List<SummaryFacts> summaries(LabFolder lab) throws IOException {
    List<SummaryFacts> facts = new ArrayList<>();
    for (Path raw : lab.records()) {
      Optional<Path> summary = LabFolder.newestSummaryOf(raw);
      if (summary.isPresent()) {
        try {
          facts.add(SummaryFile.read(summary.get()));
        } catch (IOException e) {
          LOG.warn("left out of the companions: {}", e.getMessage());
        }
      }
    }
    return facts;
  }
}
