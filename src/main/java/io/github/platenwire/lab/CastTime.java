package io.github.platenwire.lab;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads when a specimen was cast. Dates with the year first are read as they are; with points, day
 * first (common practice, no source); with slashes or hyphens and the year last only where day and
 * month cannot be taken for one another. Stateless.
 */
final class CastTime {
  private static final String CLOCK =
      "(?:[ T]+(\\d{1,2}):(\\d{2})(?::(\\d{2})(?:\\.\\d+)?)?\\s?(Z|[+-]\\d{2}:\\d{2})?)?";
  private static final Pattern YEAR_FIRST =
      Pattern.compile("(\\d{4})([-/.])(\\d{1,2})\\2(\\d{1,2})" + CLOCK);
  private static final Pattern YEAR_LAST =
      Pattern.compile("(\\d{1,2})([-/.])(\\d{1,2})\\2(\\d{4})" + CLOCK);

  private static final int FIRST_YEAR = 1950;
  private static final int LAST_YEAR = 2199;

  private CastTime() {}

  /**
   * The local time in a zone.
   *
   * @throws NotATime if it is none, or could be two
   */
  static LocalDateTime parse(String cell, ZoneId zone) throws NotATime {
    try {
      return checked(cell, zone);
    } catch (DateTimeException e) {
      throw new NotATime("'" + cell + "': there is no such date or time of day");
    }
  }

  private static LocalDateTime checked(String cell, ZoneId zone) throws NotATime {
    Matcher yearFirst = YEAR_FIRST.matcher(cell);
    if (yearFirst.matches()) {
      LocalDate date = date(cell, yearFirst.group(1), yearFirst.group(3), yearFirst.group(4));
      return at(cell, date, yearFirst, zone);
    }
    Matcher yearLast = YEAR_LAST.matcher(cell);
    if (yearLast.matches()) {
      return at(cell, yearLastDate(cell, yearLast), yearLast, zone);
    }
    throw new NotATime(
        "'" + cell + "' is no date and time of day; write it the way 2026-11-18 14:30");
  }

  private static LocalDate yearLastDate(String cell, Matcher parts) throws NotATime {
    String first = parts.group(1);
    String second = parts.group(3);
    String year = parts.group(4);
    int firstNumber = Integer.parseInt(first);
    int secondNumber = Integer.parseInt(second);
    boolean points = parts.group(2).equals(".");
    if (!points && firstNumber <= 12 && secondNumber <= 12 && firstNumber != secondNumber) {
      LocalDate dayFirst = date(cell, year, second, first);
      LocalDate monthFirst = date(cell, year, first, second);
      throw new NotATime(
          "'"
              + cell
              + "' can be "
              + dayFirst
              + " or "
              + monthFirst
              + "; write the year first, the way 2026-11-18 14:30");
    }
    return !points && secondNumber > 12
        ? date(cell, year, first, second)
        : date(cell, year, second, first);
  }

  private static LocalDate date(String cell, String year, String month, String day)
      throws NotATime {
    LocalDate date =
        LocalDate.of(Integer.parseInt(year), Integer.parseInt(month), Integer.parseInt(day));
    if (date.getYear() < FIRST_YEAR || date.getYear() > LAST_YEAR) {
      throw new NotATime("'" + cell + "': the year " + year + " is no likely year of casting");
    }
    return date;
  }

  /** Groups 5 to 8 are hour, minute, second and offset. */
  private static LocalDateTime at(String cell, LocalDate date, Matcher parts, ZoneId zone)
      throws NotATime {
    if (parts.group(5) == null) {
      throw new NotATime(
          "'"
              + cell
              + "' has no time of day; write it the way "
              + date
              + " 14:30, for the age in hours");
    }
    String second = parts.group(7);
    LocalTime time =
        LocalTime.of(
            Integer.parseInt(parts.group(5)),
            Integer.parseInt(parts.group(6)),
            second == null ? 0 : Integer.parseInt(second));
    LocalDateTime written = LocalDateTime.of(date, time);
    String offset = parts.group(8);
    if (offset != null) {
      return written.atOffset(ZoneOffset.of(offset)).atZoneSameInstant(zone).toLocalDateTime();
    }
    if (zone.getRules().getValidOffsets(written).isEmpty()) {
      throw new NotATime(
          "'" + cell + "' does not exist in " + zone + ": the clocks were put forward over it");
    }
    return written;
  }

  /** A cell that is no time, with what would be right. */
  static final class NotATime extends Exception {
    private static final long serialVersionUID = 1L;

    NotATime(String problem) {
      super(problem);
    }
  }
}
