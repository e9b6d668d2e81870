package io.github.platenwire.audit;

/**
 * What a test is held against: its method, its links, its calibrations, the other tests of its rig.
 */
enum TestCheck implements Check {
  RATE_OUTSIDE(
      Severity.DOUBT,
      "The loading rate was not within the band of the method.",
      "Decide whether the result may stand; the report must name the departure."),
  AGE_OUTSIDE(
      Severity.DOUBT,
      "The specimen was not tested at its planned age, within the tolerance of the " + "method.",
      "Decide whether the result may stand; the report must name the departure."),
  ZERO_OUTSIDE(
      Severity.DOUBT,
      "The zero of a channel was not quiet, not taken, or beyond its tolerance.",
      "Look at the record before the loading began; a zero that is off shifts every " + "load."),
  RANGE_EXCEEDED(
      Severity.DOUBT,
      "A channel went beyond its range.",
      "The greatest load may be higher than what was read; test the next specimen "
          + "on a greater frame."),
  METHOD_NOT_MET(
      Severity.DOUBT,
      "Something else that the method asks for was not met.",
      "Decide whether the result may stand; the report must name the departure."),
  OVERRIDDEN(
      Severity.NOTE,
      "A test was done although something spoke against it; the reason was given.",
      "Read the reason, and decide whether it holds."),
  ZERO_DRIFT(
      Severity.NOTE,
      "The zero of a channel moved by more than half its tolerance since the test " + "before.",
      "Look at platens, cell and amplifier; a slow drift calls for a calibration."),
  CLOCK_STEP(
      Severity.DOUBT,
      "Somebody set the time of day while the test ran.",
      "Readings are not touched by it, but date and age are: compare with the lab's " + "diary."),
  LINK_LOST(
      Severity.DOUBT,
      "The link to a device was lost while the test ran.",
      "Look whether the gap touches the figures; the record says when it came back."),
  SILENCE(
      Severity.DOUBT,
      "A channel was silent for longer than it may be.",
      "Look whether the gap touches the figures."),
  GAP_UNMARKED(
      Severity.DOUBT,
      "A channel was silent for longer than it may be, but no row says so, as the "
          + "recorder would have written.",
      "Find out how the record came about; rows may have been taken out before it "
          + "was sealed."),
  READINGS_LOST(
      Severity.DOUBT,
      "The recorder could not keep up, and readings are missing.",
      "Look whether the gap touches the figures; record on a machine that does less " + "besides."),
  MARKED_READINGS(
      Severity.NOTE,
      "Readings were marked and left out of every figure.",
      "Nothing if they are few; many call for a look at cable, plugs and serial " + "settings."),
  CALIBRATION_MISSING(
      Severity.DOUBT,
      "No calibration is named for a channel.",
      "Name the calibration in the rig file; until then the figures rest on the "
          + "limits of the method file."),
  CALIBRATION_OUT_OF_DATE(
      Severity.DOUBT,
      "The calibration of a channel was not in date on the day of the test.",
      "Have the channel calibrated; if it is found as before, say so in the report."),
  CALIBRATION_RANGE(
      Severity.DOUBT,
      "A channel was used beyond the range that its calibration covers.",
      "The uncertainty does not hold there: calibrate over the range that is used."),
  CALIBRATION_DIFFERS(
      Severity.DOUBT,
      "The calibration in the head of a record is not what the lab's file of that "
          + "certificate says.",
      "Compare both with the certificate on paper. The record keeps what was used."),
  CALIBRATION_NOT_KEPT(
      Severity.NOTE,
      "The lab has no file any more of the certificate that a record was made with.",
      "Put the file back under calibrations/; the record itself keeps its text."),
  SPECIMEN_CHANGED(
      Severity.NOTE,
      "The row of a specimen in specimens.csv says something else than when it was " + "tested.",
      "If a measurement was wrong, correct it with platenwire reduce --correct; "
          + "else restore the row."),
  TABLE_UNREADABLE(
      Severity.DOUBT,
      "The table of specimens or a calibration file cannot be read, so that records "
          + "were not compared with it.",
      "Mend the file as the message says, and audit again."),
  BEFORE_CAST(
      Severity.FAULT,
      "A specimen was tested before it was cast.",
      "Find out which of the two times is wrong."),
  ENDED_BEFORE_START(
      Severity.FAULT,
      "A record ended before it started.",
      "Compare with the lab's diary: the clock was set back, or the record was made " + "up."),
  CLOSED_BEFORE_START(
      Severity.DOUBT,
      "A test was entered into the register before it started.",
      "Compare with the lab's diary: the clock was set back, or the record was made " + "up."),
  OVERLAP(
      Severity.FAULT,
      "Two tests ran on one rig at the same time.",
      "Compare with the lab's diary; one of the two has a wrong time or was not "
          + "made on this rig."),
  START_BACKWARD(
      Severity.DOUBT,
      "A test started before the test that was registered before it on the same " + "rig.",
      "Ask who set the clock of the recording machine, and when."),
  TESTED_TWICE(
      Severity.DOUBT,
      "One specimen was broken twice.",
      "Find out which specimen it was; a specimen breaks once.");

  private final Severity severity;
  private final String meaning;
  private final String advice;

  TestCheck(Severity severity, String meaning, String advice) {
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
