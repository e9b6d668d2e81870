package io.github.platenwire.report;

import io.github.platenwire.calibration.CalibrationCheck;
import io.github.platenwire.calibration.ClassLimits;
import io.github.platenwire.calibration.CorrectionFit;
import io.github.platenwire.lab.Calibration;
import io.github.platenwire.lab.Channel;
import io.github.platenwire.lab.LabException;
import java.io.IOException;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The report of a calibration: certificate and due date, errors against limits, class of each
 * range, what the correction leaves over. Used once; not thread-safe.
 */
public final class CalibrationReport {
  private final ReportSetting setting;
  private final Calibration calibration;

  private CalibrationReport(ReportSetting setting, Calibration calibration) {
    this.setting = setting;
    this.calibration = calibration;
  }

  /**
   * What the runs of a calibration come to.
   *
   * @param check its figures
   * @param fit the correction in use
   * @param stated the class that its file states, if it does
   * @param judged the class against whose limits each figure is told
   * @param met whether the stated class is met, or any class where none is stated
   * @param words the same in a sentence
   */
  public record Judged(
      CalibrationCheck check,
      CorrectionFit fit,
      Optional<ClassLimits> stated,
      ClassLimits judged,
      boolean met,
      String words) {}

  /**
   * Makes the page.
   *
   * @param judged what its runs come to; empty if the file holds none
   * @throws LabException if a rig file cannot be used
   * @throws IOException if the chart cannot be drawn
   */
  public static Page of(ReportSetting setting, Calibration calibration, Optional<Judged> judged)
      throws LabException, IOException {
    return new CalibrationReport(setting, calibration).page(judged);
  }

  private Page page(Optional<Judged> judged) throws LabException, IOException {
    Page page =
        new Page(
            "Calibration " + calibration.name(),
            setting.lab().settings().labName()
                + ", certificate "
                + calibration.certificate()
                + " of "
                + calibration.laboratory(),
            "calibration " + calibration.name() + " · certificate " + calibration.certificate(),
            setting.first());
    LocalDate today = LocalDate.ofInstant(setting.now(), setting.zone());
    page.headlines(headlines(judged, today));
    due(page, today);
    judged.ifPresentOrElse(
        there -> page.note(there.met() ? Tone.GOOD : Tone.BAD, Inline.text(there.words())),
        () ->
            page.note(
                Tone.CAUTION,
                Inline.text(
                    "The file holds no runs, so nothing can be computed: what the certificate says"
                        + " is taken as it stands.")));
    facts(page);
    if (judged.isPresent()) {
      new CalibrationRunsSection(setting, calibration.name(), judged.get()).add(page);
    }
    LastWords.add(
        page,
        setting,
        judged.map(there -> List.of(there.check().limits().title())).orElse(List.of()));
    return page;
  }

  private List<Page.Headline> headlines(Optional<Judged> judged, LocalDate today) {
    List<Page.Headline> all = new ArrayList<>();
    calibration
        .accuracyClass()
        .ifPresent(
            name ->
                all.add(
                    new Page.Headline(
                        "Class stated",
                        Inline.text(name),
                        Inline.faint(judged.map(j -> j.check().limits().title()).orElse("")))));
    calibration
        .due()
        .ifPresent(
            due ->
                all.add(
                    new Page.Headline(
                        "Due", Inline.text(due.toString()), Inline.faint(until(due, today)))));
    calibration
        .expandedUncertaintyPercent()
        .ifPresent(
            percent ->
                all.add(
                    new Page.Headline(
                        "Uncertainty (k = 2)",
                        Inline.text(Words.plain(percent) + " %"),
                        Inline.faint("of the reading, by the certificate"))));
    return all;
  }

  private static String until(LocalDate due, LocalDate today) {
    long days = ChronoUnit.DAYS.between(today, due);
    return days < 0
        ? "overdue by " + Words.days((double) -days)
        : "in " + Words.days((double) days);
  }

  private void due(Page page, LocalDate today) {
    calibration
        .due()
        .filter(today::isAfter)
        .ifPresent(
            due ->
                page.note(
                    Tone.BAD,
                    Inline.text(
                        "This calibration was due on "
                            + due
                            + "; until there is a new one, every test says so.")));
    if (calibration.due().isEmpty()) {
      page.note(Tone.CAUTION, Inline.text("No due date is stated."));
    }
  }

  private void facts(Page page) throws LabException {
    Facts facts = new Facts();
    facts.add("Certificate", calibration.certificate());
    facts.add("Laboratory", calibration.laboratory());
    facts.add("Date", calibration.date().toString());
    facts.add("Due", calibration.due().map(LocalDate::toString).orElse("not stated"));
    facts.add("Class stated", calibration.accuracyClass().orElse("none"));
    List<String> used = users();
    facts.add("Used by", used.isEmpty() ? "no channel of a rig" : String.join(", ", used));
    facts.add(
        "File",
        setting.link(
            setting.lab().root().resolve("calibrations").resolve(calibration.name() + ".toml")));
    page.section("Certificate").facts(facts);
  }

  private List<String> users() throws LabException {
    List<String> users = new ArrayList<>();
    for (String rig : setting.lab().rigNames()) {
      for (Channel channel : setting.lab().rig(rig).channels()) {
        if (channel.calibration().equals(Optional.of(calibration.name()))) {
          users.add(rig + " " + channel.name());
        }
      }
    }
    return users;
  }
}
