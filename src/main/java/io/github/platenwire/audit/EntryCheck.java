package io.github.platenwire.audit;

/** What the entries of a typed log are held against. */
enum EntryCheck implements Check {
  /** A later entry puts an earlier one right. */
  ENTRY_CORRECTED(
      Severity.NOTE,
      "An entry of a typed log was put right by a later entry.",
      "Nothing, if the reason is known; both entries stay in the raw file."),
  /** The times of entries do not follow each other. */
  ENTRY_TIME_BACKWARD(
      Severity.DOUBT,
      "An entry of a typed log was read, by what it says, before the entry that stands before it.",
      "Ask who typed it, and compare with notes or pictures; a wrong time shifts the whole course."),
  /** An entry was typed from memory, or from paper. */
  ENTRY_TYPED_LATE(
      Severity.NOTE,
      "An entry of a typed log was typed more than an hour after it was read, by what it says.",
      "Nothing, if it was copied from notes that are kept; the program cannot vouch for its time.");

  private final Severity severity;
  private final String meaning;
  private final String advice;

  EntryCheck(Severity severity, String meaning, String advice) {
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
