package io.github.platenwire.lab;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/** Reads the study file strictly. Stateless. */
final class StudyReader {
  private static final int MOST_REPLICATES = 1000;

  private StudyReader() {}

  static Study parse(String text, String source) throws TomlException {
    TomlSection file = TomlSection.parse(text, source);
    file.allow("format", "title", "reference", "method", "ages-days", "replicates", "series");
    LabFormat.check(file, "platenwire-study");
    String title = LabFormat.words(file, "title");
    List<Double> agesDays = agesDays(file, List.of());
    int replicates = replicates(file, 1);
    Optional<String> method = file.optionalString("method");
    List<Study.Series> series = new ArrayList<>();
    List<String> names = new ArrayList<>();
    List<TomlSection> sections = file.sections("series");
    for (TomlSection section : sections) {
      Study.Series one = series(section, method, agesDays, replicates);
      if (names.contains(one.name())) {
        throw section.error(
            "name", "there is a series '" + one.name() + "' already; each needs its own name");
      }
      names.add(one.name());
      series.add(one);
    }
    if (series.isEmpty()) {
      throw file.error("a study needs at least one series, begun by [[series]]");
    }
    String reference = reference(file, names);
    for (TomlSection section : sections) {
      ownReference(section, names);
    }
    return new Study(title, reference, series, text);
  }

  private static String reference(TomlSection file, List<String> names) throws TomlException {
    String reference = file.string("reference");
    if (!names.contains(reference)) {
      throw file.error(
          "reference",
          "the reference '"
              + reference
              + "' is none of the series"
              + Names.suggestion(reference, names));
    }
    return reference;
  }

  private static void ownReference(TomlSection section, List<String> names) throws TomlException {
    if (section.has("reference") && reference(section, names).equals(section.string("name"))) {
      throw section.error(
          "reference", "a series cannot be held against itself; leave 'reference' out here");
    }
  }

  private static Study.Series series(
      TomlSection section, Optional<String> method, List<Double> agesDays, int replicates)
      throws TomlException {
    section.allow(
        "name",
        "label",
        "mix",
        "placing",
        "curing",
        "bar",
        "reference",
        "method",
        "ages-days",
        "replicates");
    String name = LabFormat.words(section, "name");
    return new Study.Series(
        name,
        section.optionalString("label").orElse(name),
        section.optionalString("mix"),
        section.optionalString("placing"),
        section.optionalString("curing"),
        section.optionalString("bar"),
        section.optionalString("reference"),
        section.optionalString("method").or(() -> method),
        agesDays(section, agesDays),
        replicates(section, replicates));
  }

  private static List<Double> agesDays(TomlSection section, List<Double> absent)
      throws TomlException {
    if (!section.has("ages-days")) {
      return absent;
    }
    List<Double> ages = section.numbers("ages-days");
    double before = 0;
    for (double age : ages) {
      if (age <= before) {
        throw section.error(
            "ages-days",
            "'ages-days' must be rising ages in days, greater than 0, such as [3, 7, 28]");
      }
      before = age;
    }
    return ages;
  }

  private static int replicates(TomlSection section, int absent) throws TomlException {
    OptionalLong written = section.optionalWhole("replicates");
    long replicates = written.orElse(absent);
    if (replicates < 1 || replicates > MOST_REPLICATES) {
      throw section.error(
          "replicates",
          "'replicates' must be 1 to " + MOST_REPLICATES + ", but it is " + replicates);
    }
    return (int) replicates;
  }
}
