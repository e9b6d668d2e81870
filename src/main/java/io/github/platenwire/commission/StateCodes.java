package io.github.platenwire.commission;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What devices write for the state of a reading; common practice, no source. What a person says
 * goes first. Immutable.
 */
final class StateCodes {
  private static final List<String> OK = List.of("", "OK", "ST", "S", "G", "GS", "NT", "=", "A");
  private static final List<String> UNSTABLE = List.of("US", "U", "M", "MO", "D", "?", "~", "UN");
  private static final List<String> OVER = List.of("OL", "OV", "O", "H", "HI", "^", "OVR", "OVER");

  private final Map<String, String> told;

  StateCodes(Map<String, String> told) {
    this.told = Map.copyOf(told);
  }

  /** Whether a word that never changes is taken for a state all the same. */
  boolean isKnown(String code) {
    boolean clear = code.length() > 1;
    return told.containsKey(code)
        || (clear && (OK.contains(code) || UNSTABLE.contains(code) || OVER.contains(code)));
  }

  /**
   * What each code means. One that is unknown is {@code ok} if it is the commonest and no other is,
   * else {@code unstable}: such a reading is kept, but no result rests on it.
   */
  Map<String, String> meanings(Iterable<String> codes, String commonest) {
    Map<String, String> meanings = new LinkedHashMap<>();
    for (String code : codes) {
      meanings.put(code, meaning(code));
    }
    if (!meanings.containsValue("ok") && !told.containsKey(commonest)) {
      meanings.replace(commonest, "ok");
    }
    meanings.replaceAll((code, meaning) -> meaning.isEmpty() ? "unstable" : meaning);
    return meanings;
  }

  private String meaning(String code) {
    if (told.containsKey(code)) {
      return told.getOrDefault(code, "");
    }
    return OK.contains(code) ? "ok" : UNSTABLE.contains(code) ? "unstable" : overOrUnknown(code);
  }

  private static String overOrUnknown(String code) {
    return OVER.contains(code) ? "over" : "";
  }
}
