package io.github.platenwire.cli;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Turns what a person types, {@code 45.2}, {@code 1.78 in}, {@code 45.2 at 10:42}, {@code 45.2
 * after 95 min}, {@code 45.8 for 12}, into the one form that the record keeps. Stateless.
 */
final class EntryLine {
  private static final Pattern TYPED =
      Pattern.compile(
          "(?<value>[-+]?[0-9]{1,12}(?:[.,][0-9]{1,9})?)\\s*(?<unit>[a-zµ]{1,2})?"
              + "(?:\\s+at\\s+(?:(?<date>[0-9]{4}-[0-9]{2}-[0-9]{2})[ T])?"
              + "(?<clock>[0-9]{1,2}:[0-9]{2}(?::[0-9]{2})?)"
              + "|\\s+after\\s+(?<after>[0-9]{1,9}(?:[.,][0-9]{1,6})?)\\s*(?<span>s|min|h|d))?"
              + "(?:\\s+for\\s+(?<for>[0-9]{1,15}))?");

  /** What a person is told who asks, or whose line is not understood. */
  static final String HELP =
      "Type what you read: 45.2, or 1.78 in; with its time if it was not just now: 45.2 at 10:42,"
          + " or 45.2 after 95 min. To put entry 12 right: 45.8 for 12. Other lines: note WORDS,"
          + " end.";

  private EntryLine() {}

  /** A line that cannot be taken, with the reason for the person who typed it. */
  static final class NotAnEntry extends Exception {
    private static final long serialVersionUID = 1L;

    NotAnEntry(String problem) {
      super(problem);
    }
  }

  /**
   * The line as the record keeps it.
   *
   * @param typed as typed
   * @param usual the unit that is meant where none is typed
   * @param zone in which times of day are typed
   * @param now the time of day; a bare time is the latest such one that is past
   */
  static String canonical(String typed, Unit usual, ZoneId zone, Instant now) throws NotAnEntry {
    Matcher parts = TYPED.matcher(typed.strip());
    if (!parts.matches()) {
      throw new NotAnEntry("'" + typed.strip() + "' is no entry. " + HELP);
    }
    Unit unit = unit(parts.group("unit"), usual);
    String value = parts.group("value").replace(',', '.');
    String at = at(parts, zone, now).map(moment -> " at " + moment).orElse("");
    String after =
        parts.group("after") == null
            ? ""
            : " after " + plain(seconds(parts.group("after"), parts.group("span"))) + " s";
    String corrects = parts.group("for") == null ? "" : " for " + parts.group("for");
    return ">" + value + " " + unit.symbol() + ";" + at + after + corrects;
  }

  /** The line for a row of a table. */
  static String ofTable(String value, Unit unit, double seconds) {
    return ">" + value + " " + unit.symbol() + "; after " + plain(seconds) + " s";
  }

  private static double seconds(String number, String span) {
    Unit unit =
        switch (span) {
          case "min" -> Unit.MINUTE;
          case "h" -> Unit.HOUR;
          case "d" -> Unit.DAY;
          default -> Unit.SECOND;
        };
    return unit.toBase(Double.parseDouble(number.replace(',', '.')));
  }

  private static String plain(double seconds) {
    return String.format(Locale.ROOT, "%.3f", seconds).replaceAll("\\.?0+$", "");
  }

  private static Unit unit(String typed, Unit usual) throws NotAnEntry {
    if (typed == null) {
      return usual;
    }
    List<Unit> possible =
        usual.quantity() == Quantity.MASS
            ? List.of(Unit.GRAM, Unit.KILOGRAM)
            : List.of(Unit.MILLIMETRE, Unit.CENTIMETRE, Unit.INCH);
    return possible.stream()
        .filter(unit -> unit.symbol().equals(typed))
        .findFirst()
        .orElseThrow(
            () ->
                new NotAnEntry(
                    "'"
                        + typed
                        + "' is no unit here; possible: "
                        + String.join(", ", possible.stream().map(Unit::symbol).toList())));
  }

  private static Optional<Instant> at(Matcher parts, ZoneId zone, Instant now) throws NotAnEntry {
    if (parts.group("clock") == null) {
      return Optional.empty();
    }
    Instant moment;
    try {
      moment = moment(parts.group("date"), time(parts.group("clock")), zone, now);
    } catch (DateTimeException e) {
      throw new NotAnEntry("'" + parts.group("clock") + "' is no time; write it as 10:42");
    }
    if (moment.isAfter(now)) {
      throw new NotAnEntry("that time is still to come");
    }
    return Optional.of(moment);
  }

  private static LocalTime time(String clock) {
    int[] numbers = Arrays.stream(clock.split(":")).mapToInt(Integer::parseInt).toArray();
    return LocalTime.of(numbers[0], numbers[1], numbers.length > 2 ? numbers[2] : 0);
  }

  private static Instant moment(String date, LocalTime time, ZoneId zone, Instant now) {
    if (date != null) {
      return LocalDateTime.of(LocalDate.parse(date), time).atZone(zone).toInstant();
    }
    ZonedDateTime today = now.atZone(zone).toLocalDate().atTime(time).atZone(zone);
    return (today.toInstant().isAfter(now) ? today.minusDays(1) : today).toInstant();
  }
}
