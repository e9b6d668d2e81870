package io.github.platenwire.cli;

import io.github.platenwire.commission.ProbeResult;
import io.github.platenwire.port.ListedPort;
import java.util.Optional;

/**
 * A port and what came of probing it.
 *
 * @param port the port as the system lists it
 * @param result empty if it was not, or could not be, opened
 * @param failure why it could not be opened and what to do; empty if it could
 */
record ProbedPort(ListedPort port, Optional<ProbeResult> result, String failure) {
  boolean fits() {
    return result.map(found -> !found.fits().isEmpty()).orElse(false);
  }
}
