package io.github.platenwire.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.platenwire.commission.ProbeFit;
import io.github.platenwire.commission.ProbeResult;
import io.github.platenwire.commission.Prober;
import java.util.List;

/** What came of probing, for a program. Stateless. */
final class ProbeJson {
  private ProbeJson() {}

  static String text(List<ProbedPort> probed) {
    ArrayNode list = new ObjectMapper().createArrayNode();
    for (ProbedPort port : probed) {
      ObjectNode node = list.addObject();
      node.put("port", port.port().path());
      node.put("description", port.port().description()).put("place", port.port().place());
      if (!port.failure().isEmpty()) {
        node.put("failure", port.failure());
      }
      port.result().ifPresent(result -> put(node, result));
    }
    return list.toPrettyString();
  }

  private static void put(ObjectNode node, ProbeResult result) {
    node.put("bytes_heard", result.bytes());
    result.readable().ifPresent(settings -> node.put("most_readable_at", Prober.words(settings)));
    node.put("heard", result.heard());
    ArrayNode fits = node.putArray("fits");
    for (ProbeFit fit : result.fits()) {
      ObjectNode one = fits.addObject();
      one.put("definition", fit.definition().name()).put("asked", fit.asked());
      one.put("line", Prober.words(fit.settings()));
      SampleJson.put(one, fit.report());
    }
  }
}
