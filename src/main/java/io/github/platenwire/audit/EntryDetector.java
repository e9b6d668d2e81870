package io.github.platenwire.audit;

import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawRow;
import java.util.Optional;
import java.util.function.Consumer;

/** Looks at the entries of typed logs. Safe for several threads, one a record. */
final class EntryDetector implements TraceDetector {
  @Override
  public Watch begin(String file, RawHeader header) {
    Optional<RawHeader.HeaderChannel> typed =
        header.channels().stream().filter(RawHeader.HeaderChannel::isTyped).findFirst();
    return typed.isPresent() ? new EntryWatch(file, header, typed.get()) : Nothing.INSTANCE;
  }

  @Override
  public void across(Consumer<Finding> findings) {
    // entries of two records have nothing to do with each other
  }

  /** For records that nobody typed. */
  private enum Nothing implements Watch {
    INSTANCE;

    @Override
    public void row(RawRow row) {
      // no entry
    }

    @Override
    public void end(Consumer<Finding> findings) {
      // nothing was looked at
    }
  }
}
