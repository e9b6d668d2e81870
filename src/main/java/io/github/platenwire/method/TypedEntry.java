package io.github.platenwire.method;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a typed entry says beside its value: {@code >20 mm; after 1200 s for 4}. Immutable.
 *
 * @param at the moment at which it was read, if it tells one
 * @param afterSeconds how long after the first entry it was read, if it tells that
 * @param corrects number of the entry that it puts right
 */
public record TypedEntry(Optional<Instant> at, OptionalDouble afterSeconds, OptionalLong corrects) {
  /** After the value and its unit; the program writes it in this one form. */
  private static final Pattern LINE =
      Pattern.compile(
          "[^;]*;(?: at (?<at>[0-9TZ:.-]{10,40})| after (?<after>[0-9.]{1,20}) s)?"
              + "(?: for (?<for>[0-9]{1,18}))?");

  /**
   * Reads a line.
   *
   * @return empty if what follows its ';' is not understood
   * @throws java.time.DateTimeException if its time of day is none
   * @throws NumberFormatException if its time since the first entry is none
   */
  public static Optional<TypedEntry> parse(String line) {
    Matcher parts = LINE.matcher(line);
    if (!parts.matches()) {
      return Optional.empty();
    }
    String after = parts.group("after");
    String corrects = parts.group("for");
    return Optional.of(
        new TypedEntry(
            Optional.ofNullable(parts.group("at")).map(Instant::parse),
            after == null ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(after)),
            corrects == null ? OptionalLong.empty() : OptionalLong.of(Long.parseLong(corrects))));
  }
}
