package io.github.platenwire.method;

import java.util.List;
import java.util.Set;

/** A method that follows a crack. Immutable; safe for any thread. */
final class CrackMethod extends NamedMethod {
  private final CrackRules rules;
  private final Set<AfterTest> ask;

  CrackMethod(CrackRules rules, Set<AfterTest> ask, String text) {
    super(rules.name(), rules.title(), rules.standard(), text);
    this.rules = rules;
    this.ask = ask;
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
  MethodRun run(Specimen specimen, TestSetting setting, List<Objection> objections) {
    return new CrackRun(rules, specimen, setting, objections);
  }
}
