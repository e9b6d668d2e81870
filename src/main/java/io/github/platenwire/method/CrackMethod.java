package io.github.platenwire.method;

import java.util.List;
import java.util.Set;

/** A method that follows a crack. Immutable; safe for any thread. */
final class CrackMethod implements Method {
  private final CrackRules rules;
  private final Set<AfterTest> ask;
  private final String text;

  CrackMethod(CrackRules rules, Set<AfterTest> ask, String text) {
    this.rules = rules;
    this.ask = ask;
    this.text = text;
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
  public Set<AfterTest> asks() {
    return ask;
  }

  @Override
  public List<Objection> examine(Specimen specimen, TestSetting setting) {
    return new CrackExamination(rules).examine(specimen, setting);
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
    return new CrackRun(rules, specimen, setting, objections);
  }
}
