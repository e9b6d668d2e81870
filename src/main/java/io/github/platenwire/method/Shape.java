package io.github.platenwire.method;

/** How specimens of one shape are measured, and what a load does to them. Immutable. */
interface Shape {
  /** Adds what speaks against a specimen's sizes as measured. */
  void examine(Specimen specimen, Objections objections);

  /** What a load does to a specimen whose sizes are not refused. */
  Section section(Specimen specimen);
}
