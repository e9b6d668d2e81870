package io.github.platenwire.report;

import io.github.platenwire.chart.CrackChart;
import io.github.platenwire.chart.FrontTrace;
import io.github.platenwire.chart.LoadChart;
import io.github.platenwire.chart.LoadTrace;
import io.github.platenwire.chart.StrainChart;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.method.MethodResult;
import io.github.platenwire.method.MethodResult.Check;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.record.Enclosure;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.record.StoredSummary;
import io.github.platenwire.record.SummaryFile;
import io.github.platenwire.study.MainFigures;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * The report of one test, from its raw file and the newest version of its summary. Every figure
 * stands with its rows and the command that explains it. Used once; not thread-safe.
 */
public final class TestReport {
  private static final int MOST_HEADLINES = 4;
  private static final int PHOTOGRAPH_PIXELS = 900;

  private final ReportSetting setting;
  private final Path raw;
  private final StoredSummary summary;
  private final RawScan scan;

  private TestReport(ReportSetting setting, Path raw, StoredSummary summary, RawScan scan) {
    this.setting = setting;
    this.raw = raw;
    this.summary = summary;
    this.scan = scan;
  }

  /**
   * Makes the page.
   *
   * @param raw the raw file
   * @throws ReportException if the record has no summary yet
   * @throws RawFileException if the raw file is not as the format says
   * @throws LabException if the lab's register or keys cannot be used
   * @throws IOException if a file cannot be read
   */
  public static Page of(ReportSetting setting, Path raw)
      throws IOException, RawFileException, LabException, ReportException {
    Optional<Path> file = LabFolder.newestSummaryOf(raw);
    if (file.isEmpty()) {
      throw new ReportException(
          raw.getFileName() + " has no summary yet; 'platenwire recover' makes one");
    }
    return new TestReport(setting, raw, SummaryFile.stored(file.get()), RawScan.of(raw)).page();
  }

  private Page page() throws IOException, RawFileException, LabException {
    RecordProof proof = RecordProof.of(setting, raw, summary, scan);
    Page page =
        new Page(
            summary.specimen().name() + ": " + title(),
            scan.header().lab() + ", " + Words.moment(summary.start(), setting.zone()),
            summary.test() + proof.witness().map(w -> " · witness " + w).orElse(""),
            setting.first());
    headlines(page);
    page.paragraph(
        Inline.text("Tested by ")
            .and(Inline.strong(summary.method().title()))
            .and(" (" + summary.method().standard() + ") on " + summary.rig() + "."));
    warnings(page, proof);
    charts(page);
    new TestFacts(setting, summary, scan).add(page);
    page.section("Results").table(results());
    page.remark(
        "± is the expanded uncertainty with k = 2, which is about 95 %. The exact value is what was"
            + " computed before rounding. Run the command in the lab's folder to see how a figure"
            + " comes from its rows, byte by byte.");
    new CompanionsPart(setting, summary, scan.header()).add(page);
    checks(page);
    observations(page);
    page.section("Uncertainty, line by line").table(Budgets.table(summary.result().figures()));
    page.remark(
        "Each line is a standard uncertainty, already in the result's unit; they are combined as the"
            + " root of the sum of their squares (JCGM 100:2008).");
    new ReadingsSection(scan, summary.result().suspects()).add(page);
    proof.add(page);
    LastWords.add(page, setting, List.of(summary.method().standard()));
    return page;
  }

  private String title() {
    String words = summary.method().title();
    return words.substring(0, 1).toLowerCase(Locale.ROOT) + words.substring(1);
  }

  private void headlines(Page page) {
    page.headlines(
        MainFigures.ofTest(summary.result().figures()).stream()
            .limit(MOST_HEADLINES)
            .map(this::headline)
            .toList());
  }

  private Page.Headline headline(Figure figure) {
    List<Inline> below = new ArrayList<>();
    String other = Words.other(figure, setting.first());
    if (!other.isEmpty()) {
      below.add(Inline.text(other));
    }
    List<String> uncertainty = Words.uncertainty(figure, setting.first());
    if (!uncertainty.isEmpty()) {
      below.add(Inline.faint(String.join(", ", uncertainty)));
    }
    return new Page.Headline(
        Words.shortTitle(figure),
        Inline.text(Words.first(figure, setting.first())),
        Inline.lines(below));
  }

