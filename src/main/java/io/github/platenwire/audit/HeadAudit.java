package io.github.platenwire.audit;

import io.github.platenwire.record.RawHeader;
import java.time.LocalDateTime;
import java.util.Optional;

/** Audits what a raw file's head alone tells, whether or not its rows can be read. Stateless. */
final class HeadAudit {
  private static final String RECORDS = "records/";

  private HeadAudit() {}

  /**
   * Looks at the name and the cast time.
   *
   * @param file the raw file, relative to the lab folder
   * @param stem its name without its ending
   */
  static void run(RawHeader header, String file, String stem, Findings findings) {
    name(header, file, stem, findings);
    cast(header, file, findings);
  }

  /** A file outside the lab's records may lie in any folder, but has its name all the same. */
  private static void name(RawHeader header, String file, String stem, Findings findings) {
    String test = header.test();
    String month = test.length() < 6 ? "" : test.substring(0, 4) + "-" + test.substring(4, 6);
    String expected = RECORDS + month + "/" + test + ".raw.csv";
    boolean right = file.startsWith(RECORDS) ? file.equals(expected) : stem.equals(test);
    if (!right) {
      findings.add(RawCheck.NAME_DIFFERS, Location.of(file), test, expected, file);
    }
  }

  /** Looked at here because no method computes an age below zero. */
  private static void cast(RawHeader header, String file, Findings findings) {
    LocalDateTime start = LocalDateTime.ofInstant(header.start(), header.zone());
    Optional<LocalDateTime> cast = header.specimen().cast();
    if (cast.isPresent() && cast.get().isAfter(start)) {
      findings.add(
          TestCheck.BEFORE_CAST,
          Location.of(file),
          header.test(),
          "a test after the cast, " + cast.get(),
          "a start at " + start);
    }
  }
}
