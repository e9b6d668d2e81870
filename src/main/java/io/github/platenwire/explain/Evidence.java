package io.github.platenwire.explain;

import io.github.platenwire.live.FollowedRow;
import io.github.platenwire.method.MethodResult;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.EscapedBytes;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.Observations;
import io.github.platenwire.record.Provenance.Change;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawRow;
import io.github.platenwire.recorder.Reduction;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * One record computed again, with all that its stories are told from. Immutable.
 *
 * @param reduction the record computed again
 * @param changes measurements that people put right afterwards
 * @param seen what people saw
 * @param rows of the raw file, in order
 * @param trail what the method showed of its way
 * @param method the method's file in the head
 * @param first which system of units is named first
 */
record Evidence(
    Reduction reduction,
    List<Change> changes,
    Observations seen,
    List<RawRow> rows,
    Footprints trail,
    TomlSection method,
    UnitSystem first) {
  private static final String LABORATORY = "laboratory method";

  RawHeader header() {
    return reduction.test().header();
  }

  Specimen specimen() {
    return header().specimen();
  }

  MethodResult result() {
    return reduction.test().result();
  }

  Optional<Figure> figure(String name) {
    return result().figure(name);
  }

  /** A figure in the base unit of its quantity. */
  Optional<Double> base(String name) {
    return figure(name).map(figure -> figure.unit().toBase(figure.exact()));
  }

  /** What the record was computed by. */
  String by() {
    String standard = reduction.method().standard();
    return standard.equals(LABORATORY)
        ? "the laboratory method '" + reduction.method().name() + "'"
        : standard;
  }

  /** The kind of the method's file, such as {@code split-beam}. */
  String kind() {
    return text("kind");
  }

  private String text(String key) {
    try {
      return method.string(key);
    } catch (TomlException e) {
      throw new IllegalStateException("the method was read before", e);
    }
  }

  /** A number of the method's file. */
  double number(String table, String key) {
    try {
      return method.section(table).number(key);
    } catch (TomlException e) {
      throw new IllegalStateException("the method was read before", e);
    }
  }

  /** A row by its number; rows are numbered from 1 without holes. */
  RawRow row(long seq) {
    if (seq < 1 || seq > rows.size() || rows.get((int) seq - 1).seq() != seq) {
      throw new IllegalStateException("the figure rests on a row that is not there, seq=" + seq);
    }
    return rows.get((int) seq - 1);
  }

  HeaderChannel channel(RawRow row) {
    return channel(row.channel()).orElseThrow();
  }

  Optional<HeaderChannel> channel(String name) {
    return header().channels().stream()
        .filter(channel -> channel.facts().name().equals(name))
        .findFirst();
  }

  /** A row's value in the base unit of its quantity. */
  double base(RawRow row) {
    return channel(row).facts().unit().toBase(row.value());
  }

  /** Good rows of a channel from one number to another. */
  List<RawRow> good(String channel, long from, long to) {
    List<RawRow> good = new ArrayList<>();
    for (long seq = from; seq <= to; seq++) {
      RawRow row = row(seq);
      if (row.channel().equals(channel) && row.quality() == Quality.OK) {
        good.add(row);
      }
    }
    return good;
  }

  /** Rows that the method set aside as impossible. */
  boolean isSetAside(long seq) {
    return result().suspects().contains(seq);
  }

  /** Row, bytes as received and what was read in them. */
  String inShort(long seq) {
    RawRow row = row(seq);
    return "row "
        + seq
        + " (line "
        + row.line()
        + ") on "
        + row.channel()
        + ", "
        + seconds(row)
        + ": received "
        + EscapedBytes.encode(row.received())
        + " -> "
        + value(row);
  }

  /** What was read in a row, calibrated. */
  String value(RawRow row) {
    return Double.isNaN(row.value())
        ? "nothing that could be decoded"
        : FigureWords.pair(row.value(), channel(row).facts().unit(), first);
  }

  /** Whether a row came after the method had stopped to follow: the test was over. */
  boolean isAfterTheEnd(long seq) {
    List<FollowedRow> followed = trail.rows();
    return trail.crack().isPresent()
        && !followed.isEmpty()
        && seq > followed.get(followed.size() - 1).seq();
  }

  static String seconds(RawRow row) {
    return seconds(row.elapsedMicros());
  }

  static String seconds(long micros) {
    return String.format(Locale.ROOT, "%.3f s", micros / 1e6);
  }

  String both(Figure figure) {
    return FigureWords.both(figure.exact(), figure.unit(), figure.inchPoundUnit(), first);
  }

  /** Where the method's standard says so. */
  String clause(FigureWords.Topic topic) {
    return " (" + FigureWords.clause(reduction.method().standard(), topic) + ")";
  }
}