  private void warnings(Page page, RecordProof proof) {
    summary.failure().ifPresent(words -> page.note(Tone.BAD, Inline.text(words)));
    proof.findings().forEach(words -> page.note(Tone.BAD, Inline.text(words)));
    MethodResult result = summary.result();
    long unmet = result.checks().stream().filter(check -> !check.met()).count();
    List<String> parts = new ArrayList<>();
    if (unmet > 0) {
      parts.add(unmet + (unmet == 1 ? " check was not met" : " checks were not met"));
    }
    if (!result.departures().isEmpty()) {
      int departures = result.departures().size();
      parts.add(departures + (departures == 1 ? " departure from it" : " departures from it"));
    }
    page.note(
        parts.isEmpty() ? Tone.GOOD : Tone.CAUTION,
        Inline.text(
            parts.isEmpty()
                ? "Every check of the method was met, without a departure."
                : "Not all is as the method wants it: "
                    + String.join(", ", parts)
                    + "; they are told below."));
  }

  private void charts(Page page) throws IOException, RawFileException {
    Optional<FrontTrace> front = FrontTrace.read(raw);
    if (front.isPresent()) {
      new FrontSection(setting, front.get()).add(page);
      return;
    }
    LoadTrace trace = LoadTrace.read(raw);
    if (trace.crack().isPresent()) {
      page.fullChart(
          CrackChart.ofLoad(trace, setting.theme()),
          "Load over crack width, with first cracks, thresholds and cycles");
      page.fullChart(
          CrackChart.ofTime(trace, setting.theme()),
          "Crack width over time with its holds, and the load below it");
      return;
    }
    if (trace.strain().isPresent()) {
      page.chart(
          StrainChart.of(trace, setting.theme()),
          "Stress over strain of every cycle, and the chords whose slopes are the modulus");
    }
    page.chart(
        LoadChart.of(trace, setting.theme()),
        "Load over time" + (trace.hasRate() ? ", and the rate of loading where it counts" : ""));
  }

  private PageTable results() {
    PageTable table =
        PageTable.named("results", "")
            .words("Figure, and the command that explains it")
            .numbers("Result", "rounded")
            .numbers("± (k = 2)", "expanded_uncertainty")
            .numbers("Exact", "exact")
            .words("Rows");
    for (Figure figure : summary.result().figures()) {
      table.row(
          Cell.of(
              Inline.lines(
                  List.of(
                      Inline.text(figure.title()),
                      Inline.code("platenwire explain " + summary.test() + " " + figure.name())))),
          Cell.of(both(Words.first(figure, setting.first()), Words.other(figure, setting.first()))),
          new Cell(
              uncertainty(figure),
              figure.uncertainty().map(budget -> Double.toString(budget.expanded())).orElse(""),
              Tone.PLAIN),
          new Cell(
              Inline.code(Words.with(Double.toString(figure.exact()), figure.unit())),
              Double.toString(figure.exact()),
              Tone.PLAIN),
          Cell.of(Words.rows(figure.rows())));
    }
    return table;
  }

  private Inline uncertainty(Figure figure) {
    List<String> units = Words.uncertainty(figure, setting.first());
    return units.isEmpty()
        ? Inline.EMPTY
        : both(units.get(0), units.size() > 1 ? units.get(1) : "");
  }

  private static Inline both(String first, String other) {
    return other.isEmpty()
        ? Inline.text(first)
        : Inline.lines(List.of(Inline.text(first), Inline.faint(other)));
  }

  private void checks(Page page) {
    PageTable table = PageTable.named("checks", "").names("Check").names("").words("What was seen");
    for (Check check : summary.result().checks()) {
      table.row(
          Cell.of(check.name()),
          Cell.of(check.met() ? Inline.badge(Tone.GOOD, "met") : Inline.badge(Tone.BAD, "not met")),
          Cell.of(check.words()));
    }
    page.section("Checks of rate, hold and the like").table(table);
    page.section("Departures from the method");
    if (summary.result().departures().isEmpty()) {
      page.paragraph("None.");
    }
    page.list(summary.result().departures().stream().map(Inline::text).toList());
  }

  private void observations(Page page) throws IOException {
    page.section("What people saw");
    List<Enclosure> enclosures = SummaryFile.observations(summary.file()).enclosures();
    if (summary.observed().isEmpty() && enclosures.isEmpty()) {
      page.paragraph("Nothing was noted.");
      return;
    }
    Facts facts = new Facts();
    for (Map.Entry<String, String> seen : summary.observed().entrySet()) {
      facts.add(seen.getKey().replace('_', ' '), seen.getValue());
    }
    page.facts(facts);
    EnclosuresPart part = new EnclosuresPart(setting, raw);
    enclosures.forEach(one -> part.add(page, one, PHOTOGRAPH_PIXELS, ""));
  }
}
