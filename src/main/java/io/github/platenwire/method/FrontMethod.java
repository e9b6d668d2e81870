package io.github.platenwire.method;

import io.github.platenwire.quantity.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Follows how far water has gone, or how much was taken up, against time: for hours, from a gauge
 * or from what a person types. Immutable; safe for any thread.
 */
final class FrontMethod extends NamedMethod {
  private final FrontRules rules;

  FrontMethod(FrontRules rules, String text) {
    super(rules.name(), rules.title(), rules.standard(), text);
    this.rules = rules;
  }

  @Override
  public Set<AfterTest> asks() {
    return rules.ask();
  }

  @Override
  public List<Objection> examine(Specimen specimen, TestSetting setting) {
    List<Objection> objections = new ArrayList<>();
    Quantity quantity = rules.quantity();
    if (setting.channels().stream().noneMatch(one -> one.quantity() == quantity)) {
      objections.add(
          new Objection(
              Weight.REFUSED,
              "the rig has no channel of " + quantity.word() + ", which this method follows",
              "name a rig with one; port = \"typed\" lets a person type what is read"));
    }
    if (rules.absorption().isPresent() && ExposedFace.squareMillimetres(specimen).isEmpty()) {
      objections.add(
          new Objection(
              Weight.REFUSED,
              "neither diameter nor width and depth are given, so there is no area of the face in"
                  + " the water",
              "enter diameter_1_mm, or width_mm and depth_mm, in specimens.csv"));
    }
    return List.copyOf(objections);
  }

  @Override
  MethodRun run(Specimen specimen, TestSetting setting, List<Objection> objections) {
    return new FrontRun(rules, specimen, setting);
  }
}
