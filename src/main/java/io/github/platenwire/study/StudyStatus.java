package io.github.platenwire.study;

import io.github.platenwire.method.Companions;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * How far a study has come: what is still to break and when, what is overdue, how much is done.
 * Immutable.
 *
 * @param title the study's
 * @param now the moment it was asked
 * @param zone the time zone in which times are shown
 * @param due every specimen of the plan that is still to break, soonest first; those of which the
 *     time is not known last
 * @param progress each series and age of the plan, in its order
 * @param outOfRange companion sets whose range is beyond the printed limit
 * @param unplanned specimens in the table that the plan does not ask for, with the reason
 * @param remarks what else a person should know, in whole sentences
 */
public record StudyStatus(
    String title,
    Instant now,
    ZoneId zone,
    List<DueBreak> due,
    List<Progress> progress,
    List<OutOfRange> outOfRange,
    List<Unplanned> unplanned,
    List<String> remarks) {
  /** Makes the lists immutable. */
  public StudyStatus {
    due = List.copyOf(due);
    progress = List.copyOf(progress);
    outOfRange = List.copyOf(outOfRange);
    unplanned = List.copyOf(unplanned);
    remarks = List.copyOf(remarks);
  }

  /**
   * The status of a study at a moment.
   *
   * @param data the study
   * @param now the moment
   */
  public static StudyStatus of(StudyData data, Instant now) {
    return new StatusMaker(data, now).make();
  }

  /** How a break stands to its time. */
  public enum Standing {
    /** Its time has passed, tolerance included. */
    OVERDUE("overdue"),
    /** It may be done now. */
    NOW("may be broken now"),
    /** Its time is still to come. */
    LATER("later"),
    /** When it was cast is not known. */
    NOT_KNOWN("time not known");

    private final String words;

    Standing(String words) {
      this.words = words;
    }

    /** The same for a person. */
    public String words() {
      return words;
    }
  }

  /**
   * A specimen still to break.
   *
   * @param specimen its name
   * @param series its series
   * @param ageDays the planned age
   * @param due when it has that age; empty if its cast time is not known
   * @param tolerance by how much it may be early or late; empty if nothing is printed for that age
   * @param standing how it stands; without a tolerance it is due at its very time and overdue a day
   *     after it (common practice, no source)
   */
  public record DueBreak(
      String specimen,
      String series,
      double ageDays,
      Optional<Instant> due,
      Optional<Duration> tolerance,
      Standing standing) {
    /** From when it may be broken. */
    public Optional<Instant> from() {
      return due.map(time -> time.minus(tolerance.orElse(Duration.ZERO)));
    }

    /** Until when it may be broken. */
    public Optional<Instant> until() {
      return due.map(time -> time.plus(tolerance.orElse(Duration.ZERO)));
    }
  }

  /**
   * How far one series has come at one age.
   *
   * @param series its name
   * @param label what people call it
   * @param ageDays the planned age
   * @param planned how many the plan asks for
   * @param listed how many the table of specimens lists
   * @param broken how many are broken
   * @param outsideTolerance how many of those were broken too early or too late
   */
  public record Progress(
      String series,
      String label,
      double ageDays,
      int planned,
      int listed,
      int broken,
      int outsideTolerance) {}

  /**
   * A set of companions whose range is beyond the limit.
   *
   * @param series its name
   * @param ageDays the planned age
   * @param verdict range and limit
   */
  public record OutOfRange(String series, double ageDays, Companions.Verdict verdict) {}

  /**
   * A specimen that the plan does not ask for.
   *
   * @param specimen its name
   * @param series its series
   * @param reason why, for a person
   */
  public record Unplanned(String specimen, String series, String reason) {}

  /** How many breaks are overdue. */
  public long overdue() {
    return due.stream().filter(one -> one.standing() == Standing.OVERDUE).count();
  }
}
