package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(120)
class BenchCommandTest {
  @TempDir Path folder;

  @Test
  void bench_jsonOfOnePart_isOneDocument() throws Exception {
    Ran bench = Ran.of("bench", "--folder", folder, "--quick", "--only", "start", "--json");
    assertThat(bench.exitCode()).as(bench.err()).isZero();
    JsonNode root = new ObjectMapper().readTree(bench.out());
    assertThat(root.path("format").asText()).isEqualTo("platenwire-bench 1");
    JsonNode figure = root.path("figures").get(0);
    assertThat(figure.path("name").asText()).isEqualTo("start_seconds");
    assertThat(figure.path("value").asDouble()).isPositive();
    assertThat(figure.path("ratio").asDouble()).isPositive();
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void bench_unknownPart_listsThoseThereAreAndEndsWith2() {
    Ran bench = Ran.of("bench", "--folder", folder, "--only", "speed");
    assertThat(bench.exitCode()).isEqualTo(2);
    assertThat(bench.err()).contains("record, delay, cpu, audit, day, start", "'speed'");
  }

  @Test
  void bench_noFolder_endsWith2() {
    Ran bench = Ran.of("bench", "--folder", folder.resolve("missing"), "--only", "start");
    assertThat(bench.exitCode()).isEqualTo(2);
    assertThat(bench.err()).contains("missing");
  }
}
