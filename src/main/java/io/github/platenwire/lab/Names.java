package io.github.platenwire.lab;

import io.github.platenwire.toml.Suggestions;
import java.math.BigDecimal;
import java.text.Normalizer;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** Names as parts of file names and messages. Stateless. */
final class Names {
  /** Longest part that a specimen's name takes in a file name. */
  static final int LONGEST = 60;

  private static final Pattern DEFINITION = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]*");

  /** Names that some systems keep for devices, whatever follows after a dot. */
  private static final Pattern RESERVED =
      Pattern.compile("(?i)(con|prn|aux|nul|com[0-9]|lpt[0-9])(\\..*)?");

  private Names() {}

  /** Whether a rig, device, calibration or method file may have this name (without .toml). */
  static boolean isDefinitionName(String name) {
    return DEFINITION.matcher(name).matches() && !name.endsWith(".toml");
  }

  /**
   * A name as a part of a file name that every system takes: letters and digits of ASCII, dot,
   * hyphen and underscore; accents are dropped, anything else becomes an underscore.
   */
  static String forFile(String name) {
    String bare = Normalizer.normalize(name, Normalizer.Form.NFKD).replaceAll("\\p{M}+", "");
    String safe = bare.replaceAll("[^A-Za-z0-9._-]", "_");
    if (safe.length() > LONGEST) {
      safe = safe.substring(0, LONGEST);
    }
    safe = safe.replaceAll("^\\.|\\.$", "_");
    if (safe.isEmpty() || RESERVED.matcher(safe).matches()) {
      return "_" + safe;
    }
    return safe;
  }

  /**
   * Ends a sentence about an unknown name: what was most likely meant, or else what there is.
   *
   * @param name what was asked for
   * @param known what there is
   */
  static String suggestion(String name, Collection<String> known) {
    Optional<String> nearest = nearest(name, known);
    if (nearest.isPresent()) {
      return "; did you mean '" + nearest.get() + "'?";
    }
    return known.isEmpty() ? "" : "; there " + (known.size() == 1 ? "is: " : "are: ") + some(known);
  }

  /** The nearest known name, upper and lower case counting as the same if nothing else fits. */
  static Optional<String> nearest(String name, Collection<String> known) {
    Optional<String> sameButCase =
        known.stream().filter(candidate -> candidate.equalsIgnoreCase(name)).sorted().findFirst();
    return sameButCase.or(() -> Suggestions.nearest(name, known));
  }

  private static String some(Collection<String> known) {
    List<String> sorted = known.stream().sorted().toList();
    int shown = Math.min(sorted.size(), 12);
    String list = String.join(", ", sorted.subList(0, shown));
    return shown == sorted.size() ? list : list + " and " + (sorted.size() - shown) + " more";
  }

  /** Lower case in the same way everywhere. */
  static String lower(String text) {
    return text.toLowerCase(Locale.ROOT);
  }

  /** A finite number without exponent and without needless zeros. */
  static String plain(double value) {
    BigDecimal exact = BigDecimal.valueOf(value).stripTrailingZeros();
    return exact.signum() == 0 ? "0" : exact.toPlainString();
  }
}
