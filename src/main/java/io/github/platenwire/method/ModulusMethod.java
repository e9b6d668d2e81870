package io.github.platenwire.method;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/** A cylinder loaded in cycles while its strain is read. Immutable; safe for any thread. */
final class ModulusMethod extends NamedMethod {
  private final ModulusRules rules;
  private final SpecimenExamination examination;

  ModulusMethod(ModulusRules rules, String text) {
    super(rules.name(), rules.title(), rules.standard(), text);
    this.rules = rules;
    examination =
        new SpecimenExamination(
            rules.specimen(), rules.shape(), rules.ages(), rules.rounding().ageDays());
  }

  @Override
  public List<Objection> examine(Specimen specimen, TestSetting setting) {
    List<Objection> all = new ArrayList<>(examination.examine(specimen, setting));
    Objections own = new Objections();
    boolean told = examineStrength(specimen, own);
    examineGauges(StrainGauge.find(setting.channels(), specimen), own);
    if (told && all.stream().noneMatch(each -> each.weight() == Weight.REFUSED)) {
      examineRange(specimen, setting, own);
    }
    all.addAll(own.sorted());
    all.sort(Comparator.comparing(Objection::weight));
    return List.copyOf(all);
  }

  private static boolean examineStrength(Specimen specimen, Objections objections) {
    OptionalDouble strength = specimen.dimension(Dimension.COMPANION_STRENGTH);
    boolean known = strength.isPresent() && strength.getAsDouble() > 0;
    if (!known) {
      objections.refuse(
          "the strength of its companions is not given, so nobody can tell how far to load",
          "break companions first and enter their mean strength in specimens.csv, column"
              + " companion_strength_mpa or companion_strength_psi");
    }
    return known;
  }

  private static void examineGauges(List<StrainGauge> gauges, Objections objections) {
    if (gauges.stream().allMatch(StrainGauge::across) || gauges.size() > StrainGauge.MOST) {
      objections.refuse(
          "the rig has "
              + gauges.stream().filter(gauge -> !gauge.across()).count()
              + " gauges along the axis among "
              + gauges.size()
              + "; a modulus takes at least 1, and 1 to 8 in all",
          "name a rig whose file has a channel of quantity 'strain' or 'length' on the specimen");
    }
    for (StrainGauge gauge : gauges) {
      if (!gauge.isComplete()) {
        objections.refuse(
            "the gauge length of channel '"
                + gauge.name()
                + "' is not given, so its reading in "
                + gauge.facts().unit().symbol()
                + " cannot become a strain",
            "enter gauge-length-mm or gauge-length-in for that channel in the rig file, or"
                + " gauge_length_mm in specimens.csv");
      }
    }
  }

  private void examineRange(Specimen specimen, TestSetting setting, Objections objections) {
    LoadChannel load = LoadChannel.find(setting.channels());
    double area = rules.shape().section(specimen).newtonsPerMegapascal();
    double needed = rules.secondStress(specimen) * area;
    if (needed > load.percentOfRange(100)) {
      objections.refuse(
          "the load has to go to "
              + BothUnits.force(needed, rules.rounding().load())
              + ", beyond the range of channel '"
              + load.facts().name()
              + "'",
          "check companion_strength in specimens.csv, or take a rig that reaches so far");
    }
  }

  @Override
  MethodRun run(Specimen specimen, TestSetting setting, List<Objection> objections) {
    return new ModulusRun(rules, specimen, setting, objections);
  }
}
