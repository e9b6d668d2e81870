package io.github.platenwire.explain;

import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.Provenance.Change;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Tells of what was measured on the specimen and of what follows from it: sizes, areas, ratios,
 * density. No reading of a device enters them. Immutable.
 */
final class SizeStory implements Story {
  private static final Set<String> NAMES =
      Set.of(
          "area",
          "diameter",
          "length",
          "width",
          "depth",
          "span",
          "length-ratio",
          "span-ratio",
          "density",
          "companion-strength");

  /** 1 m³ is 10⁹ mm³ and 1 ft³ is 12³ in³. */
  private static final double CUBIC_METRE = 1e9;

  private static final double CUBIC_FOOT = 1728;

  private final Evidence evidence;
  private final Specimen specimen;

  SizeStory(Evidence evidence) {
    this.evidence = evidence;
    specimen = evidence.specimen();
  }

  @Override
  public boolean tells(Figure figure) {
    return NAMES.contains(figure.name());
  }

  @Override
  public void tell(Figure figure, Telling telling) {
    measured(telling);
    switch (figure.name()) {
      case "area" -> area(figure, telling);
      case "diameter" -> diameter(figure, telling);
      case "length-ratio" -> ratio(figure, "length / mean diameter", length(), mean(), telling);
      case "span-ratio" ->
          ratio(figure, "span / depth", size(Dimension.SPAN), size(Dimension.DEPTH), telling);
      case "density" -> density(figure, telling);
      default -> given(figure, telling);
    }
  }

  /** What people measured, and what they put right. */
  void measured(Telling telling) {
    telling.step(
        "Measured on the specimen, as the file's head has it (no reading of a device): "
            + String.join(", ", sizes())
            + ".");
    for (Change change : evidence.changes()) {
      telling.more(
          "Put right after the test: "
              + change.what()
              + " "
              + change.from().map(FigureWords::number).orElse("(not measured)")
              + " -> "
              + FigureWords.number(change.to())
              + ".");
    }
    asWritten(telling);
  }

  /** The table's own words for its sizes, the bytes as received of what a person measured. */
  private void asWritten(Telling telling) {
    String cells =
        specimen.asWritten().entrySet().stream()
            .filter(cell -> isMeasurement(cell) && !cell.getValue().isEmpty())
            .map(cell -> cell.getKey() + "=" + cell.getValue())
            .collect(Collectors.joining(", "));
    if (!cells.isEmpty()) {
      telling.more("In the specimens' table stood: " + cells + ".");
    }
  }

  private static boolean isMeasurement(Map.Entry<String, String> cell) {
    return cell.getKey().matches(".*_(mm|in|kg|g|lb|MPa|psi|deg|mpa)");
  }

  private List<String> sizes() {
    List<String> words = new ArrayList<>();
    for (double diameter : specimen.diametersMillimetres()) {
      words.add("diameter " + both(diameter));
    }
    specimen.lengthMillimetres().ifPresent(length -> words.add("length " + both(length)));
    Arrays.stream(Dimension.values())
        .filter(one -> specimen.dimension(one).isPresent())
        .forEach(one -> words.add(words(one)));
    specimen
        .massKilograms()
        .ifPresent(mass -> words.add("mass " + mass(mass).both(evidence.first())));
    return words;
  }

  private String words(Dimension dimension) {
    String name = dimension.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    double value = size(dimension);
    return switch (dimension) {
      case WEDGE_ANGLE -> name + " " + FigureWords.number(value) + " deg";
      case COMPANION_STRENGTH ->
          "strength of companions "
              + FigureWords.both(value, Unit.MEGAPASCAL, Unit.PSI, evidence.first());
      default -> name + " " + both(value);
    };
  }

  private void area(Figure figure, Telling telling) {
    telling.step("Cross-section" + evidence.clause(FigureWords.Topic.AREA) + ":");
    telling.formula(area(), figure);
  }

  private Formula area() {
    return specimen.diametersMillimetres().isEmpty()
        ? Formula.of(
            "width x depth",
            "{} x {}",
            n -> n[0] * n[1],
            Term.millimetres(size(Dimension.WIDTH)),
            Term.millimetres(size(Dimension.DEPTH)))
        : Formula.of(
            "pi d² / 4",
            "pi x ({})² / 4",
            n -> Math.PI * n[0] * n[0] / 4,
            Term.millimetres(mean()));
  }

  /** The cross-section in the way of a stress. */
  void areaOnTheWay(Figure area, Telling telling) {
    telling.more("Cross-section" + evidence.clause(FigureWords.Topic.AREA) + ":");
    telling.formula(area(), area);
  }

  private void diameter(Figure figure, Telling telling) {
    telling.step("Mean of the " + specimen.diametersMillimetres().size() + " diameters:");
    telling.formula(mean(specimen.diametersMillimetres()), figure);
  }

  private static Formula mean(List<Double> sizes) {
    String places = sizes.stream().map(size -> "{}").collect(Collectors.joining(" + "));
    return Formula.of(
        "sum / number",
        "(" + places + ") / " + sizes.size(),
        n -> Arrays.stream(n).sum() / n.length,
        sizes.stream().map(Term::millimetres).toArray(Term[]::new));
  }

  private static void ratio(Figure figure, String name, double over, double under, Telling to) {
    to.step("Ratio:");
    to.formula(
        Formula.of(
            name, "{} / {}", n -> n[0] / n[1], Term.millimetres(over), Term.millimetres(under)),
        figure);
  }

  private void density(Figure figure, Telling telling) {
    evidence.figure("area").ifPresent(area -> areaOnTheWay(area, telling));
    telling.step("Density: mass over cross-section times length.");
    telling.formula(
        Formula.of(
            "m / (A l)",
            "{} x 1000000000 / ({} x {})",
            "{} x 1728 / ({} x {})",
            n -> n[0] * CUBIC_METRE / (n[1] * n[2]),
            n -> n[0] * CUBIC_FOOT / (n[1] * n[2]),
            mass(specimen.massKilograms().orElseThrow()),
            new Term(area().result(), Unit.SQUARE_MILLIMETRE, Unit.SQUARE_INCH),
            Term.millimetres(length())),
        figure);
  }

  private void given(Figure figure, Telling telling) {
    telling.step(figure.title() + ": taken as it was given, " + evidence.both(figure) + ".");
  }

  private double length() {
    return specimen.lengthMillimetres().orElseThrow();
  }

  private double mean() {
    return mean(specimen.diametersMillimetres()).result();
  }

  private double size(Dimension dimension) {
    return specimen.dimension(dimension).orElseThrow();
  }

  private static Term mass(double kilograms) {
    return new Term(kilograms, Unit.KILOGRAM, Unit.POUND);
  }

  private String both(double millimetres) {
    return Term.millimetres(millimetres).both(evidence.first());
  }
}
