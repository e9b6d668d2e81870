package io.github.platenwire.calibration;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The classes of one standard, as a file of {@code config/calibration} tells them. Immutable.
 *
 * @param name such as {@code iso-7500-1}
 * @param title for a person
 * @param quantity what the standard is for: force or length
 * @param errorOfMean whether the error is that of the mean of the runs; else each run's counts
 * @param leastRuns how many runs the standard wants
 * @param leastSteps how many steps a run the standard wants
 * @param spread how the steps are to be spread over the range
 * @param classes the strictest first
 */
public record LimitTable(
    String name,
    String title,
    Quantity quantity,
    boolean errorOfMean,
    int leastRuns,
    int leastSteps,
    StepSpread spread,
    List<ClassLimits> classes) {
  private static final String FOLDER = "/io/github/platenwire/shipped/config/calibration/";
  private static final List<String> NAMES =
      List.of("iso-7500-1", "iso-9513", "astm-e4", "astm-e83");
  private static final int MOST = 1000;

  /** Makes the list immutable. */
  public LimitTable {
    classes = List.copyOf(classes);
  }

  /** The names of the standards whose limits come with Platenwire. */
  public static List<String> shippedNames() {
    return NAMES;
  }

  /** The standard that is usual for a quantity: ISO 9513 for a length, else ISO 7500-1. */
  public static String usualFor(Quantity quantity) {
    return quantity == Quantity.LENGTH ? "iso-9513" : "iso-7500-1";
  }

  /**
   * The limits of a standard that come with Platenwire.
   *
   * @param name one of {@link #shippedNames}
   * @throws IllegalArgumentException if there is none of that name
   */
  public static LimitTable shipped(String name) {
    if (!NAMES.contains(name)) {
      throw new IllegalArgumentException("no such standard, name=" + name);
    }
    String file = name + ".toml";
    try (InputStream in = LimitTable.class.getResourceAsStream(FOLDER + file)) {
      if (in == null) {
        throw new IllegalStateException(
            "the program is incomplete: " + FOLDER + file + " is missing");
      }
      return parse(new String(in.readAllBytes(), StandardCharsets.UTF_8), file);
    } catch (IOException e) {
      throw new UncheckedIOException("the program's own " + file + " cannot be read", e);
    } catch (TomlException e) {
      throw new IllegalStateException(
          "the program's own " + file + " is wrong: " + e.getMessage(), e);
    }
  }

  /** Whether a limit is a strain, so that a gauge length must be known. */
  public boolean limitsStrain() {
    return classes.stream().anyMatch(of -> of.errorStrain().isPresent());
  }

  /** The limits of a class, written as {@code 1} or {@code class 1}, if there is such a class. */
  public Optional<ClassLimits> ofClass(String written) {
    String bare = written.strip().replaceFirst("^(?i:class)\\s+", "");
    return classes.stream().filter(limits -> limits.name().equals(bare)).findFirst();
  }

  /**
   * Reads a file of limits.
   *
   * @param text the TOML document
   * @param source its name for error messages
   * @throws TomlException if a key or value is wrong, with line and column
   */
  public static LimitTable parse(String text, String source) throws TomlException {
    TomlSection file = TomlSection.parse(text, source);
    file.allow(
        "format",
        "name",
        "title",
        "quantity",
        "error-of",
        "least-runs",
        "least-steps",
        "steps",
        "class");
    file.choice("format", "platenwire-calibration-limits 1");
    String force = Quantity.FORCE.word();
    List<ClassLimits> classes = new ArrayList<>();
    for (TomlSection section : file.sections("class")) {
      classes.add(limits(section));
    }
    if (classes.isEmpty()) {
      throw file.error("a file of limits needs at least one [[class]]");
    }
    return new LimitTable(
        file.string("name"),
        file.string("title"),
        file.choice("quantity", force, Quantity.LENGTH.word()).equals(force)
            ? Quantity.FORCE
            : Quantity.LENGTH,
        file.choice("error-of", "mean", "each-run").equals("mean"),
        count(file, "least-runs"),
        count(file, "least-steps"),
        StepSpread.parse(file),
        classes);
  }

  private static int count(TomlSection file, String key) throws TomlException {
    long count = file.whole(key);
    if (count < 1 || count > MOST) {
      throw file.error(key, "'" + key + "' must be 1 to " + MOST + ", but it is " + count);
    }
    return (int) count;
  }

  private static ClassLimits limits(TomlSection section) throws TomlException {
    section.allow(
        "name",
        "error-percent",
        "error-micrometres",
        "repeatability-percent",
        "reversibility-percent",
        "zero-percent",
        "resolution-percent",
        "resolution-micrometres",
        "error-strain",
        "gauge-length-percent",
        "resolution-multiple");
    return new ClassLimits(
        section.string("name"),
        limit(section, "error-percent"),
        limit(section, "error-micrometres"),
        limit(section, "repeatability-percent"),
        limit(section, "reversibility-percent"),
        limit(section, "zero-percent"),
        limit(section, "resolution-percent"),
        limit(section, "resolution-micrometres"),
        limit(section, "error-strain"),
        limit(section, "gauge-length-percent"),
        limit(section, "resolution-multiple"));
  }

  private static OptionalDouble limit(TomlSection section, String key) throws TomlException {
    OptionalDouble limit = section.optionalNumber(key);
    if (limit.isPresent() && limit.getAsDouble() <= 0) {
      throw section.error(key, "'" + key + "' must be greater than 0");
    }
    return limit;
  }
}
