package io.github.platenwire.device;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import io.github.platenwire.toml.TomlException;
import java.util.List;

/** Shipped definitions with parts of them replaced, and texts that are none at all. */
class DefinitionFuzz {
  private static final List<String> TEXTS =
      List.of(
          "",
          Target.text("status-line-kn"),
          Target.text("query-line-n-mm"),
          Target.text("binary-load-and-gauge"),
          Target.text("registers-load"));

  @FuzzTest(maxDuration = "3m")
  void parse_anything_isReadOrRefusedWithAPlace(FuzzedDataProvider data) {
    StringBuilder text = new StringBuilder(data.pickValue(TEXTS));
    for (int edits = data.consumeInt(0, 4); edits > 0; edits--) {
      int from = data.consumeInt(0, text.length());
      int to = Math.min(text.length(), from + data.consumeInt(0, 30));
      text.replace(from, to, data.consumeString(60));
    }
    DeviceDefinition device;
    try {
      device = DeviceDefinition.parse(text.toString(), "f");
    } catch (TomlException e) {
      if (e.line() < 1 || e.column() < 1 || !e.getMessage().startsWith("f:" + e.line() + ":")) {
        throw new AssertionError(e);
      }
      return;
    }
    Target.feed(device, data);
  }
}
