package io.github.platenwire.method;

import io.github.platenwire.method.Method.Objection;
import io.github.platenwire.method.Method.Weight;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Collects what speaks against a test. Not thread-safe. */
final class Objections {
  /** Slack for what is just at a limit in decimal, but a hair beyond it in binary. */
  static final double HAIR = 1e-9;

  private static final double MOST_MILLIMETRES = 5000;

  private final List<Objection> collected = new ArrayList<>();

  void refuse(String problem, String remedy) {
    collected.add(new Objection(Weight.REFUSED, problem, remedy));
  }

  void askReason(String problem, String remedy) {
    collected.add(new Objection(Weight.NEEDS_REASON, problem, remedy));
  }

  void depart(String problem, String remedy) {
    collected.add(new Objection(Weight.DEPARTURE, problem, remedy));
  }

  /**
   * Refuses a size that is missing or cannot be.
   *
   * @param words the size in words, such as {@code length}
   * @param why what cannot be told without it
   * @return whether it is there
   */
  boolean demand(String words, OptionalDouble millimetres, String why) {
    if (millimetres.isPresent() && isPlausible(millimetres.getAsDouble())) {
      return true;
    }
    refuse(
        millimetres.isEmpty()
            ? "the " + words + " is not given"
            : "the " + words + " " + millimetres.getAsDouble() + " mm is not possible",
        "measure the " + words + " and enter it; without it " + why);
    return false;
  }

  static boolean isPlausible(double millimetres) {
    return millimetres > 0 && millimetres <= MOST_MILLIMETRES;
  }

  /** The gravest first; of equal weight in the order in which they were added. */
  List<Objection> sorted() {
    return collected.stream().sorted((a, b) -> a.weight().compareTo(b.weight())).toList();
  }
}
