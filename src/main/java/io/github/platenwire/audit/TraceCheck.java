package io.github.platenwire.audit;

/** What the readings themselves are held against. */
enum TraceCheck implements Check {
  /** Two records have the same readings. */
  REUSED_TRACE(
      Severity.FAULT,
      "The readings of one record stand, changed or not, in another: one of the two specimens was"
          + " not tested as its record says.",
      "Lay both charts over each other, ask who recorded them, and test a companion of the later"
          + " specimen."),
  /** Readings look made up. */
  TYPED_READINGS(
      Severity.FAULT,
      "Readings look typed or computed rather than measured.",
      "Look at the frames as received and at the device: no load frame sends readings like these."
          + " Report no figure from this record until that is explained.");

  private final Severity severity;
  private final String meaning;
  private final String advice;

  TraceCheck(Severity severity, String meaning, String advice) {
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
