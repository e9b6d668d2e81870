package io.github.platenwire.audit;

/** What a raw file is held against. */
enum RawCheck implements Check {
  /** A file cannot be read at all. */
  UNREADABLE(
      Severity.FAULT,
      "A file could not be read.",
      "Look at the disk and the file's permissions, and put back a copy from a backup.");

  private final Severity severity;
  private final String meaning;
  private final String advice;

  RawCheck(Severity severity, String meaning, String advice) {
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
