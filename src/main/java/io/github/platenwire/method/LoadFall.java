package io.github.platenwire.method;

/**
 * The load fell while the crack ran on, as when the bar slips. Immutable.
 *
 * @param micros when it was seen
 * @param fromNewtons the greatest load before
 * @param toNewtons the load when it was seen
 * @param widthMillimetres the width then
 */
record LoadFall(long micros, double fromNewtons, double toNewtons, double widthMillimetres) {
  /** So many are kept for the summary; every one is an event in the record. */
  static final int MOST = 64;
}
