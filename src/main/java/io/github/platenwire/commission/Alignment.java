package io.github.platenwire.commission;

import io.github.platenwire.commission.Token.Kind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Puts the tokens of many lines under each other, the commonest kind of line first (Needleman and
 * Wunsch's alignment, J. Mol. Biol. 48, 1970, 443, against the columns so far). Used once; not
 * thread-safe.
 */
final class Alignment {
  private static final double GAP = 1.3;
  private static final double DEAREST = 4;

  private final List<Column> columns = new ArrayList<>();
  private final Set<Integer> aside = new HashSet<>();

  /** Aligns lines; the first may be torn. */
  static Alignment of(List<List<Token>> lines) {
    Alignment alignment = new Alignment();
    Map<String, List<Integer>> bySignature = new LinkedHashMap<>();
    for (int i = 0; i < lines.size(); i++) {
      bySignature.computeIfAbsent(signature(lines.get(i)), s -> new ArrayList<>()).add(i);
    }
    bySignature.values().stream()
        .sorted(Comparator.comparing((List<Integer> same) -> -same.size()))
        .forEach(same -> alignment.add(lines, same));
    return alignment;
  }

  private static String signature(List<Token> tokens) {
    StringBuilder signature = new StringBuilder();
    for (Token token : tokens) {
      boolean spelled = token.kind() == Kind.WORD || token.kind() == Kind.MARK;
      signature.append(token.kind().ordinal()).append(spelled ? token.text() : "").append('\n');
    }
    return signature.toString();
  }

  /** The columns in their order. */
  List<Column> columns() {
    return columns;
  }

  /** Lines that fit none of the others. */
  Set<Integer> aside() {
    return aside;
  }

  private void add(List<List<Token>> lines, List<Integer> same) {
    List<Token> first = lines.get(same.get(0));
    if (columns.isEmpty()) {
      for (Token token : first) {
        Column column = new Column(token.kind());
        column.put(same.get(0), token);
        columns.add(column);
      }
    }
    double[][] costs = costs(first);
    double cost = costs[first.size()][columns.size()];
    boolean torn = same.get(0) == 0 && same.size() == 1 && cost >= GAP;
    if (torn || cost > DEAREST) {
      aside.addAll(same);
      return;
    }
    List<Column> places = places(first, costs);
    for (int line : same) {
      for (int t = 0; t < first.size(); t++) {
        places.get(t).put(line, lines.get(line).get(t));
      }
    }
  }

  private double[][] costs(List<Token> tokens) {
    double[][] costs = new double[tokens.size() + 1][columns.size() + 1];
    for (int t = 0; t <= tokens.size(); t++) {
      for (int c = 0; c <= columns.size(); c++) {
        costs[t][c] = t == 0 && c == 0 ? 0 : cheapest(costs, tokens, t, c);
      }
    }
    return costs;
  }

  private double cheapest(double[][] costs, List<Token> tokens, int t, int c) {
    double best = Double.POSITIVE_INFINITY;
    if (t > 0 && c > 0) {
      best = costs[t - 1][c - 1] + columns.get(c - 1).costOf(tokens.get(t - 1));
    }
    if (t > 0) {
      best = Math.min(best, costs[t - 1][c] + GAP);
    }
    return c > 0 ? Math.min(best, costs[t][c - 1] + GAP) : best;
  }

  /** The column of each token; makes new ones where the line has more than was seen so far. */
  private List<Column> places(List<Token> tokens, double[][] costs) {
    List<Column> places = new ArrayList<>();
    int t = tokens.size();
    int c = columns.size();
    while (t > 0) {
      Token token = tokens.get(t - 1);
      if (c > 0 && costs[t][c] == costs[t - 1][c - 1] + columns.get(c - 1).costOf(token)) {
        places.add(0, columns.get(c - 1));
        t--;
        c--;
      } else if (costs[t][c] == costs[t - 1][c] + GAP) {
        Column added = new Column(token.kind());
        columns.add(c, added);
        places.add(0, added);
        t--;
      } else {
        c--;
      }
    }
    return places;
  }
}
