package io.github.platenwire.audit;

/** What the registers and the keys are held against. */
enum RegisterLineCheck implements Check {
  REGISTER_LINE_DAMAGED(
      Severity.FAULT,
      "A line of a register has not the form that it must have.",
      "Put back a copy of the register: from the shared register, or from a backup."),
  REGISTER_CHAIN_BROKEN(
      Severity.FAULT,
      "A line of a register is not tied to the line before it: a line was changed, "
          + "taken out, put in or exchanged.",
      "Put back a copy of the register, and find out what was changed by comparing " + "the two."),
  REGISTER_KEY_UNKNOWN(
      Severity.FAULT,
      "A line of a register is signed by a key that is not the rig's.",
      "Compare the fingerprint with the one in your binder; put back keys/ and "
          + "register/ from a backup."),
  REGISTER_SIGNATURE_WRONG(
      Severity.FAULT,
      "The signature of a register line does not go with it.",
      "Put back a copy of the register from a backup."),
  REGISTER_TORN(
      Severity.DOUBT,
      "The last line of a register was never finished, or its end was cut.",
      "A power cut leaves such an end: the next platenwire record or recover sets "
          + "it aside. Otherwise compare with a copy."),
  KEY_UNREADABLE(
      Severity.FAULT,
      "A public key of a rig is missing or is no key.",
      "Put back a copy of the key file from the shared register or a backup."),
  KEY_ENROLLED(
      Severity.DOUBT,
      "A rig was given another key.",
      "Ask who did it and why (a rig that moved to another machine needs it). "
          + "Confirm the fingerprint with --key, and it is not asked again."),
  KEY_NOT_CONFIRMED(
      Severity.FAULT,
      "A register is signed by a key whose fingerprint is not among those given " + "with --key.",
      "If your binder does not have this fingerprint either, everything that the "
          + "key signed is void."),
  WITNESS_UNKNOWN(
      Severity.FAULT,
      "A witness, printed on paper or kept in a summary, is that of no register "
          + "line before it: the register was written anew or cut.",
      "Put back a copy of the register from the shared register or a backup, and "
          + "compare the two."),
  NOT_REGISTERED(
      Severity.FAULT,
      "A record stands in no register: nobody vouches for it.",
      "If it was closed while the register could not be written, platenwire recover "
          + "enters it. Otherwise find out where it comes from."),
  ENTERED_AFTERWARDS(
      Severity.NOTE,
      "A record was entered into the register afterwards, not when the test was closed.",
      "Nothing, if somebody remembers the interruption. The register cannot vouch for the time"
          + " before."),
  RECORD_MISSING(
      Severity.FAULT,
      "The register knows a test whose raw file is not there.",
      "Put back the record from a backup; find out who took it away."),
  RECORD_CHANGED(
      Severity.FAULT,
      "A raw file is not the one that was registered when the test was closed.",
      "Put back a copy from a backup; find out who changed it."),
  WRONG_REGISTER(
      Severity.FAULT,
      "A record stands in the register of another rig than it was made on.",
      "Find out which of the two is right; one of them was made up."),
  REGISTERED_TWICE(
      Severity.FAULT,
      "A test was closed twice in the registers.",
      "Compare the two lines; a test is closed once."),
  REGISTER_TIME_BACKWARD(
      Severity.DOUBT,
      "A register line is older than the line before it.",
      "Ask who set the clock of the recording machine back, and when."),
  SHARED_UNREACHABLE(
      Severity.NOTE,
      "The shared register could not be read, so that nothing was compared with it.",
      "Connect the shared folder and audit again."),
  SHARED_BEHIND(
      Severity.NOTE,
      "The shared register lacks lines that this lab has.",
      "Nothing: they are joined at the next close. If this lasts, look at the " + "shared folder."),
  SHARED_AHEAD(
      Severity.FAULT,
      "The shared register has lines that the lab's own register lacks: the end of "
          + "the register was cut off.",
      "Put back the register from the shared copy, and the records with it from a " + "backup."),
  SHARED_DIFFERS(
      Severity.FAULT,
      "The shared register or a key in it is not the same as the lab's own.",
      "One of the two was changed: compare them line by line with a backup.");

  private final Severity severity;
  private final String meaning;
  private final String advice;

  RegisterLineCheck(Severity severity, String meaning, String advice) {
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
