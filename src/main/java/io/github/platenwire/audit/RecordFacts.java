package io.github.platenwire.audit;

import io.github.platenwire.record.CloseReason;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the records are compared by, once each was read: small, so that an archive of any size fits
 * in memory. Immutable.
 *
 * @param stem the raw file's name without its ending
 * @param file the raw file, relative to the lab folder
 * @param head from its head; empty if that cannot be read
 * @param closed its last line; empty if there is none, or it cannot be read so far
 * @param sha256 of the raw file; empty if it cannot be read
 * @param rows its rows
 * @param bytes length of raw file and summaries
 * @param versions its summaries, the first first
 * @param findings what it shows by itself
 */
record RecordFacts(
    String stem,
    String file,
    Optional<Head> head,
    Optional<Closed> closed,
    Optional<String> sha256,
    long rows,
    long bytes,
    List<Version> versions,
    List<Finding> findings) {
  RecordFacts {
    versions = List.copyOf(versions);
    findings = List.copyOf(findings);
  }

  /** The id of the test: the head's, or the name's where there is no head. */
  String test() {
    return head.map(Head::test).orElse(stem);
  }

  Location location() {
    return Location.of(file);
  }

  /**
   * From a head.
   *
   * @param zeros the zero that was taken off each channel
   * @param torn SHA-256 of each torn end that was set aside, as the record tells
   */
  record Head(
      String test,
      Instant start,
      String rig,
      String specimen,
      String series,
      Map<String, Zero> zeros,
      List<String> torn) {
    Head {
      zeros = Map.copyOf(zeros);
      torn = List.copyOf(torn);
    }
  }

  /**
   * A zero that was taken off.
   *
   * @param value in {@code unit}
   * @param tolerance greatest that may be taken off, in {@code unit}
   */
  record Zero(double value, double tolerance, String unit) {}

  /** A last line. */
  record Closed(Instant ended, CloseReason reason) {}

  /**
   * One version of a summary.
   *
   * @param file relative to the lab folder
   * @param sha256 of the file; empty if it cannot be read
   * @param witnessBefore as it tells; empty if it tells none, or is no summary
   * @param readable whether it is a summary
   * @param enclosures names of the files that it encloses
   */
  record Version(
      String file,
      Optional<String> sha256,
      Optional<String> witnessBefore,
      boolean readable,
      List<String> enclosures) {
    Version {
      enclosures = List.copyOf(enclosures);
    }
  }
}
