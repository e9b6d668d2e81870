package io.github.platenwire.record;

import io.github.platenwire.method.BreakPosition;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a person saw after the test. Immutable; any of it may be left out.
 *
 * @param fractureType key of the fracture type, such as {@code 3}
 * @param fractureWords the same in words
 * @param aggregate whether the break went {@code through} or {@code around} the aggregate
 * @param imprint whether the ribs of the bar are {@code seen} in the concrete or {@code not-seen}
 * @param voids voids and honeycombing in the break, in words
 * @param notes free words
 * @param enclosures files kept beside the record
 * @param breakPosition where along its span a beam broke
 */
public record Observations(
    Optional<String> fractureType,
    Optional<String> fractureWords,
    Optional<String> aggregate,
    Optional<String> imprint,
    Optional<String> voids,
    Optional<String> notes,
    List<Enclosure> enclosures,
    BreakPosition breakPosition) {
  /** Nothing was seen, or nobody was asked. */
  public static final Observations NONE =
      new Observations(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          List.of(),
          BreakPosition.NOT_RECORDED);

  /** Makes the list immutable. */
  public Observations {
    enclosures = List.copyOf(enclosures);
  }

  /** The same with the position of the break. */
  public Observations withBreakPosition(BreakPosition position) {
    return new Observations(
        fractureType, fractureWords, aggregate, imprint, voids, notes, enclosures, position);
  }

  /** The same with one more file kept beside the record. */
  public Observations enclosing(Enclosure one) {
    List<Enclosure> all = new ArrayList<>(enclosures);
    all.add(one);
    return new Observations(
        fractureType, fractureWords, aggregate, imprint, voids, notes, all, breakPosition);
  }

  /**
   * These with what was seen later: what is said there takes the place of what is here, notes and
   * enclosures are added to.
   */
  public Observations and(Observations later) {
    List<Enclosure> all = new ArrayList<>(enclosures);
    all.addAll(later.enclosures);
    Optional<String> words =
        notes.isPresent() && later.notes.isPresent()
            ? Optional.of(notes.get() + "; " + later.notes.get())
            : later.notes.or(() -> notes);
    return new Observations(
        later.fractureType.or(() -> fractureType),
        later.fractureType.isPresent() ? later.fractureWords : fractureWords,
        later.aggregate.or(() -> aggregate),
        later.imprint.or(() -> imprint),
        later.voids.or(() -> voids),
        words,
        all,
        later.breakPosition.equals(BreakPosition.NOT_RECORDED)
            ? breakPosition
            : later.breakPosition);
  }
}
