package io.github.platenwire.live;

/** What made a gauge unfit. */
public enum GaugeFault {
  /** It gave no quiet zero before the load came on. */
  NO_ZERO("no zero"),
  /** It said nothing for too long. */
  SILENT("silent"),
  /** It shows the same value while it should move. */
  STUCK("stuck"),
  /** It stands at the end of its range. */
  SATURATED("at the end of its range"),
  /** It jumped further than a crack can open in that time, alone, and stayed there. */
  JUMPED("jumped"),
  /** It jumped to less than its zero and stayed there: it no longer sits on the specimen. */
  FELL_OFF("fell off");

  private final String words;

  GaugeFault(String words) {
    this.words = words;
  }

  /** For a person. */
  public String words() {
    return words;
  }
}
