package io.github.platenwire.record;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Holds a summary as it stands in its file against one that was computed again, double for double
 * and word for word. Left out is what no raw file tells: what a person saw, how companions stood on
 * that day, in what words a failure was reported, and how the summary came about. Stateless.
 */
public final class SummaryDifferences {
  private static final Set<String> NOT_FROM_THE_RAW_FILE =
      Set.of("observations", "companions", "failure", "made_by", "register", "correction");

  private SummaryDifferences() {}

  /**
   * One place at which two summaries differ.
   *
   * @param where such as {@code results/strength/value}
   * @param closed what the file says; {@code (nothing)} if it has no such place
   * @param computed what was computed again
   */
  public record Difference(String where, String closed, String computed) {}

  /**
   * All differences.
   *
   * @param file the summary's file
   * @param computed the summary as computed again
   * @throws IOException if the file cannot be read or is no summary
   */
  public static List<Difference> of(Path file, Summary computed) throws IOException {
    return of(SummaryFile.tree(file), computed);
  }

  /** All differences of a summary that was read already. */
  static List<Difference> of(JsonNode closed, Summary computed) {
    JsonNode again = new SummaryJson(new ObjectMapper()).of(computed);
    List<Difference> differences = new ArrayList<>();
    for (String name : names(closed, again)) {
      if (!NOT_FROM_THE_RAW_FILE.contains(name)) {
        compare(name, closed.path(name), again.path(name), differences);
      }
    }
    return List.copyOf(differences);
  }

  private static Set<String> names(JsonNode a, JsonNode b) {
    Set<String> names = new TreeSet<>();
    a.fieldNames().forEachRemaining(names::add);
    b.fieldNames().forEachRemaining(names::add);
    return names;
  }

  private static void compare(String where, JsonNode a, JsonNode b, List<Difference> differences) {
    if (a.isObject() && b.isObject()) {
      for (String name : names(a, b)) {
        compare(where + "/" + name, a.path(name), b.path(name), differences);
      }
    } else if (a.isArray() && b.isArray()) {
      for (int i = 0; i < Math.max(a.size(), b.size()); i++) {
        compare(where + "/" + label(i, a.path(i), b.path(i)), a.path(i), b.path(i), differences);
      }
    } else if (!isSame(a, b)) {
      differences.add(new Difference(where, words(a), words(b)));
    }
  }

  private static String label(int index, JsonNode a, JsonNode b) {
    for (JsonNode node : new JsonNode[] {a, b}) {
      for (String key : new String[] {"name", "source"}) {
        if (node.path(key).isTextual()) {
          return node.path(key).asText();
        }
      }
    }
    return Integer.toString(index + 1);
  }

  private static boolean isSame(JsonNode a, JsonNode b) {
    return (a.isNumber() && b.isNumber())
        ? Double.doubleToLongBits(a.doubleValue()) == Double.doubleToLongBits(b.doubleValue())
        : a.equals(b);
  }

  private static String words(JsonNode node) {
    if (node.isMissingNode()) {
      return "(nothing)";
    }
    return node.isTextual() ? node.asText() : node.toString();
  }
}
