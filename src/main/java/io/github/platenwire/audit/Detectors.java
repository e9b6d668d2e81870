package io.github.platenwire.audit;

import java.nio.file.Path;
import java.util.List;

/** The detectors that look at readings. Stateless. */
final class Detectors {
  private Detectors() {}

  /** Fresh ones, for one audit of the lab folder at a place. */
  static List<TraceDetector> all(Path lab) {
    return List.of(new ReadingsDetector(lab), new EntryDetector());
  }
}
