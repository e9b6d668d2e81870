package io.github.platenwire.quantity;

/** Which system of units is shown first; the other always stands beside it. */
public enum UnitSystem {
  /** Newtons, millimetres, megapascals. */
  SI,
  /** Pounds-force, inches, pounds-force a square inch. */
  INCH_POUND
}
