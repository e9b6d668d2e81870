package io.github.platenwire.recorder;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.emulate.PseudoTerminal;
import io.github.platenwire.record.RawRow;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A device's own spellings of units, mapped in its definition, up to the rows of a record. */
@Timeout(60)
@EnabledOnOs({OS.LINUX, OS.MAC})
class OwnSpellingsTest {
  private static final String DEFINITION =
      """
      format = "platenwire-device 1"
      name = "own-spellings"
      title = "Load with the device's own spellings of its units"
      kind = "line"
      [line]
      layout = "{load} {unit}"
      terminator = "LF"
      [fields.load]
      kind = "number"
      unit = "lbf"
      [fields.unit]
      kind = "unit"
      spellings = { "lb" = "lbf", "KN" = "kN", "KIPS" = "kip", "KGS" = "kgf" }
      """;

  private static final List<String> SENT =
      List.of("1000 lb", "12.5 KN", "2 KIPS", "100 KGS", "5 kN");

  @TempDir Path folder;

  @Test
  void record_ownSpellingsAndAChangeInMidTest_givesNewtonsAndMarksWhatIsNotMapped()
      throws Exception {
    try (DeviceBench bench = new DeviceBench()) {
      PseudoTerminal line = bench.line();
      bench.channel("load", line, DEFINITION, 0);
      byte[] bytes =
          ("0 lb\n" + String.join("\n", SENT) + "\n").getBytes(StandardCharsets.US_ASCII);
      Path file = folder.resolve("own.raw.csv");
      bench.record(
          file, progress -> progress.readings() >= SENT.size() + 1, () -> write(line, bytes));
      List<RawRow> rows = DeviceBench.rows(file, "load");
      assertThat(rows.subList(1, rows.size()))
          .extracting(row -> new String(row.received(), StandardCharsets.US_ASCII))
          .isEqualTo(SENT);
      // lbf, kip and kgf in newtons: NIST SP 811 appendix B.8 (from memory), exact there
      double[] newtons = {4448.2216152605, 12_500, 8896.443230521, 980.665};
      for (int i = 0; i < newtons.length; i++) {
        assertThat(rows.get(i + 1).value()).isCloseTo(newtons[i], Offset.offset(1e-9));
        assertThat(rows.get(i + 1).quality().word()).isEqualTo("ok");
      }
      assertThat(rows.get(SENT.size()).quality().word()).isEqualTo("garbled");
    }
  }

  private static void write(PseudoTerminal line, byte[] bytes) {
    try {
      line.write(bytes, 0, bytes.length);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }
}
