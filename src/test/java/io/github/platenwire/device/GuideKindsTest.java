package io.github.platenwire.device;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The guide's definitions of every other kind. */
class GuideKindsTest {
  private static List<DeviceDefinition> definitions() throws Exception {
    String guide = Files.readString(Path.of("devices", "README.md"));
    return Pattern.compile("```text\n(format = .*?)```", Pattern.DOTALL)
        .matcher(guide)
        .results()
        .map((MatchResult block) -> Definitions.parse(block.group(1)))
        .toList();
  }

  @Test
  void guide_everyOtherKind_hasADefinition() throws Exception {
    assertThat(definitions())
        .extracting(DeviceDefinition::name)
        .containsExactly("bench-query", "bench-binary", "bench-registers");
  }

  @Test
  void guide_binaryExample_isTrue() throws Exception {
    Frames frames = Frames.of(definitions().get(1), Hex.latin1("7E 20 00 47 F1 00 00 04 D2 00 40"));
    assertThat(frames.found)
        .extracting(found -> found.replaceAll("(?s).* -> ", ""))
        .containsExactly("0: 123456.0 kN ok", "1: 0.1234 mm ok");
  }
}
