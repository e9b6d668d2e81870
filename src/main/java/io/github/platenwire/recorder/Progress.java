package io.github.platenwire.recorder;

import io.github.platenwire.method.LiveView;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;

/**
 * How a recording stands; everything in it is already in the raw file. Immutable.
 *
 * @param file the raw file
 * @param start when the test's clock stood at zero
 * @param view what the method shows
 * @param readings frames recorded so far, whatever their quality
 * @param marked those among them that are not good, and silences
 * @param lost readings known to have been lost
 * @param linksDown channels whose link is gone now
 * @param lastEvent text of the last event row
 * @param events how many event rows there are
 */
public record Progress(
    Path file,
    Instant start,
    LiveView view,
    long readings,
    long marked,
    long lost,
    List<String> linksDown,
    String lastEvent,
    long events) {
  /** Makes the list immutable. */
  public Progress {
    linksDown = List.copyOf(linksDown);
  }
}
