package io.github.platenwire.device;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every file in {@code devices/} is loaded and decodes lines such as its comments show. */
class ShippedDefinitionTest {
  /** Streams by definition, and what must be found in them. */
  private static final Map<String, Map.Entry<String, List<String>>> SAMPLES =
      new TreeMap<>(
          Map.of(
              "signed-line-lbf",
              Map.entry(
                  "+  1234.5 lbf\r\n-    12.0 LB\r\n+5.5 kN\r\n",
                  List.of("1234.5 lbf ok", "-12.0 lbf ok", "5.5 kN ok")),
              "signed-line-kn",
              Map.entry(
                  "+  123.45 kN\r\n+27752.0 lbf\r\n------ kN\r\n",
                  List.of("123.45 kN suspect", "27752.0 lbf ok", "NaN kN over")),
              "plain-number-kn",
              Map.entry("  123.45\r\n-0.05\n", List.of("123.45 kN suspect", "-0.05 kN ok")),
              "status-line-kn",
              Map.entry(
                  "f\r\nST,+00123.4,kN\r\nUS,+00123.9,kN\r\nOL,-------,kN\r\n",
                  List.of("garbled", "123.4 kN ok", "123.9 kN unstable", "NaN kN over")),
              "gauge-line-mm",
              Map.entry("+0.1234 mm\r-0.0021 mm\r\n", List.of("0.1234 mm ok", "-0.0021 mm ok")),
              "gauge-line-mm-comma",
              Map.entry("+0,1234 mm\r+0.1234 mm\r", List.of("0.1234 mm ok", "garbled")),
              "gauge-line-in",
              Map.entry("+.00485 in\r+0.123 mm\r", List.of("0.00485 in ok", "0.123 mm ok")),
              "two-gauges-line-mm",
              Map.entry(
                  "+0.1234;+0.1187\r\n+0.1235;-0.0001\r\n",
                  List.of(
                      "0.1234 mm suspect", "0.1187 mm suspect", "0.1235 mm ok", "-1.0E-4 mm ok"))));

  /** The same for the definitions whose devices are asked or send packed bytes. */
  private static final Map<String, Map.Entry<String, List<String>>> MORE_SAMPLES =
      Map.of(
          "strain-line",
          Map.entry(
              "+0123.4 um/m\r\n-0012.5 UM/M\r\n0012.5 um/m\r\n",
              List.of("123.4 µm/m ok", "-12.5 µm/m ok", "garbled")),
          "query-line-n",
          Map.entry(
              "+1.23450E+03\n-2.50000E+00\n+9.9E+37\n",
              List.of("1234.5 N suspect", "-2.5 N ok", "NaN N over")),
          "query-line-n-mm",
          Map.entry(
              "+1.234500E+03,+2.50000E-01\n-2.5E+00,-1.0E-03\n",
              List.of("1234.5 N suspect", "0.25 mm suspect", "-2.5 N ok", "-0.001 mm ok")),
          "binary-load",
          Map.entry(
              Hex.latin1("02 00 39 30 00 00 97 02 02 FF FF FF 7F 82"),
              List.of("1234.5 N ok", "NaN N over")),
          "registers-load",
          Map.entry(Hex.latin1("11 04 04 30 39 00 00 35 48"), List.of("1234.5 N ok")),
          "binary-load-and-gauge",
          Map.entry(
              Hex.latin1("AA 55 00 00 30 39 00 00 09 C4 00 81 C7"),
              List.of("1234.5 N ok", "250.0 µm ok")),
          "typed-length",
          Map.entry(
              "\n>45.2 mm;\n>1.78 in; after 5700 s\n>45.8 mm; for 12\n45.8\n",
              List.of("45.2 mm ok", "1.78 in ok", "45.8 mm ok", "garbled")),
          "typed-mass",
          Map.entry(
              "\n>1543.21 g;\n>1.54321 kg; for 2\n", List.of("1543.21 g ok", "1.54321 kg ok")),
          "registers-load-and-gauge",
          Map.entry(
              Hex.latin1("01 03 08 44 9A 50 00 00 00 09 C4 A1 8E"),
              List.of("1234.5 N ok", "250.0 µm ok")));

  static {
    SAMPLES.putAll(MORE_SAMPLES);
  }

  private static List<String> shipped() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("devices"))) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(".toml"))
          .map(name -> name.substring(0, name.length() - ".toml".length()))
          .sorted()
          .toList();
    }
  }

  @Test
  void shippedFolder_everyDefinition_hasASample() throws IOException {
    assertThat(shipped()).containsExactlyElementsOf(SAMPLES.keySet());
  }

  @Test
  void parse_everyShippedDefinition_isNamedAsItsFile() throws IOException {
    for (String name : shipped()) {
      assertThat(Definitions.shipped(name).name()).isEqualTo(name);
    }
  }

  @Test
  void decode_sampleOfEveryShippedDefinition_givesItsReadings() {
    SAMPLES.forEach(
        (name, sample) ->
            assertThat(Frames.of(Definitions.shipped(name), sample.getKey()).found)
                .as(name)
                .extracting(found -> found.replaceAll("(?s).* -> (\\d: )?", ""))
                .containsExactlyElementsOf(sample.getValue()));
  }

  /** The comment of each file shows what is sent; the very same line must be decoded. */
  @Test
  void decode_lineOfEveryComment_isNotGarbled() throws IOException {
    for (String name : shipped()) {
      if (!(Definitions.shipped(name) instanceof LineDefinition)) {
        continue;
      }
      List<String> sent =
          Files.readAllLines(Path.of("devices", name + ".toml")).stream()
              .filter(line -> line.startsWith("#   sent:  "))
              .map(line -> line.substring("#   sent:  ".length(), line.indexOf(" read:")).strip())
              .toList();
      assertThat(sent).as(name).isNotEmpty();
      for (String line : sent) {
        assertThat(Frames.of(Definitions.shipped(name), line + "\r\n").found)
            .as(name)
            .allSatisfy(found -> assertThat(found).doesNotContain("garbled"));
      }
    }
  }

  /** The worked example of the guide: its definition, what is sent, and what is read. */
  @Test
  void guide_workedExample_isTrue() throws IOException {
    String guide = Files.readString(Path.of("devices", "README.md"));
    String definition = block(guide, "toml");
    List<String> rows = block(guide, "text").lines().filter(row -> row.contains("→")).toList();
    assertThat(rows).hasSizeGreaterThan(5);
    FrameDecoder decoder = Definitions.parse(definition).newDecoder();
    for (String row : rows) {
      String[] sides = row.split("→", -1);
      Frames frames = new Frames();
      Frames.feed(decoder, sides[0].strip().replace("␍", "\r").replace("␊", "\n"), frames);
      assertThat(
              frames.found.stream()
                  .map(found -> found.replaceAll("(?s).* -> (\\d: )?", ""))
                  .toList())
          .as(row)
          .containsExactlyElementsOf(
              sides[1].strip().equals("nothing") ? List.of() : List.of(sides[1].strip()));
    }
  }

  private static String block(String guide, String language) {
    int from = guide.indexOf("```" + language + "\n") + language.length() + 4;
    return guide.substring(from, guide.indexOf("```", from));
  }
}
