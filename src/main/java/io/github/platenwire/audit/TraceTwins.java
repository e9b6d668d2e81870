package io.github.platenwire.audit;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Finds traces that were used for more than one specimen, in a whole archive: the same readings,
 * also after shifts in time, other scales of load and time, added noise, cuts before and after the
 * loading, and with more or fewer readings. Not thread-safe.
 *
 * <p>It cannot tell of traces with fewer than 60 readings between 20 % and 90 % of the peak, nor of
 * scaled copies of traces whose indicator is so coarse that it shows no noise, nor of copies of a
 * load that rose perfectly evenly in readings that came perfectly evenly: any two tests of one rate
 * look like that.
 */
final class TraceTwins {
  private final List<String> files = new ArrayList<>();
  private final List<TraceShape> shapes = new ArrayList<>();

  /** Reads the trace of a file again: only the few whose outlines are alike are asked for. */
  @FunctionalInterface
  interface Source {
    /**
     * The trace.
     *
     * @param file as it was added
     * @throws IOException if it cannot be read
     */
    LoadTrace read(String file) throws IOException;
  }

  /**
   * Two records with the same readings.
   *
   * @param earlier the one that was added first
   * @param later the other
   * @param evidence what shows it
   */
  record Twin(String earlier, String later, TwinTest.Evidence evidence) {}

  /** Remembers the outline of a record's trace. */
  void add(String file, TraceShape shape) {
    files.add(file);
    shapes.add(shape);
  }

  /** The same with the trace itself; one that has no outline is passed over. */
  void add(String file, LoadTrace trace) {
    TraceShape.of(trace).ifPresent(shape -> add(file, shape));
  }

  /**
   * All twins.
   *
   * @throws IOException if a trace cannot be read again
   */
  List<Twin> find(Source source) throws IOException {
    List<Twin> twins = new ArrayList<>();
    TraceCache cache = new TraceCache(source);
    for (ShapeGrid.Pair pair : new ShapeGrid(shapes).pairs()) {
      LoadTrace first = cache.read(files.get(pair.first()));
      LoadTrace second = cache.read(files.get(pair.second()));
      Optional<TwinTest.Evidence> evidence = TwinTest.compare(first, second);
      if (evidence.isPresent()) {
        twins.add(new Twin(files.get(pair.first()), files.get(pair.second()), evidence.get()));
      }
    }
    return twins;
  }
}
