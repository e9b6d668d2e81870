package io.github.platenwire.method;

import io.github.platenwire.reading.Quality;
import java.util.List;
import java.util.Optional;

/**
 * One test as its method follows it: fed with every reading after it was written, asked what to
 * show, and for its result at the end. The same readings give the same doubles. Not thread-safe;
 * confined to the recorder thread.
 */
public interface MethodRun {
  /**
   * The next reading, in the order of the raw file.
   *
   * @param seq its number in the raw file
   * @param elapsedMicros its time since the test's origin
   * @param channel index of its channel in {@link TestSetting#channels}
   * @param value in the channel's unit; NaN where nothing could be decoded
   * @param quality only {@link Quality#OK} is used for a result
   */
  void reading(long seq, long elapsedMicros, int channel, double value, Quality quality);

  /**
   * The next reading with the length of its frame, by which frames that came in one read are set
   * back to their moments. What the recorder calls.
   *
   * @param seq its number in the raw file
   * @param elapsedMicros its time since the test's origin
   * @param channel index of its channel in {@link TestSetting#channels}
   * @param frameBytes length of its frame as received, without terminator
   * @param value in the channel's unit; NaN where nothing could be decoded
   * @param quality only {@link Quality#OK} is used for a result
   */
  default void reading(
      long seq, long elapsedMicros, int channel, int frameBytes, double value, Quality quality) {
    reading(seq, elapsedMicros, channel, value, quality);
  }

  /**
   * The next line that a person typed, in the order of the raw file. Most methods take it as any
   * other reading.
   *
   * @param seq its number in the raw file
   * @param elapsedMicros when it was typed, since the test's origin
   * @param channel index of its channel in {@link TestSetting#channels}
   * @param line as it stands in the raw file
   * @param value in the channel's unit; NaN where nothing could be decoded
   * @param quality only {@link Quality#OK} is used for a result
   */
  default void entry(
      long seq, long elapsedMicros, int channel, String line, double value, Quality quality) {
    reading(seq, elapsedMicros, channel, value, quality);
  }

  /**
   * Time has passed, whether or not there were readings: lets a tail end on a silent line.
   *
   * @param elapsedMicros time since the test's origin
   */
  void time(long elapsedMicros);

  /**
   * What happened since last asked, such as {@code zero load=12.4} or {@code break}, to be written
   * as event rows in this order. Empty most of the time, and then the same empty list.
   */
  List<Happening> takeHappenings();

  /** Whether the test has ended by itself, and how. */
  Optional<Ending> ending();

  /** What to show now. A new immutable value at each call. */
  LiveView view();

  /**
   * Shows from now on what it works with; to be called before the first reading. The result is the
   * same with and without.
   */
  default void show(Trail trail) {}

  /** The result from what was read so far. May be asked once, at the end. */
  MethodResult finish();

  /**
   * Something worth an event row.
   *
   * @param text the row's text: a word, then {@code name=value} parts; printable ASCII
   * @param force whether the file must be forced to the disk now (start, peak, break)
   */
  record Happening(String text, boolean force) {}

  /** How a test ends by itself. */
  enum Ending {
    /** The specimen broke and the tail was recorded. */
    BREAK,
    /** A limit of range or width was reached. */
    RANGE,
    /** All that the method asks for was done, with nothing broken. */
    COMPLETE
  }
}
