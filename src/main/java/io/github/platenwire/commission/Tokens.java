package io.github.platenwire.commission;

import io.github.platenwire.commission.Token.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Takes lines apart into tokens. Immutable; safe for any thread. */
final class Tokens {
  private static final String DAY =
      "\\d{4}-\\d\\d-\\d\\d(?!\\d)|\\d{1,2}([./])\\d{1,2}\\1(?:\\d{4}|\\d{2})(?!\\d)"
          + "|\\d{1,2}-[A-Za-z]{3}-\\d{2,4}(?!\\d)";
  private static final String CLOCK = "\\d{1,2}:\\d\\d(?::\\d\\d(?:\\.\\d+)?)?(?!\\d)";
  private static final Pattern TIME =
      Pattern.compile(
          "(?:" + DAY + ")(?:T" + CLOCK + "(?:Z|[+-]\\d\\d:?\\d\\d)?)?|" + CLOCK + "Z?");
  private static final Pattern DASHES = Pattern.compile("([-*#_=?^+])\\1+");
  private static final Pattern WORD = Pattern.compile("[A-Za-z%\u0080-\u00FF]+");

  private final char mark;
  private final int checkLength;
  private final Pattern number;

  /**
   * Prepares.
   *
   * @param mark the decimal mark
   * @param checkLength characters of the check value at each line's end, or 0
   */
  Tokens(char mark, int checkLength) {
    this.mark = mark;
    this.checkLength = checkLength;
    String m = Pattern.quote(Character.toString(mark));
    // a point may stand behind the last digit; a comma there is a list's
    String bare = mark == '.' ? "\\d+" + m + "(?![\\d.])|" : "";
    this.number =
        Pattern.compile(
            "(?<sign>[+-][ \t]*)?(?:"
                + bare
                + "\\d+(?:"
                + m
                + "\\d+)?|"
                + m
                + "\\d+)(?:[eE][+-]?\\d{1,3})?");
  }

  /** The line's tokens; blanks between them are left out. */
  List<Token> of(String line) {
    List<Token> tokens = new ArrayList<>();
    int end = line.length() - Math.min(checkLength, line.length());
    int at = 0;
    while (at < end) {
      if (line.charAt(at) == ' ' || line.charAt(at) == '\t') {
        at++;
      } else {
        Token token = next(line, at, end);
        tokens.add(token);
        at = token.to();
      }
    }
    if (end < line.length()) {
      tokens.add(new Token(Kind.CHECK, line.substring(end), end));
    }
    return tokens;
  }

  private Token next(String line, int at, int end) {
    char before = at == 0 ? ' ' : line.charAt(at - 1);
    boolean afterDigit = Character.isDigit(before);
    if (!afterDigit && before != mark) {
      String time = match(TIME, line, at, end);
      if (!time.isEmpty()) {
        return new Token(Kind.TIME, time, at);
      }
    }
    String dashes = match(DASHES, line, at, end);
    if (!dashes.isEmpty()) {
      return new Token(Kind.DASHES, dashes, at);
    }
    Matcher found = number.matcher(line).region(at, end);
    if (found.lookingAt() && mayBegin(line.charAt(at), before, afterDigit)) {
      return new Token(Kind.NUMBER, found.group(), at);
    }
    String word = match(WORD, line, at, end);
    return word.isEmpty()
        ? new Token(Kind.MARK, line.substring(at, at + 1), at)
        : new Token(Kind.WORD, word, at);
  }

  /** A sign behind a digit belongs to the number before it; a mark behind a letter to the word. */
  private boolean mayBegin(char first, char before, boolean afterDigit) {
    boolean signed = first == '+' || first == '-';
    boolean marked = first == mark;
    return !(signed && (afterDigit || before == mark))
        && !(marked && (afterDigit || Character.isLetter(before)));
  }

  private static String match(Pattern pattern, String line, int at, int end) {
    Matcher matcher = pattern.matcher(line).region(at, end);
    return matcher.lookingAt() ? matcher.group() : "";
  }
}
