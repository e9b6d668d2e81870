package io.github.platenwire.lab;

import io.github.platenwire.toml.TomlException;
import java.util.List;
import java.util.Optional;

/**
 * What is being compared, as {@code study.toml} tells it. Immutable.
 *
 * @param title for a person
 * @param reference the name of the series that the others are held against; one of {@code series}
 * @param series at least one, in file order
 * @param text the file as it was read
 */
public record Study(String title, String reference, List<Series> series, String text) {
  /** Makes the list immutable. */
  public Study {
    series = List.copyOf(series);
  }

  /** The series of a name, if there is one. */
  public Optional<Series> find(String name) {
    return series.stream().filter(one -> one.name().equals(name)).findFirst();
  }

  /** The series that one is held against: its own reference, else the study's. */
  public String referenceOf(String name) {
    return find(name).flatMap(Series::reference).orElse(reference);
  }

  /**
   * Specimens that differ in nothing that is known.
   *
   * @param name as in the specimen table
   * @param label for a person; the name where none is given
   * @param mix the mix, in words
   * @param placing how it was placed, in words
   * @param curing how it was cured, in words
   * @param bar what bar it holds, in words
   * @param reference the series that it is held against, where that is not the study's; one of the
   *     study's others
   * @param method the method its specimens are broken by, if the plan says so
   * @param agesDays the ages at which specimens are to be broken, in days, rising; may be empty
   * @param replicates how many specimens are to be broken at each age
   */
  public record Series(
      String name,
      String label,
      Optional<String> mix,
      Optional<String> placing,
      Optional<String> curing,
      Optional<String> bar,
      Optional<String> reference,
      Optional<String> method,
      List<Double> agesDays,
      int replicates) {
    /** Makes the list immutable. */
    public Series {
      agesDays = List.copyOf(agesDays);
    }
  }

  static Study parse(String text, String source) throws TomlException {
    return StudyReader.parse(text, source);
  }
}
