package io.github.platenwire.explain;

import io.github.platenwire.reading.EscapedBytes;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Tells of one reading: its row, its bytes, decoded, calibrated, and its neighbours. Immutable. */
final class ReadingStory {
  private static final int NEIGHBOURS = 2;

  private final Evidence evidence;
  private final RawRow row;
  private final HeaderChannel channel;

  ReadingStory(Evidence evidence, long seq) {
    this.evidence = evidence;
    row = evidence.row(seq);
    channel = evidence.channel(row);
  }

  /** From the bytes to the calibrated value. */
  void tell(Telling telling) {
    telling.step(
        "The bytes: row "
            + row.seq()
            + " (line "
            + row.line()
            + " of the file), "
            + Evidence.seconds(row)
            + " after the start, on channel "
            + row.channel()
            + " from "
            + channel.port()
            + ", as received:");
    telling.more("  " + EscapedBytes.encode(row.received()));
    new FrameStory(channel, row, telling.first()).tell(telling::step);
  }

  /** Why this one, with the readings of its channel around it. */
  void neighbours(String why, Telling telling) {
    telling.step(why + " Around it stand");
    for (RawRow near : around()) {
      telling.more(
          String.format(
              Locale.ROOT,
              "%s row %-7d %12s  %s%s",
              near.seq() == row.seq() ? ">" : " ",
              near.seq(),
              Evidence.seconds(near),
              evidence.value(near),
              mark(near)));
    }
  }

  private String mark(RawRow near) {
    if (near.quality() != Quality.OK) {
      return "  (" + near.quality().word() + ")";
    }
    if (evidence.isAfterTheEnd(near.seq())) {
      return "  (after the end of the test)";
    }
    return evidence.isSetAside(near.seq()) ? "  (set aside: no specimen can do that)" : "";
  }

  private List<RawRow> around() {
    int at = (int) row.seq() - 1;
    List<RawRow> rows = evidence.rows();
    List<RawRow> near = new ArrayList<>();
    near.add(row);
    for (int i = at - 1; i >= 0 && near.size() <= NEIGHBOURS; i--) {
      if (rows.get(i).channel().equals(row.channel())) {
        near.add(0, rows.get(i));
      }
    }
    int most = near.size() + NEIGHBOURS;
    for (int i = at + 1; i < rows.size() && near.size() < most; i++) {
      if (rows.get(i).channel().equals(row.channel())) {
        near.add(rows.get(i));
      }
    }
    return near;
  }
}
