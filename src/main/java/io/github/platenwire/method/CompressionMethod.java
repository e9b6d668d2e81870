package io.github.platenwire.method;

import java.util.List;
import java.util.Optional;

/** Compression of a cylinder. Immutable; safe for any thread. */
final class CompressionMethod implements Method {
  private final CompressionRules rules;
  private final String text;
  private final CylinderExamination examination;

  CompressionMethod(CompressionRules rules, String text) {
    this.rules = rules;
    this.text = text;
    this.examination = new CylinderExamination(rules);
  }

  @Override
  public String name() {
    return rules.name();
  }

  @Override
  public String title() {
    return rules.title();
  }

  @Override
  public String standard() {
    return rules.standard();
  }

  @Override
  public String text() {
    return text;
  }

  @Override
  public List<Objection> examine(Specimen specimen, TestSetting setting) {
    return examination.examine(specimen, setting);
  }

  @Override
  public MethodRun start(Specimen specimen, TestSetting setting) {
    List<Objection> objections = examine(specimen, setting);
    for (Objection objection : objections) {
      if (objection.weight() == Weight.REFUSED) {
        throw new IllegalArgumentException(
            specimen.name() + " cannot be tested: " + objection.problem());
      }
    }
    return new CompressionRun(rules, specimen, setting, objections);
  }

  @Override
  public Optional<Companions> companions() {
    return Optional.of(new Companions(rules));
  }
}
