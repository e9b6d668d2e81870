package io.github.platenwire.audit;

/** What a raw file and its name are held against. */
enum RawCheck implements Check {
  UNREADABLE(
      Severity.FAULT,
      "A file could not be read.",
      "Look at the disk and at the permissions, then put back a copy from a backup."),
  HEAD_DAMAGED(
      Severity.FAULT,
      "The head of a raw file is not as the format says, so nothing below it can be " + "decoded.",
      "Put back a copy from a backup. Nothing that rests on this file can be "
          + "defended until then."),
  ROW_DAMAGED(
      Severity.FAULT,
      "A line of a raw file is no row, no check line and no last line.",
      "Put back a copy from a backup; find out who or what changed the file."),
  ROW_MISSING(
      Severity.FAULT,
      "Rows were taken out of a raw file, put in, or exchanged: their numbers have " + "a hole.",
      "Put back a copy from a backup; find out who changed the file."),
  SEAL_BROKEN(
      Severity.FAULT,
      "A check line does not agree with the bytes before it: something above it was " + "changed.",
      "Put back a copy from a backup. What the check line before it covers is still " + "good."),
  AFTER_THE_END(
      Severity.FAULT,
      "Something stands after the line that closes a record.",
      "Put back a copy from a backup; nobody may write to a closed record."),
  ROW_COUNT(
      Severity.FAULT,
      "The last line counts other rows than there are.",
      "Put back a copy from a backup; the last line was changed."),
  TIME_BACKWARD(
      Severity.FAULT,
      "On one channel a reading is older than the one before it, which no recorder " + "writes.",
      "Treat the readings as made up until somebody can say how the file came " + "about."),
  VALUE_DIFFERS(
      Severity.FAULT,
      "The value beside a reading does not follow from its bytes as received.",
      "Run platenwire reduce on the record to see each row; then compare with a "
          + "copy from a backup."),
  NAME_DIFFERS(
      Severity.FAULT,
      "The name of a raw file, or its folder, is not that of the test in its head.",
      "Find out who renamed or exchanged the file, and give it back the name that "
          + "its head tells."),
  DUPLICATE_RECORD(
      Severity.FAULT,
      "Two raw files tell of one test.",
      "Keep the one that the register knows, and take the other out of records/."),
  NOT_RECOVERED(
      Severity.DOUBT,
      "A record was interrupted and never closed in order.",
      "If the test is running now, audit again afterwards; else run platenwire " + "recover."),
  INTERRUPTED(
      Severity.NOTE,
      "A test ended because the program, the link, the disk or the power failed.",
      "Read what happened in the record; a strength of such a test needs a reason "
          + "to be used."),
  TORN_FILE(
      Severity.NOTE,
      "The torn end of an interrupted record was set aside in a file of its own.",
      "Keep it beside its record; it is the only copy of what was being written."),
  TORN_FILE_DIFFERS(
      Severity.DOUBT,
      "A torn end that was set aside is not what its record says, or its record "
          + "says nothing of it.",
      "Put back a copy from a backup; no reading of a closed record rests on it."),
  FOREIGN_FILE(
      Severity.NOTE,
      "A file in records/ belongs to no record.",
      "Move it elsewhere: records/ is for records only.");

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
