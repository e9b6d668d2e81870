package io.github.platenwire.method;

import java.util.List;

/**
 * What was odd about the readings of a beam's test. Immutable.
 *
 * @param overReadings how many were beyond their channel's range
 * @param suspects rows of lone loads that were set aside, the first of them
 * @param suspectCount how many there were
 * @param falls of the load while the crack ran on
 */
record CrackFaults(
    long overReadings, List<Long> suspects, long suspectCount, List<LoadFall> falls) {
  CrackFaults {
    suspects = List.copyOf(suspects);
    falls = List.copyOf(falls);
  }
}
