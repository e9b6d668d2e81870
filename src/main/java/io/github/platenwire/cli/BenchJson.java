package io.github.platenwire.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.platenwire.bench.BenchFigure;
import java.io.IOException;
import java.util.List;

/** What {@code bench} prints for programs. Stateless. */
final class BenchJson {
  private static final ObjectMapper JSON = new ObjectMapper();

  private BenchJson() {}

  /** All figures, unrounded. */
  static String text(List<BenchFigure> figures) throws IOException {
    ObjectNode root = JSON.createObjectNode();
    root.put("format", "platenwire-bench 1");
    root.put("program", Version.text());
    root.put("cores", Runtime.getRuntime().availableProcessors());
    ArrayNode list = root.putArray("figures");
    for (BenchFigure figure : figures) {
      ObjectNode node = list.addObject();
      node.put("name", figure.key());
      node.put("value", figure.value());
      figure
          .ratio()
          .ifPresent(
              ratio -> {
                node.put("against", ratio.against());
                node.put("ratio", ratio.times());
                node.put(ratio.atMost() ? "wanted_at_most" : "wanted_at_least", ratio.target());
                node.put("reached", ratio.isReached());
              });
    }
    return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(root);
  }
}
