package io.github.platenwire.audit;

import java.io.IOException;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Keeps the traces that were used last, up to a number of readings in all, so that an archive of
 * like traces is not read over and over. Not thread-safe.
 */
final class TraceCache {
  /** Some 70 MB. */
  private static final long MOST_READINGS = 3_000_000;

  private final TraceTwins.Source source;
  private final Map<String, LoadTrace> kept =
      new LinkedHashMap<>(16, 0.75f, /* accessOrder= */ true);
  private long readings;

  TraceCache(TraceTwins.Source source) {
    this.source = source;
  }

  /** The trace of a file, from memory or read again. */
  LoadTrace read(String file) throws IOException {
    LoadTrace known = kept.get(file);
    if (known != null) {
      return known;
    }
    LoadTrace trace = source.read(file);
    kept.put(file, trace);
    readings += trace.length();
    Iterator<LoadTrace> oldest = kept.values().iterator();
    while (readings > MOST_READINGS && kept.size() > 1) {
      readings -= oldest.next().length();
      oldest.remove();
    }
    return trace;
  }
}
