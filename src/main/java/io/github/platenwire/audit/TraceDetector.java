package io.github.platenwire.audit;

import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawRow;
import java.util.function.Consumer;

/**
 * Looks at the readings of each record as they are read, and at the records beside each other when
 * all have been read. {@link #begin} is called from several threads at once, for different records;
 * each {@link Watch} is confined to one thread; {@link #across} is called once, at the end.
 */
interface TraceDetector {
  /**
   * Begins with a record.
   *
   * @param file the raw file, relative to the lab folder, for the findings
   * @param header its head
   */
  Watch begin(String file, RawHeader header);

  /** Reports what only several records together show. */
  void across(Consumer<Finding> findings);

  /** Follows one record. */
  interface Watch {
    /** Takes the next row; rows come in file order, events and marked readings among them. */
    void row(RawRow row);

    /** Reports what the record shows; not called where the file is damaged. */
    void end(Consumer<Finding> findings);
  }
}
