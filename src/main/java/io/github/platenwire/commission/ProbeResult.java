package io.github.platenwire.commission;

import io.github.platenwire.port.LineSettings;
import java.util.List;
import java.util.Optional;

/**
 * What came of probing one port. Immutable.
 *
 * @param bytes how many were heard unasked, at all settings together
 * @param fits definitions that explain what was heard, the best first
 * @param readable the settings at which most of it was readable text, where no definition fits
 * @param heard the first bytes at these settings, as readable text
 */
public record ProbeResult(
    long bytes, List<ProbeFit> fits, Optional<LineSettings> readable, String heard) {
  /** Keeps the list from being changed. */
  public ProbeResult {
    fits = List.copyOf(fits);
  }
}
