package io.github.platenwire.method;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Cubes: the stress is the load over the loaded face, width times depth. */
record CubeShape(
    double differencePercent, double readingMillimetres, Steps size, Steps area, Steps density)
    implements Shape {

  static String[] specimenKeys() {
    return new String[] {"side-difference-percent", "reading-mm"};
  }

  static String[] roundingKeys() {
    return new String[] {"area-mm2", "area-in2", "density-kg-per-m3", "density-lb-per-ft3"};
  }

  static CubeShape parse(TomlSection file) throws TomlException {
    Numbers specimen = new Numbers(file.section("specimen"));
    Numbers rounding = new Numbers(file.section("rounding"));
    return new CubeShape(
        specimen.positive("side-difference-percent"),
        specimen.positive("reading-mm"),
        Steps.parse(rounding, "size-mm", "size-in"),
        Steps.parse(rounding, "area-mm2", "area-in2"),
        Steps.parse(rounding, "density-kg-per-m3", "density-lb-per-ft3"));
  }

  @Override
  public void examine(Specimen specimen, Objections objections) {
    String why = "there is no area of the loaded face";
    boolean width = objections.demand("width", specimen.dimension(Dimension.WIDTH), why);
    boolean depth = objections.demand("depth", specimen.dimension(Dimension.DEPTH), why);
    if (width && depth && percent(specimen) > differencePercent + Objections.HAIR) {
      objections.depart(
          words(specimen),
          "measure again; of a cube that is out of square the strength is not certain");
    }
  }

  @Override
  public Section section(Specimen specimen) {
    double width = specimen.dimension(Dimension.WIDTH).orElseThrow();
    double depth = specimen.dimension(Dimension.DEPTH).orElseThrow();
    double face = width * depth;
    List<Section.Property> properties = new ArrayList<>();
    properties.add(Properties.area(face, area));
    properties.add(Properties.size("width", "Width of the loaded face", width, size));
    properties.add(Properties.size("depth", "Depth of the loaded face", depth, size));
    OptionalDouble mass = specimen.massKilograms();
    OptionalDouble height = specimen.lengthMillimetres();
    if (mass.isPresent() && height.isPresent()) {
      properties.add(Properties.density(mass.getAsDouble(), face * height.getAsDouble(), density));
    }
    return new Section(
        face,
        List.of(
            new Section.Size("width", List.of(width), -1, readingMillimetres),
            new Section.Size("depth", List.of(depth), -1, readingMillimetres)),
        properties,
        Optional.empty(),
        Optional.of(
            new MethodResult.Check(
                "sides",
                percent(specimen) <= differencePercent + Objections.HAIR,
                words(specimen))));
  }

  private String words(Specimen specimen) {
    return "the sides differ by "
        + BothUnits.rounded(percent(specimen), "0.01")
        + " %, limit "
        + BothUnits.plain(differencePercent)
        + " %";
  }

  /** Greatest less least of the sides that are given, in percent of the least. */
  private static double percent(Specimen specimen) {
    double width = specimen.dimension(Dimension.WIDTH).orElseThrow();
    double depth = specimen.dimension(Dimension.DEPTH).orElseThrow();
    double height = specimen.lengthMillimetres().orElse(width);
    double least = Math.min(width, Math.min(depth, height));
    return (Math.max(width, Math.max(depth, height)) - least) / least * 100;
  }
}
