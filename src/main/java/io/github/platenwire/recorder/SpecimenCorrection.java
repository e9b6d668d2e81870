package io.github.platenwire.recorder;

import io.github.platenwire.method.Specimen;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.Provenance.Change;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Puts right measurements of a specimen: {@code diameter_1_mm}, {@code length_in} … Stateless. */
public final class SpecimenCorrection {
  private static final Pattern WHAT =
      Pattern.compile("(?:diameter_([1-9])|length)_(mm|in)|mass_(kg|lb)");

  private SpecimenCorrection() {}

  /**
   * The change that a name and a value mean.
   *
   * @param specimen as in the raw file's head
   * @param what {@code diameter_1_mm}, {@code diameter_2_in}, {@code length_mm}, {@code mass_kg} …
   * @param to the right value in the unit that the name ends in
   * @throws IllegalArgumentException if there is no such measurement, or the value cannot be one
   */
  public static Change change(Specimen specimen, String what, double to) {
    if (!(to > 0 && to < 1e6)) {
      throw new IllegalArgumentException(
          "'" + what + "' must be a size greater than 0, but it is " + to);
    }
    Matcher parts = WHAT.matcher(what);
    if (!parts.matches()) {
      throw new IllegalArgumentException(
          "'"
              + what
              + "' is nothing that can be corrected; possible: diameter_1_mm, diameter_2_mm …,"
              + " length_mm, mass_kg, or in _in and _lb");
    }
    int diameters = specimen.diametersMillimetres().size();
    if (parts.group(1) != null && Integer.parseInt(parts.group(1)) > diameters) {
      throw new IllegalArgumentException(
          "'" + what + "': the specimen has " + diameters + " measured diameters");
    }
    return new Change(what, was(specimen, parts), to);
  }

  private static Optional<Double> was(Specimen specimen, Matcher parts) {
    OptionalDouble base;
    if (parts.group(3) != null) {
      base = specimen.massKilograms();
    } else if (parts.group(1) != null) {
      base =
          OptionalDouble.of(
              specimen.diametersMillimetres().get(Integer.parseInt(parts.group(1)) - 1));
    } else {
      base = specimen.lengthMillimetres();
    }
    return base.isPresent()
        ? Optional.of(unit(parts).fromBase(base.getAsDouble()))
        : Optional.empty();
  }

  private static Unit unit(Matcher parts) {
    String symbol = parts.group(3) == null ? parts.group(2) : parts.group(3);
    return switch (symbol) {
      case "in" -> Unit.INCH;
      case "kg" -> Unit.KILOGRAM;
      case "lb" -> Unit.POUND;
      default -> Unit.MILLIMETRE;
    };
  }

  /**
   * A specimen with changes made to it.
   *
   * @throws IllegalArgumentException if one of them is none
   */
  public static Specimen apply(Specimen specimen, List<Change> changes) {
    Specimen corrected = specimen;
    for (Change change : changes) {
      corrected = apply(corrected, change);
    }
    return corrected;
  }

  private static Specimen apply(Specimen specimen, Change change) {
    Matcher parts = WHAT.matcher(change.what());
    if (!parts.matches()) {
      throw new IllegalArgumentException("no such measurement: '" + change.what() + "'");
    }
    double base = unit(parts).toBase(change.to());
    List<Double> diameters = new ArrayList<>(specimen.diametersMillimetres());
    OptionalDouble length = specimen.lengthMillimetres();
    OptionalDouble mass = specimen.massKilograms();
    if (parts.group(3) != null) {
      mass = OptionalDouble.of(base);
    } else if (parts.group(1) != null) {
      diameters.set(Integer.parseInt(parts.group(1)) - 1, base);
    } else {
      length = OptionalDouble.of(base);
    }
    return specimen.withMeasurements(diameters, length, mass);
  }
}
