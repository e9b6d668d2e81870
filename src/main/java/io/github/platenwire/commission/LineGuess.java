package io.github.platenwire.commission;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Infers a line definition from a sample of lines. Stateless. */
final class LineGuess {
  private static final Pattern POINT = Pattern.compile("\\d\\.\\d");
  private static final Pattern COMMA = Pattern.compile("(\\d+),(\\d+)");
  private static final Pattern LIST = Pattern.compile("\\d,\\d+,\\d|[;,] *[+-]?\\d+, *[+-]\\d");
  private static final Pattern DAYS =
      Pattern.compile("\\d{1,2}\\.\\d{1,2}\\.\\d{2,4}|:\\d\\d\\.\\d+");

  private LineGuess() {}

  static Draft draft(SampleLines lines, Hints hints) {
    Optional<TextCheck> check = TextCheck.find(lines.lines());
    char mark = hints.decimal().orElseGet(() -> mark(lines.lines()));
    Tokens tokens = new Tokens(mark, check.map(TextCheck::length).orElse(0));
    Alignment alignment = Alignment.of(lines.lines().stream().map(tokens::of).toList());
    Table table = new Table(lines.lines(), alignment);
    String checkWords =
        check.map(TextCheck::words).orElse("") + ". A line's check value is not verified";
    Roles roles = new Roles(table, mark, hints, checkWords);
    boolean values = roles.roles().values().stream().anyMatch(Role.Value.class::isInstance);
    if (!roles.questions().isEmpty() || !values) {
      return new Draft("", roles.notes(), roles.questions());
    }
    String text = new LineDraft(table, roles.roles(), lines, mark).text(hints);
    return new Draft(text, roles.notes(), List.of());
  }

  /**
   * The decimal mark: a comma between digits is one unless points stand there too, or more commas
   * follow each other than one number has.
   */
  private static char mark(List<String> lines) {
    long points = 0;
    long commas = 0;
    long lists = 0;
    List<Double> before = new ArrayList<>();
    Set<Integer> decimals = new HashSet<>();
    for (String line : lines) {
      String bare = DAYS.matcher(line).replaceAll("");
      points += POINT.matcher(bare).find() ? 1 : 0;
      lists += LIST.matcher(bare).find() ? 1 : 0;
      Matcher comma = COMMA.matcher(bare);
      if (comma.find()) {
        commas++;
        before.add(Double.parseDouble(comma.group(1)));
        decimals.add(comma.group(2).length());
      }
    }
    // a counter goes up before each comma; decimals are of one length
    double[] counts = before.stream().mapToDouble(Double::doubleValue).toArray();
    boolean list = lists * 2 >= commas || decimals.size() > 2 || Running.isCounter(counts);
    return commas > points && !list ? ',' : '.';
  }
}
