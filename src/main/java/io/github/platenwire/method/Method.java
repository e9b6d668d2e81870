package io.github.platenwire.method;

import io.github.platenwire.toml.TomlException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * A test method with its parameters, as a method file tells it. Immutable; safe for any thread; the
 * runs it starts are not.
 */
public interface Method {
  /** The name by which a person asks for it, such as {@code compression-cylinder-c39}. */
  String name();

  /** What it is, in a few words. */
  String title();

  /** The standard it computes by, in the edition that its file names. */
  String standard();

  /** The method file as it was read, to be kept in the raw file. */
  String text();

  /**
   * What speaks against testing a specimen, before anything is loaded.
   *
   * @param specimen the specimen as measured
   * @param setting when it is tested
   * @return in the order a person should deal with them; empty if all is well
   */
  List<Objection> examine(Specimen specimen, TestSetting setting);

  /**
   * Starts a test of a specimen.
   *
   * @param specimen one that {@link #examine} does not refuse
   * @param setting when and on what it is tested
   */
  MethodRun start(Specimen specimen, TestSetting setting);

  /** How companion specimens are held against each other, if the method says so. */
  default Optional<Companions> companions() {
    return Optional.empty();
  }

  /**
   * By how many hours a test may come early or late at a planned age, as the standard prints it.
   *
   * @param ageDays the planned age
   * @return empty if nothing is printed for that age
   */
  default OptionalDouble ageToleranceHours(double ageDays) {
    return OptionalDouble.empty();
  }

  /** What a person is to be asked once the test is over; empty if nothing. */
  default Set<AfterTest> asks() {
    return Set.of();
  }

  /**
   * The result once it is known where along its span the specimen broke. A pure function; only
   * methods that ask for {@link AfterTest#BREAK_POSITION} change anything.
   *
   * @param specimen the specimen that was broken
   * @param result what {@link MethodRun#finish} came to
   * @param position where it broke, as far as anybody knows
   * @return the result with the formula for that position, or without a strength where the method
   *     discards it, and the reason among its departures
   */
  default MethodResult withBreakPosition(
      Specimen specimen, MethodResult result, BreakPosition position) {
    return result;
  }

  /**
   * Something that speaks against testing a specimen.
   *
   * @param weight what follows from it
   * @param problem what is wrong, with the figures and the clause
   * @param remedy what to do next
   */
  record Objection(Weight weight, String problem, String remedy) {}

  /** The same objections; refuses to start a test against one that forbids it. */
  static List<Objection> unlessRefused(Specimen specimen, List<Objection> objections) {
    for (Objection objection : objections) {
      if (objection.weight() == Weight.REFUSED) {
        throw new IllegalArgumentException(
            specimen.name() + " cannot be tested: " + objection.problem());
      }
    }
    return objections;
  }

  /** What follows from an objection. */
  enum Weight {
    /** The test must not be done. */
    REFUSED,
    /** The test may go on only with a reason, which is recorded. */
    NEEDS_REASON,
    /** Recorded as a departure from the method. */
    DEPARTURE
  }

  /**
   * Reads a method file.
   *
   * @param text the TOML document
   * @param source its name for error messages
   * @throws TomlException if a key or value is wrong, with line and column
   */
  static Method parse(String text, String source) throws TomlException {
    return MethodParser.parse(text, source);
  }
}
