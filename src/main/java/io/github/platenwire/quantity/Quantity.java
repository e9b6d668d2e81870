package io.github.platenwire.quantity;

/** What is measured; each quantity has one base unit in which all computation is done. */
public enum Quantity {
  /** Base unit newton. */
  FORCE("force"),
  /** Base unit millimetre: dimensions, crack width, displacement. */
  LENGTH("length"),
  /** Base unit megapascal. */
  STRESS("stress"),
  /** Base unit megapascal a second. */
  STRESS_RATE("stress rate"),
  /** Base unit second. */
  TIME("time"),
  /** Base unit kilogram. */
  MASS("mass"),
  /** Base unit kilogram a cubic metre. */
  DENSITY("density"),
  /** Base unit square millimetre. */
  AREA("area"),
  /** Base unit degree. */
  ANGLE("angle"),
  /** Base unit newton a millimetre. */
  STIFFNESS("stiffness"),
  /** Base unit joule. */
  ENERGY("energy"),
  /** Base unit millimetre a second: how fast a front advances. */
  SPEED("speed"),
  /** Base unit millimetre a root of a second: advance or absorption against the root of time. */
  ROOT_TIME_RATE("rate on the root of time"),
  /** Base unit one: change of a length over that length. */
  STRAIN("strain"),
  /** A plain ratio. */
  RATIO("ratio");

  private final String word;

  Quantity(String word) {
    this.word = word;
  }

  /** The word used in rig files and messages. */
  public String word() {
    return word;
  }
}
