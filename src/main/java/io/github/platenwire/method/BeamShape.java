package io.github.platenwire.method;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * Beams loaded at the thirds of their span: the stress in the middle third is P l/(b d^2).
 *
 * @param spanOverDepth what the span shall be, in depths
 * @param tolerancePercent by how much it may differ, in percent
 * @param outsidePercent how far outside the middle third the break may lie, in percent of the span
 * @param readingMillimetres to what sizes are read
 * @param size steps of the sizes
 * @param ratio step of span over depth
 */
record BeamShape(
    double spanOverDepth,
    double tolerancePercent,
    double outsidePercent,
    double readingMillimetres,
    Steps size,
    BigDecimal ratio)
    implements Shape {

  static String[] specimenKeys() {
    return new String[] {
      "span-over-depth", "span-tolerance-percent", "outside-percent-of-span", "reading-mm"
    };
  }

  static String[] roundingKeys() {
    return new String[] {"ratio"};
  }

  static BeamShape parse(TomlSection file) throws TomlException {
    Numbers specimen = new Numbers(file.section("specimen"));
    Numbers rounding = new Numbers(file.section("rounding"));
    return new BeamShape(
        specimen.positive("span-over-depth"),
        specimen.positive("span-tolerance-percent"),
        specimen.within("outside-percent-of-span", 0, 33),
        specimen.positive("reading-mm"),
        Steps.parse(rounding, "size-mm", "size-in"),
        rounding.step("ratio"));
  }

  @Override
  public void examine(Specimen specimen, Objections objections) {
    String why = "there is no stress";
    objections.demand("width", specimen.dimension(Dimension.WIDTH), why);
    boolean depth = objections.demand("depth", specimen.dimension(Dimension.DEPTH), why);
    boolean span = objections.demand("span", specimen.dimension(Dimension.SPAN), why);
    if (depth && span && !isAsAsked(specimen)) {
      objections.depart(words(specimen), "set the supports and the loads anew, or go on");
    }
  }

  @Override
  public Section section(Specimen specimen) {
    double width = specimen.dimension(Dimension.WIDTH).orElseThrow();
    double depth = specimen.dimension(Dimension.DEPTH).orElseThrow();
    double span = specimen.dimension(Dimension.SPAN).orElseThrow();
    return new Section(
        width * depth * depth / span,
        List.of(
            new Section.Size("width", List.of(width), -1, readingMillimetres),
            new Section.Size("depth", List.of(depth), -2, readingMillimetres),
            new Section.Size("span", List.of(span), 1, readingMillimetres)),
        List.of(
            Properties.size("width", "Width", width, size),
            Properties.size("depth", "Depth", depth, size),
            Properties.size("span", "Span", span, size),
            Properties.plain("span-ratio", "Span over depth", span / depth, ratio)),
        Optional.empty(),
        Optional.of(new MethodResult.Check("span", isAsAsked(specimen), words(specimen))));
  }

  private boolean isAsAsked(Specimen specimen) {
    double percent = Math.abs(ratioOf(specimen) / spanOverDepth - 1) * 100;
    return percent <= tolerancePercent + Objections.HAIR;
  }

  private String words(Specimen specimen) {
    return "the span is "
        + BothUnits.rounded(ratioOf(specimen), "0.001")
        + " depths, asked are "
        + BothUnits.plain(spanOverDepth)
        + " within "
        + BothUnits.plain(tolerancePercent)
        + " %";
  }

  private static double ratioOf(Specimen specimen) {
    return specimen.dimension(Dimension.SPAN).orElseThrow()
        / specimen.dimension(Dimension.DEPTH).orElseThrow();
  }
}
