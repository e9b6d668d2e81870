package io.github.platenwire.report;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.method.Companions;
import io.github.platenwire.method.Companions.Conditions;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.BothSystems;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.StoredSummary;
import io.github.platenwire.record.SummaryFacts;
import io.github.platenwire.record.SummaryFile;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a specimen stands among its companions (same series, same planned age, same method), as far
 * as they are broken now; their range against the limit, with where the limit comes from. Used
 * once.
 */
final class CompanionsPart {
  private static final String STRENGTH = "strength";

  private final ReportSetting setting;
  private final StoredSummary summary;
  private final RawHeader header;

  CompanionsPart(ReportSetting setting, StoredSummary summary, RawHeader header) {
    this.setting = setting;
    this.summary = summary;
    this.header = header;
  }

  /** One broken companion. */
  private record Broken(Path raw, SummaryFacts facts, double megapascals) {}

  /** Adds the section; nothing where the method knows no companions or none is broken yet. */
  void add(Page page) throws IOException {
    Optional<Companions> rules = rules();
    Optional<Figure> size =
        summary.result().figure("diameter").or(() -> summary.result().figure("width"));
    OptionalDouble age = summary.specimen().plannedAgeDays();
    if (rules.isEmpty()
        || size.isEmpty()
        || age.isEmpty()
        || summary.result().figure(STRENGTH).isEmpty()) {
      return;
    }
    List<Broken> broken = broken();
    if (broken.size() < 2) {
      return;
    }
    Companions.Verdict verdict =
        rules
            .get()
            .judge(
                Conditions.ofRow(summary.specimen().asWritten()),
                size.get().exact(),
                broken.stream().map(Broken::megapascals).toList(),
                setting.first());
    page.section("Companions: " + summary.specimen().series() + Words.atAge(age.getAsDouble()));
    page.note(
        verdict.within().isEmpty() ? Tone.PLAIN : verdict.within().get() ? Tone.GOOD : Tone.BAD,
        Inline.text(verdict.words() + "."));
    if (!verdict.limitSource().isEmpty()) {
      page.remark(
          "The limit is "
              + verdict.limitSource()
              + ": "
              + summary.method().standard()
              + ", by the numbers in the method's file "
              + summary.method().name()
              + ".toml, which the record holds. The set is as it stood when this report was made.");
    }
    page.table(table(broken));
  }

  /** By the method as the record holds it. */
  private Optional<Companions> rules() {
    try {
      return Method.parse(header.method().text(), "method " + header.method().name()).companions();
    } catch (TomlException e) {
      return Optional.empty();
    }
  }

  /** The first test of each companion that broke, this one among them, the oldest first. */
  private List<Broken> broken() throws IOException {
    Map<String, Broken> first = new LinkedHashMap<>();
    for (Path raw : setting.lab().records()) {
      Optional<Path> newest = LabFolder.newestSummaryOf(raw);
      if (newest.isPresent()) {
        facts(newest.get())
            .filter(this::isCompanion)
            .ifPresent(
                facts ->
                    facts
                        .strengthMegapascals()
                        .filter(strength -> strength > 0)
                        .ifPresent(
                            strength ->
                                first.putIfAbsent(
                                    facts.specimen(), new Broken(raw, facts, strength))));
      }
    }
    return List.copyOf(first.values());
  }

  /** A summary that cannot be read is for the audit to find; it costs no other report. */
  private static Optional<SummaryFacts> facts(Path file) {
    try {
      return Optional.of(SummaryFile.read(file));
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  private boolean isCompanion(SummaryFacts other) {
    return other.series().equals(summary.specimen().series())
        && other.method().equals(summary.method().name())
        && other.reason().equals("break")
        && other.plannedAgeDays().isPresent()
        && OptionalDouble.of(other.plannedAgeDays().get())
            .equals(summary.specimen().plannedAgeDays());
  }

  private PageTable table(List<Broken> broken) {
    PageTable table =
        PageTable.named("companions", "")
            .words("Specimen, and the command that explains it")
            .numbers("Strength", "strength_mpa");
    for (Broken one : broken) {
      boolean own = one.facts().test().equals(summary.test());
      table.row(
          Cell.of(
              Inline.lines(
                  List.of(
                      setting
                          .link(one.raw(), Inline.text(one.facts().specimen()))
                          .and(own ? " (this one)" : ""),
                      Inline.code("platenwire explain " + one.facts().test() + " " + STRENGTH)))),
          Cell.of(
              BothSystems.words(one.megapascals(), Quantity.STRESS, setting.first()),
              one.megapascals()));
    }
    return table;
  }
}
