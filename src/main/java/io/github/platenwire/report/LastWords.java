package io.github.platenwire.report;

import java.util.List;

/** What every report ends with: cautions, whose word counts, and how the page was made. */
final class LastWords {
  private LastWords() {}

  static void add(Page page, ReportSetting setting, List<String> standards) {
    page.section("How far this report goes");
    page.list(
        List.of(
            Inline.text(
                "What counts is "
                    + (standards.isEmpty()
                        ? "the specified standard"
                        : String.join(", ", standards))
                    + " and whatever else is specified. Whether concrete is accepted is for a"
                    + " licensed engineer to decide, not for this report."),
            Inline.text(
                "Figures hold for the specimens tested, as they were made, cured and measured; a"
                    + " structure is another matter."),
            Inline.text(
                "Platenwire only listens to the machine. It drives nothing and is no safety device:"
                    + " guards closed, eye protection on, hands away from the platens, and stay clear"
                    + " of a loaded specimen.")));
    page.paragraph(Inline.faint("This report was " + setting.made() + "."));
  }
}
