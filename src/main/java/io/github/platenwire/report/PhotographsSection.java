package io.github.platenwire.report;

import io.github.platenwire.record.Enclosure;
import io.github.platenwire.record.SummaryFile;
import io.github.platenwire.study.ClosedTest;
import io.github.platenwire.study.StudyData;
import java.io.IOException;
import java.nio.file.Path;

/** The photographs kept beside the records of a study, small and side by side. Stateless. */
final class PhotographsSection {
  private static final int PIXELS = 420;

  /** More would make a page that no browser likes to open. */
  private static final int MOST = 60;

  private PhotographsSection() {}

  static void add(Page page, ReportSetting setting, StudyData data) throws IOException {
    int shown = 0;
    int left = 0;
    for (ClosedTest test : data.tests()) {
      Path raw = setting.lab().root().resolve(test.record());
      Path summary = setting.lab().root().resolve(test.summaryFile());
      EnclosuresPart part = new EnclosuresPart(setting, raw);
      for (Enclosure one : SummaryFile.observations(summary).enclosures()) {
        if (!one.isPicture()) {
          continue;
        }
        if (shown == 0) {
          page.section("Photographs").markup("<div class=\"gallery\">\n");
        }
        if (shown < MOST) {
          part.add(page, one, PIXELS, test.specimen());
          shown++;
        } else {
          left++;
        }
      }
    }
    if (shown > 0) {
      page.markup("</div>\n");
    }
    if (left > 0) {
      page.remark(
          "These are the first "
              + MOST
              + " photographs; "
              + left
              + " more are kept beside their records and stand in the report of each test.");
    }
  }
}
