package io.github.platenwire.explain;

import io.github.platenwire.method.MethodResult;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.record.CloseReason;
import io.github.platenwire.record.Closing;
import io.github.platenwire.record.Observations;
import io.github.platenwire.record.Provenance.Change;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.record.RawRow;
import io.github.platenwire.record.SummaryFile;
import io.github.platenwire.recorder.Reduction;
import io.github.platenwire.recorder.SpecimenCorrection;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where a record's figures come from, in words and numbers that a client can follow at the counter.
 * Everything is computed again from the raw file; of a summary only that is taken which people saw
 * or put right afterwards, and its figures are held against what comes out. Immutable.
 */
public final class Explanation {
  private final Evidence evidence;
  private final Optional<MethodResult> kept;

  /**
   * An explanation of a record that was computed again.
   *
   * @param kept what the summary beside the raw file has, if there is one
   */
  Explanation(Evidence evidence, Optional<MethodResult> kept) {
    this.evidence = evidence;
    this.kept = kept;
  }

  /**
   * Computes a record again.
   *
   * @param raw the raw file
   * @param summary the summary whose corrections and observations hold, if there is one
   * @param first which system of units is named first; both always are
   * @throws RawFileException if the raw file is not as the format says
   * @throws IOException if a file cannot be read
   */
  public static Explanation of(Path raw, Optional<Path> summary, UnitSystem first)
      throws IOException, RawFileException {
    Optional<MethodResult> kept =
        summary.isPresent()
            ? Optional.of(SummaryFile.stored(summary.get()).result())
            : Optional.empty();
    return new Explanation(evidence(raw, summary, first), kept);
  }

  /** A record computed again, with all that can be told of it. */
  static Evidence evidence(Path raw, Optional<Path> summary, UnitSystem first)
      throws IOException, RawFileException {
    List<Change> changes = summary.isPresent() ? SummaryFile.changes(summary.get()) : List.of();
    Observations seen =
        summary.isPresent() ? SummaryFile.observations(summary.get()) : Observations.NONE;
    List<RawRow> rows = new ArrayList<>();
    Footprints trail = new Footprints();
    Reduction reduction =
        Reduction.of(raw, specimen -> SpecimenCorrection.apply(specimen, changes), rows::add, trail)
            .placed(seen.breakPosition());
    return new Evidence(reduction, changes, seen, rows, trail, method(reduction), first);
  }

  private static TomlSection method(Reduction reduction) {
    try {
      return TomlSection.parse(reduction.method().text(), reduction.method().name());
    } catch (TomlException e) {
      throw new IllegalStateException("the method was read before", e);
    }
  }

  /** The names of all figures. */
  public List<String> names() {
    return figures().stream().map(Figure::name).toList();
  }

  private List<Figure> figures() {
    return evidence.result().figures();
  }

  /** All figures: what can be asked for. */
  public List<Entry> entries() {
    return figures().stream()
        .map(
            figure ->
                new Entry(
                    figure.name(), FigureWords.printed(figure, evidence.first()), figure.title()))
        .toList();
  }

  /** Which record this is, in one line. */
  public String title() {
    return "Record "
        + evidence.header().test()
        + " of "
        + evidence.specimen().name()
        + ", by "
        + evidence.by();
  }

  /** What must be known before anybody relies on a figure: that the test did not end in order. */
  public Optional<String> caution() {
    Optional<Closing> closing = evidence.reduction().test().closing();
    if (closing.isEmpty()) {
      return Optional.of(
          "CAUTION: this record was never closed; it ends after row "
              + evidence.rows().size()
              + ". What follows holds for the rows that are there, not for the test. 'platenwire"
              + " recover' closes it in order.");
    }
    return closing
        .filter(end -> end.reason() == CloseReason.INTERRUPTED)
        .map(
            end ->
                "CAUTION: this test was interrupted after row "
                    + end.seq()
                    + "; what follows holds for the rows up to there.");
  }

  /**
   * One figure of the list. Immutable.
   *
   * @param name by which it is asked for
   * @param printed its value in both systems of units
   * @param title what it is
   */
  public record Entry(String name, String printed, String title) {}

  /**
   * One figure, step by step.
   *
   * @return lines of text; empty if the record has no such figure
   */
  public Optional<List<String>> figure(String name) {
    return evidence.figure(name).map(figure -> new FigureStory(evidence, kept, figure).lines());
  }

  /**
   * Why there is no figure of a name that the method could have given: a discarded strength, a rate
   * that the readings do not show, a width that was not reached.
   *
   * @return lines of text; empty if nothing is known of such a figure
   */
  public Optional<List<String>> absent(String name) {
    List<String> lines = new AbsentFigure(evidence, name).lines();
    return lines.isEmpty() ? Optional.empty() : Optional.of(lines);
  }
}
