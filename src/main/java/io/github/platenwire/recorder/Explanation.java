package io.github.platenwire.recorder;

import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.record.Observations;
import io.github.platenwire.record.Provenance.Change;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.record.RawRow;
import io.github.platenwire.record.SummaryFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where a record's figures come from, in words and numbers that a client can follow at the counter.
 * Everything is computed again from the raw file; nothing is taken from a summary but which
 * measurements were corrected. Immutable.
 */
public final class Explanation {
  private final Reduction reduction;
  private final List<Change> changes;
  private final List<RawRow> rows;
  private final UnitSystem first;

  private Explanation(
      Reduction reduction, List<Change> changes, List<RawRow> rows, UnitSystem first) {
    this.reduction = reduction;
    this.changes = changes;
    this.rows = rows;
    this.first = first;
  }

  /**
   * Computes a record again.
   *
   * @param raw the raw file
   * @param summary the summary whose corrections hold, if there is one
   * @param first which system of units is named first; both always are
   * @throws RawFileException if the raw file is not as the format says
   * @throws IOException if a file cannot be read
   */
  public static Explanation of(Path raw, Optional<Path> summary, UnitSystem first)
      throws IOException, RawFileException {
    List<Change> changes = summary.isPresent() ? SummaryFile.changes(summary.get()) : List.of();
    Observations seen =
        summary.isPresent() ? SummaryFile.observations(summary.get()) : Observations.NONE;
    Reduction reduction =
        Reduction.of(raw, specimen -> SpecimenCorrection.apply(specimen, changes))
            .placed(seen.breakPosition());
    List<RawRow> rows = new ArrayList<>();
    try (RawFileReader reader = RawFileReader.open(raw)) {
      reader.readRows(rows::add);
    }
    return new Explanation(reduction, changes, rows, first);
  }

  /** The names of all figures. */
  public List<String> names() {
    return reduction.test().result().figures().stream().map(Figure::name).toList();
  }

  /**
   * One figure, step by step.
   *
   * @return lines of text; empty if the record has no such figure
   */
  public Optional<List<String>> figure(String name) {
    return reduction
        .test()
        .result()
        .figure(name)
        .map(figure -> new FigureStory(reduction, changes, rows, first, figure).lines());
  }
}
