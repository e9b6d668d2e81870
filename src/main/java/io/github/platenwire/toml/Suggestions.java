package io.github.platenwire.toml;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/** Finds the known word that a misspelt one most likely meant. Stateless. */
public final class Suggestions {
  private Suggestions() {}

  /**
   * The known word within a third of the given word's length in single-letter edits, if there is
   * one.
   *
   * @param word what was written
   * @param known what could have been meant
   */
  public static Optional<String> nearest(String word, Collection<String> known) {
    int allowed = Math.max(1, word.length() / 3);
    return known.stream()
        .filter(candidate -> distance(word, candidate) <= allowed)
        .min(
            Comparator.comparingInt((String candidate) -> distance(word, candidate))
                .thenComparing(Comparator.naturalOrder()));
  }

  /** Levenshtein distance: insertions, deletions and substitutions each count one. */
  private static int distance(String a, String b) {
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int substitution = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(substitution, 1 + Math.min(row[j], row[j - 1]));
      }
    }
    return row[b.length()];
  }
}
