package io.github.platenwire.method;

import java.util.List;

/** A method that follows a crack. Immutable; safe for any thread. */
final class CrackMethod extends NamedMethod {
  private final CrackRules rules;

  CrackMethod(CrackRules rules, String text) {
    super(rules.name(), rules.title(), rules.standard(), text);
    this.rules = rules;
  }

  @Override
  public List<Objection> examine(Specimen specimen, TestSetting setting) {
    return new CrackExamination(rules).examine(specimen, setting);
  }

  @Override
  MethodRun run(Specimen specimen, TestSetting setting, List<Objection> objections) {
    return new CrackRun(rules, specimen, setting, objections);
  }
}
