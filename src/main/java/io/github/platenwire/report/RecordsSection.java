package io.github.platenwire.report;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.RegisterCheck;
import io.github.platenwire.lab.RegisterLine;
import io.github.platenwire.study.ClosedTest;
import io.github.platenwire.study.StudyData;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** The records that a study rests on, with digests and witnesses. Stateless. */
final class RecordsSection {
  private RecordsSection() {}

  /** The test's id, which is the stem of its raw file's name. */
  static String test(String record) {
    return record.substring(record.lastIndexOf('/') + 1).replaceFirst("\\.raw\\.csv$", "");
  }

  static void add(Page page, ReportSetting setting, StudyData data)
      throws IOException, LabException {
    Map<String, RegisterLine> lines = new HashMap<>();
    Facts heads = new Facts();
    for (String rig : setting.lab().registerNames()) {
      RegisterCheck register = RegisterCheck.of(setting.lab(), rig);
      register.lines().forEach(line -> lines.put(line.test(), line));
      register
          .head()
          .ifPresent(
              witness ->
                  heads.add(
                      "Register of " + rig,
                      Inline.text(register.lines().size() + " lines, witness ")
                          .and(Inline.strong(witness))));
    }
    page.section("Records").facts(heads);
    page.remark(
        "A witness is the head of a register. Written on paper, it testifies later that no record"
            + " before it was changed since. 'platenwire audit' holds all of this against the"
            + " files.");
    page.table(records(setting, data, lines));
  }

  private static PageTable records(
      ReportSetting setting, StudyData data, Map<String, RegisterLine> lines) {
    PageTable table =
        PageTable.named("records", "")
            .words("Record, and SHA-256 of its raw file")
            .names("Rig")
            .names("Witness")
            .hidden("raw_sha256")
            .hidden("summary")
            .hidden("program");
    for (ClosedTest test : data.tests()) {
      String sha = test.summary().raw().sha256();
      Optional<RegisterLine> line = Optional.ofNullable(lines.get(test.summary().test()));
      table.row(
          new Cell(
              Inline.lines(
                  java.util.List.of(
                      setting.record(test.record(), Inline.text(test.summary().test())),
                      Inline.code(sha))),
              test.record(),
              Tone.PLAIN),
          Cell.of(test.summary().rig()),
          line.map(there -> Cell.of(Inline.code(there.witness())))
              .orElse(Cell.of("not in the register").in(Tone.BAD)),
          Cell.of(sha),
          Cell.of(test.summaryFile()),
          Cell.of(test.summary().program()));
    }
    return table;
  }
}
