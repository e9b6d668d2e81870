package io.github.platenwire.recorder;

import static io.github.platenwire.recorder.FigureWords.both;
import static io.github.platenwire.recorder.FigureWords.number;

import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.EscapedBytes;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.Provenance.Change;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Tells where one figure comes from, in numbered steps. Used once; not thread-safe. */
final class FigureStory {
  private static final int NEIGHBOURS = 2;
  private static final String INDENT = "     ";

  private final Reduction reduction;
  private final RawHeader header;
  private final List<Change> changes;
  private final List<RawRow> rows;
  private final UnitSystem first;
  private final Figure figure;
  private final List<String> lines = new ArrayList<>();
  private int step;

  FigureStory(
      Reduction reduction,
      List<Change> changes,
      List<RawRow> rows,
      UnitSystem first,
      Figure figure) {
    this.reduction = reduction;
    this.header = reduction.test().header();
    this.changes = changes;
    this.rows = rows;
    this.first = first;
    this.figure = figure;
  }

  List<String> lines() {
    lines.add(figure.title() + " of " + header.specimen().name() + ": " + printed(figure));
    lines.add(
        "By "
            + reduction.method().standard()
            + ", computed again from "
            + reduction.test().file().getFileName()
            + " alone.");
    lines.add("");
    if (ChordStory.tells(figure)) {
      chord();
    } else {
      single();
    }
    rounding();
    return List.copyOf(lines);
  }

  /** A figure that rests on loading cycles. */
  private void chord() {
    if (other("zero").isPresent()) {
      zero();
    }
    dimensions();
    new ChordStory(reduction.test().result(), first, figure).tell(this::step);
  }

  /** A figure that rests on one reading, or on none. */
  private void single() {
    Quantity quantity = figure.unit().quantity();
    boolean stress = quantity == Quantity.STRESS;
    if (figure.name().equals("zero")) {
      zero();
    } else if (!figure.rows().isEmpty()) {
      reading();
      if (other("zero").isPresent()) {
        zero();
      }
    }
    if (stress || quantity == Quantity.AREA || quantity == Quantity.LENGTH) {
      dimensions();
    }
    if (stress) {
      stress();
    }
  }

  private void step(String text) {
    step++;
    lines.add(step + ".  " + text);
  }

  private void more(String text) {
    lines.add(INDENT + text);
  }

  /** Row, bytes, decoding, calibration, and the choice among the neighbours. */
  private void reading() {
    long seq = figure.rows().get(0);
    int at = indexOf(seq);
    RawRow row = rows.get(at);
    HeaderChannel channel =
        header.channels().stream()
            .filter(c -> c.facts().name().equals(row.channel()))
            .findFirst()
            .orElseThrow();
    step(
        "The bytes: row "
            + seq
            + " (line "
            + row.line()
            + " of the file), "
            + seconds(row)
            + " after the start, on channel "
            + row.channel()
            + " from "
            + channel.port()
            + ", as received:");
    more("  " + EscapedBytes.encode(row.received()));
    new FrameStory(channel, row, first).tell(this::step);
    boolean greatest = figure.name().startsWith("strength") || figure.name().startsWith("peak");
    step(
        greatest
            ? "Chosen: of all readings that can be trusted it is the greatest. Around it stand"
            : "It is the first of the rows that the figure rests on. Around it stand");
    for (RawRow near : around(at)) {
      more(
          String.format(
              Locale.ROOT,
              "%s row %-7d %12s  %s%s",
              near.seq() == seq ? ">" : " ",
              near.seq(),
              seconds(near),
              value(near, channel),
              near.quality() == Quality.OK ? "" : "  (" + near.quality().word() + ")"));
    }
    figure
        .samplingBound()
        .ifPresent(
            bound ->
                more(
                    "Between two readings the figure can have been higher by up to "
                        + roughly(bound)
                        + "."));
  }

  private int indexOf(long seq) {
    for (int i = 0; i < rows.size(); i++) {
      if (rows.get(i).seq() == seq) {
        return i;
      }
    }
    throw new IllegalStateException("the figure rests on a row that is not there, seq=" + seq);
  }

  private List<RawRow> around(int at) {
    String channel = rows.get(at).channel();
    List<RawRow> near = new ArrayList<>();
    near.add(rows.get(at));
    for (int i = at - 1; i >= 0 && near.size() <= NEIGHBOURS; i--) {
      if (rows.get(i).channel().equals(channel)) {
        near.add(0, rows.get(i));
      }
    }
    int most = near.size() + NEIGHBOURS;
    for (int i = at + 1; i < rows.size() && near.size() < most; i++) {
      if (rows.get(i).channel().equals(channel)) {
        near.add(rows.get(i));
      }
    }
    return near;
  }

  private String value(RawRow row, HeaderChannel channel) {
    return Double.isNaN(row.value())
        ? "nothing that could be decoded"
        : FigureWords.pair(row.value(), channel.facts().unit(), first);
  }

  private static String seconds(RawRow row) {
    return String.format(Locale.ROOT, "%.3f s", row.elapsedMicros() / 1e6);
  }

