package io.github.platenwire.explain;

import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A formula as an explanation prints it, read and worked out as a client with a pocket calculator
 * would: {@code name = numbers = result}. Degrees for angles.
 */
final class PrintedFormula {
  private static final List<String> UNITS =
      Stream.concat(
              Arrays.stream(Unit.values()).filter(unit -> unit != Unit.ONE).map(Unit::symbol),
              Stream.of("kN²", "kN mm", "mm s", "s²", "mm sqrt(s)", "g/mm³"))
          .sorted(Comparator.comparingInt(String::length).reversed())
          .toList();

  private final String text;
  private final List<Double> numbers = new ArrayList<>();
  private int at;

  private PrintedFormula(String text) {
    this.text = text;
  }

  /** What a line says, and what its numbers come to. */
  record Worked(String name, double computed, double printed, double greatestNumber) {
    boolean addsUp() {
      return Math.abs(computed - printed) <= 1e-5 * Math.abs(printed) + 2e-7 * greatestNumber;
    }
  }

  /** Empty where a line has no formula. */
  static Optional<Worked> of(String line) {
    String[] parts = line.strip().split(" = ", -1);
    if (parts.length != 3) {
      return Optional.empty();
    }
    PrintedFormula formula = new PrintedFormula(parts[1]);
    double computed = formula.sum();
    if (formula.at != parts[1].length()) {
      throw new AssertionError("not understood from place " + formula.at + ": " + parts[1]);
    }
    double printed = Double.parseDouble(parts[2].split(" ", -1)[0]);
    double greatest = formula.numbers.stream().mapToDouble(Math::abs).max().orElse(0);
    return Optional.of(new Worked(parts[0], computed, printed, greatest));
  }

  private double sum() {
    double value = product();
    while (true) {
      if (take(" + ")) {
        value += product();
      } else if (take(" - ")) {
        value -= product();
      } else {
        return value;
      }
    }
  }

  private double product() {
    double value = power();
    while (true) {
      if (take(" x ")) {
        value *= power();
      } else if (take(" / ")) {
        value /= power();
      } else {
        return value;
      }
    }
  }

  private double power() {
    double value = factor();
    return take("²") ? value * value : value;
  }

  private double factor() {
    if (take("sqrt(")) {
      return Math.sqrt(closed());
    }
    if (take("tan(")) {
      return Math.tan(Math.toRadians(closed()));
    }
    if (take("(")) {
      return closed();
    }
    return take("pi") ? Math.PI : number();
  }

  private double closed() {
    double value = sum();
    if (!take(")")) {
      throw new AssertionError("')' is missing at place " + at + ": " + text);
    }
    return value;
  }

  private double number() {
    int end = at;
    while (end < text.length() && "-0123456789.".indexOf(text.charAt(end)) >= 0) {
      end++;
    }
    double value = Double.parseDouble(text.substring(at, end));
    numbers.add(value);
    at = end;
    UNITS.stream()
        .filter(unit -> text.startsWith(" " + unit, at))
        .findFirst()
        .ifPresent(this::skip);
    return value;
  }

  private void skip(String unit) {
    at += 1 + unit.length();
  }

  private boolean take(String what) {
    boolean there = text.startsWith(what, at);
    at += there ? what.length() : 0;
    return there;
  }
}
