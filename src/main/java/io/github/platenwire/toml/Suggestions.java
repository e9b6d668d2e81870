package io.github.platenwire.toml;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/** Finds the known word that a misspelt one most likely meant. Stateless. */
public final class Suggestions {
  private Suggestions() {}

  /**
   * The known word within a third of the given word's length in single-letter edits, at least one,
   * if there is one that shares a letter with it.
   *
   * @param word what was written
   * @param known what could have been meant
   */
  public static Optional<String> nearest(String word, Collection<String> known) {
    int allowed = Math.min(Math.max(1, word.length() / 3), word.length() - 1);
    return known.stream()
        .filter(candidate -> distance(word, candidate) <= allowed)
        .min(
            Comparator.comparingInt((String candidate) -> distance(word, candidate))
                .thenComparing(Comparator.naturalOrder()));
  }

  /**
   * Insertions, deletions, substitutions and swaps of two neighbours each count one (optimal string
   * alignment): swapped neighbours are the commonest slip of the hand.
   */
  private static int distance(String a, String b) {
    int[][] edits = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        edits[i][j] = i == 0 || j == 0 ? i + j : cheapest(edits, a, b, i, j);
      }
    }
    return edits[a.length()][b.length()];
  }

  private static int cheapest(int[][] edits, String a, String b, int i, int j) {
    boolean same = a.charAt(i - 1) == b.charAt(j - 1);
    int best = edits[i - 1][j - 1] + (same ? 0 : 1);
    best = Math.min(best, 1 + Math.min(edits[i - 1][j], edits[i][j - 1]));
    boolean swapped =
        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
    return swapped ? Math.min(best, 1 + edits[i - 2][j - 2]) : best;
  }
}
