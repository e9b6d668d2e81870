package io.github.platenwire.method;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** A specimen broken by one load. Immutable; safe for any thread. */
final class StrengthMethod extends NamedMethod {
  private final StrengthRules rules;
  private final SpecimenExamination examination;

  StrengthMethod(StrengthRules rules, String text) {
    super(rules.name(), rules.title(), rules.standard(), text);
    this.rules = rules;
    this.examination =
        new SpecimenExamination(
            rules.specimen(), rules.shape(), rules.ages(), rules.rounding().ageDays());
  }

  @Override
  public List<Objection> examine(Specimen specimen, TestSetting setting) {
    return examination.examine(specimen, setting);
  }

  @Override
  MethodRun run(Specimen specimen, TestSetting setting, List<Objection> objections) {
    return new StrengthRun(rules, specimen, setting, objections);
  }

  @Override
  public Optional<Companions> companions() {
    return rules
        .companions()
        .map(companions -> new Companions(companions, rules.rounding().stress()));
  }

  @Override
  public OptionalDouble ageToleranceHours(double ageDays) {
    return rules.ages().stream()
        .filter(tolerance -> tolerance.days() == ageDays)
        .mapToDouble(StrengthRules.AgeTolerance::hours)
        .findFirst();
  }

  @Override
  public Set<AfterTest> asks() {
    return rules.ask();
  }

  @Override
  public MethodResult withBreakPosition(
      Specimen specimen, MethodResult result, BreakPosition position) {
    return rules.shape() instanceof BeamShape beam && result.figure("strength").isPresent()
        ? new ThirdPointBreak(beam, rules.rounding().stress(), specimen).apply(result, position)
        : result;
  }
}
