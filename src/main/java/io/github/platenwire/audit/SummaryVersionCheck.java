package io.github.platenwire.audit;

/** What the versions of a summary are held against. */
enum SummaryVersionCheck implements Check {
  SUMMARY_UNREADABLE(
      Severity.FAULT,
      "A summary is no summary, or cannot be read.",
      "Put back a copy from a backup; platenwire reduce tells what it should say."),
  SUMMARY_DIFFERS(
      Severity.FAULT,
      "A summary says something that does not follow from its raw file.",
      "Run platenwire reduce on the record: it lists every difference. What follows "
          + "from the raw file holds."),
  SUMMARY_CHANGED(
      Severity.FAULT,
      "A summary is not the file that was registered when the test was closed.",
      "Put back a copy from a backup; find out who changed it."),
  SUMMARY_MISSING(
      Severity.FAULT,
      "The register knows a version of a summary that is not there.",
      "Put back a copy from a backup. The raw file gives every figure, but not what "
          + "people saw."),
  SUMMARY_UNREGISTERED(
      Severity.FAULT,
      "There is a version of a summary that the register does not know.",
      "Ask who made it. Corrections are made with platenwire reduce --correct, "
          + "which registers them."),
  SUMMARY_ALONE(
      Severity.FAULT,
      "There is a summary without a raw file.",
      "Put back the raw file from a backup, or find out where the summary comes " + "from."),
  VERSIONS_OUT_OF_ORDER(
      Severity.FAULT,
      "The versions of a summary do not follow each other: one is missing, or was "
          + "exchanged after it was replaced.",
      "Put back a copy of the version from a backup."),
  ENCLOSURE_MISSING(
      Severity.FAULT,
      "A file that a summary encloses is not there.",
      "Put back a copy from a backup, under the name that the summary gives it."),
  ENCLOSURE_CHANGED(
      Severity.FAULT,
      "A file that a summary encloses is not what it was when it was enclosed.",
      "Put back a copy from a backup; find out who changed it."),
  ENCLOSURE_ELSEWHERE(
      Severity.FAULT,
      "A summary encloses a file that is not kept beside its record.",
      "The file was not opened. Put back a copy of the summary from a backup; no enclosure is kept "
          + "elsewhere."),
  ENCLOSURE_UNNAMED(
      Severity.DOUBT,
      "A file looks like an enclosure, but no summary of its record names it.",
      "If the program was killed while it was enclosed, enclose it again with "
          + "platenwire observe; else ask who put it there."),
  CORRECTED(
      Severity.NOTE,
      "A measurement of the specimen was corrected after the test was closed.",
      "Nothing, if who and why are in order; the first version stays beside it.");

  private final Severity severity;
  private final String meaning;
  private final String advice;

  SummaryVersionCheck(Severity severity, String meaning, String advice) {
    this.severity = severity;
    this.meaning = meaning;
    this.advice = advice;
  }

  @Override
  public Severity severity() {
    return severity;
  }

  @Override
  public String meaning() {
    return meaning;
  }

  @Override
  public String advice() {
    return advice;
  }
}
