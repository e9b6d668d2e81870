package io.github.platenwire.explain;

import io.github.platenwire.method.BreakPosition;
import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The stress of one kind of test as its standard prints it: a symbolic formula with its sizes.
 * Immutable.
 *
 * <p>ASTM C39 and EN 12390-3: P/A; ASTM C496 and EN 12390-6: 2 P/(pi l d); ASTM C78 and EN 12390-5:
 * P l/(b d²) for a break in the middle third of the span, 3 P a/(b d²) at a distance a from the
 * nearer support outside it. From memory of the standards.
 *
 * @param words with symbols
 * @param template with a place for each number, the load first
 * @param sizes that come after the load, in the template's order
 * @param law the same as a function
 */
record StressLaw(String words, String template, List<Term> sizes, Formula.Law law) {
  StressLaw {
    sizes = List.copyOf(sizes);
  }

  /** The law of a record's kind as the specimen was measured; empty where there is none. */
  static Optional<StressLaw> of(Evidence evidence) {
    return switch (evidence.kind()) {
      case "compression-cylinder", "compression-cube" ->
          evidence.figure("area").map(area -> pressed(area.exact()));
      case "splitting-cylinder" -> evidence.figure("diameter").map(d -> split(evidence, d.exact()));
      case "flexure-third-point" -> Optional.of(middle(evidence.specimen()));
      default -> Optional.empty();
    };
  }

  private static StressLaw pressed(double area) {
    Term term = new Term(area, Unit.SQUARE_MILLIMETRE, Unit.SQUARE_INCH);
    return new StressLaw("P / A", "{} / {}", List.of(term), n -> n[0] / n[1]);
  }

  private static StressLaw split(Evidence evidence, double diameter) {
    double length = evidence.specimen().lengthMillimetres().orElseThrow();
    return new StressLaw(
        "2 P / (pi l d)",
        "2 x {} / (pi x {} x {})",
        List.of(Term.millimetres(length), Term.millimetres(diameter)),
        n -> 2 * n[0] / (Math.PI * n[1] * n[2]));
  }

  private static StressLaw middle(Specimen beam) {
    double depth = size(beam, Dimension.DEPTH);
    return new StressLaw(
        "P l / (b d²)",
        "{} x {} / ({} x ({})²)",
        List.of(
            Term.millimetres(size(beam, Dimension.SPAN)),
            Term.millimetres(size(beam, Dimension.WIDTH)),
            Term.millimetres(depth)),
        n -> n[0] * n[1] / (n[2] * n[3] * n[3]));
  }

  /** The law for where the beam broke. */
  StressLaw placed(Specimen beam, BreakPosition position) {
    if (position instanceof BreakPosition.Outside outside
        && outside.millimetres() < size(beam, Dimension.SPAN) / 3) {
      return new StressLaw(
          "3 P a / (b d²)",
          "3 x {} x {} / ({} x ({})²)",
          List.of(Term.millimetres(outside.millimetres()), sizes.get(1), sizes.get(2)),
          n -> 3 * n[0] * n[1] / (n[2] * n[3] * n[3]));
    }
    return this;
  }

  private static double size(Specimen specimen, Dimension dimension) {
    return specimen.dimension(dimension).orElseThrow();
  }

  /** The stress at a load. */
  Formula at(double newtons) {
    return Formula.of(words, template, law, terms(newtons));
  }

  /** The rate of stress at a rate of loading in newtons a second; a second or a minute. */
  Formula rate(double newtonsPerSecond, boolean perMinute) {
    return perMinute
        ? Formula.of(
            "60 x " + words, "60 x " + template, n -> 60 * law.of(n), terms(newtonsPerSecond))
        : at(newtonsPerSecond);
  }

  private Term[] terms(double newtons) {
    List<Term> terms = new ArrayList<>(List.of(Term.newtons(newtons)));
    terms.addAll(sizes);
    return terms.toArray(Term[]::new);
  }
}