  private void zero() {
    Figure zero = other("zero").orElse(figure);
    List<Long> of = zero.rows();
    step(
        "Zero: before loading, rows "
            + of.get(0)
            + " to "
            + of.get(of.size() - 1)
            + " gave "
            + both(zero.exact(), zero.unit(), zero.inchPoundUnit(), first)
            + "; that is taken off.");
    other("peak-load")
        .filter(load -> !figure.name().equals("zero"))
        .ifPresent(
            load ->
                more(
                    "The greatest reading less the zero is the greatest load: "
                        + both(load.exact(), load.unit(), load.inchPoundUnit(), first)
                        + "."));
  }

  private void dimensions() {
    List<Double> diameters = header.specimen().diametersMillimetres();
    Optional<Figure> area = other("area");
    if (diameters.isEmpty() && area.isEmpty()) {
      return;
    }
    step("Dimensions: " + measured(diameters));
    for (Change change : changes) {
      more(
          "corrected after the test: "
              + change.what()
              + " "
              + change.from().map(FigureWords::number).orElse("(not measured)")
              + " -> "
              + number(change.to()));
    }
    other("diameter")
        .ifPresent(
            mean ->
                more(
                    "mean diameter "
                        + both(mean.exact(), mean.unit(), mean.inchPoundUnit(), first)));
    area.ifPresent(
        figure ->
            more(
                "cross-section "
                    + (diameters.isEmpty() ? "" : "pi/4 x diameter x diameter = ")
                    + both(figure.exact(), figure.unit(), figure.inchPoundUnit(), first)
                    + clause(FigureWords.Topic.AREA)));
  }

  private String measured(List<Double> diameters) {
    List<String> words = new ArrayList<>();
    for (double diameter : diameters) {
      words.add(both(diameter, Unit.MILLIMETRE, Unit.INCH, first));
    }
    String diametersWords = words.isEmpty() ? "" : "diameters " + String.join(" and ", words);
    return header.specimen().lengthMillimetres().isPresent()
        ? diametersWords
            + (words.isEmpty() ? "" : ", ")
            + "length "
            + both(
                header.specimen().lengthMillimetres().getAsDouble(),
                Unit.MILLIMETRE,
                Unit.INCH,
                first)
        : diametersWords;
  }

  private void stress() {
    Optional<Figure> load = other("peak-load");
    Optional<Figure> area = other("area");
    Optional<Figure> factor = other("correction");
    if (load.isEmpty() || area.isEmpty()) {
      step("Stress: computed by the method from the above: " + exact());
      return;
    }
    double plain = load.get().unit().toBase(load.get().exact()) / area.get().exact();
    boolean corrected = factor.isPresent() && !figure.name().endsWith("uncorrected");
    double told = corrected ? plain * factor.get().exact() : plain;
    if (Math.abs(told - figure.exact()) > 1e-9 * Math.abs(figure.exact())) {
      // splitting and bending have formulas of their own, which are not told here step by step
      step("Stress: computed by the method's own formula from the above: " + exact());
      return;
    }
    step(
        "Stress: load over cross-section = "
            + number(load.get().unit().toBase(load.get().exact()))
            + " N / "
            + number(area.get().exact())
            + " mm² = "
            + both(plain, Unit.MEGAPASCAL, Unit.PSI, first)
            + clause(FigureWords.Topic.STRESS));
    String ratio = other("length-ratio").map(f -> f.rounded()).orElse("unknown");
    if (corrected) {
      step(
          "Correction for length over diameter = "
              + ratio
              + ": x "
              + number(factor.get().exact())
              + " = "
              + exact()
              + clause(FigureWords.Topic.CORRECTION));
    } else if (factor.isEmpty() && other("length-ratio").isPresent()) {
      step(
          "Correction: none, since length over diameter is "
              + ratio
              + clause(FigureWords.Topic.CORRECTION));
    }
  }

  private void rounding() {
    step(
        "Rounding: the exact value "
            + exact()
            + " is printed as "
            + printed(figure)
            + "; each is rounded from the exact value, a half to the even digit"
            + clause(FigureWords.Topic.ROUNDING));
    FigureWords.roundingLines(reduction.method().text(), figure.name())
        .forEach(line -> more("the method's file in the head says: " + line));
    figure
        .uncertainty()
        .ifPresent(budget -> more("expanded uncertainty (k = 2): " + roughly(budget.expanded())));
  }

  /** Two digits are all that an uncertainty or a bound can say. */
  private String roughly(double value) {
    return FigureWords.rough(value, figure.unit(), figure.inchPoundUnit(), first);
  }

  private String clause(FigureWords.Topic topic) {
    return " (" + FigureWords.clause(reduction.method().standard(), topic) + ")";
  }

  private String exact() {
    return both(figure.exact(), figure.unit(), figure.inchPoundUnit(), first);
  }

  private Optional<Figure> other(String name) {
    return reduction.test().result().figure(name);
  }

  private String printed(Figure of) {
    return FigureWords.printed(of, first);
  }
}
