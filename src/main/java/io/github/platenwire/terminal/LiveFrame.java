package io.github.platenwire.terminal;

import io.github.platenwire.method.LiveView;
import java.util.Optional;

/**
 * All that changes on the screen while a test runs. Immutable.
 *
 * @param view the method's figures
 * @param lastEvent the latest event
 * @param readings readings in the raw file so far
 * @param markedReadings those of them whose quality is not {@code ok}
 */
public record LiveFrame(
    LiveView view, Optional<LiveEvent> lastEvent, long readings, long markedReadings) {}
