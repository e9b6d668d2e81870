package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.platenwire.emulate.Voice;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.recorder.SummaryCheck;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whole tests of devices of every kind, by the two commands as people give them: one emulates on a
 * TCP port, the other records and closes; then the summary is computed again.
 */
@Timeout(240)
class EmulatedKindsTest {
  private static final List<Voice> KINDS =
      List.of(
          Voice.QUERY,
          Voice.BINARY,
          Voice.REGISTERS,
          Voice.QUERY_GAUGE,
          Voice.BINARY_GAUGE,
          Voice.REGISTERS_GAUGE);

  @TempDir Path folder;

  private Path lab(Voice voice, String port) throws Exception {
    String rig =
        """
        format = "platenwire-rig 1"
        name = "frame"
        title = "Test frame"
        """
            + channel("load", "force", "N", voice, port)
            + (voice.hasGauge() ? channel("gauge", "length", "mm", voice, port) : "");
    String specimens =
        """
        specimen,series,shape,diameter_1_mm,diameter_2_mm,length_mm,cast,age_days,ends
        C-1,C,cylinder,100,100,200,2020-01-01 08:00,7,ground
        B-1,B,beam,,,500,2020-01-01 08:00,7,
        """;
    LabTemplate template =
        LabTemplate.example("Test lab", ZoneOffset.UTC, UnitSystem.SI)
            .withRigs(Map.of("frame", rig))
            .withSpecimens(specimens)
            .withFile("devices/" + voice.definition() + ".toml", patient(voice));
    return LabFolder.create(folder.resolve(voice.word()), template).root();
  }

  /** The shipped definition; a busy machine may keep an answer back for longer than a device. */
  private static String patient(Voice voice) throws Exception {
    return Files.readString(Path.of("devices", voice.definition() + ".toml"))
        .replaceFirst("timeout-ms = \\d+", "timeout-ms = 5000");
  }

  private static String channel(
      String name, String quantity, String unit, Voice voice, String port) {
    boolean load = name.equals("load");
    return """
        [[channel]]
        name = "%s"
        quantity = "%s"
        unit = "%s"
        port = "%s"
        device = "%s"
        %s
        range = %s
        zero-tolerance = %s
        late-after-ms = 2000
        """
        .formatted(
            name,
            quantity,
            unit,
            port,
            voice.definition(),
            voice.hasGauge() ? "field = \"" + name + "\"" : "",
            load ? "[-5000, 500000]" : "[-5, 5]",
            load ? "500" : "4");
  }

  /** Emulates and records one test; gives the raw file. */
  private Path record(Voice voice) throws Exception {
    String place = "tcp://127.0.0.1:" + freePort();
    List<String> emulate =
        new ArrayList<>(List.of("emulate", "--on", place, "--layout", voice.word()));
    emulate.addAll(
        voice.hasGauge()
            ? List.of("--beam", "--idle", "4", "--crack-load", "9000")
            : List.of("--strength", "8", "--load-rate", "4", "--idle", "4"));
    Thread device = new Thread(() -> execute(emulate), "emulates-" + voice.word());
    device.setDaemon(true);
    device.start();
    Path lab = lab(voice, place);
    int exit =
        execute(
            List.of(
                "record",
                voice.hasGauge() ? "B-1" : "C-1",
                "--method",
                voice.hasGauge() ? "split-beam" : "compression-cylinder-c39",
                "--lab",
                lab.toString(),
                "--keys",
                folder.resolve("keys-" + voice.word()).toString(),
                "--unattended",
                "--give-up",
                "2"));
    assertThat(exit).as(voice.word()).isIn(ExitCode.FINE, ExitCode.NOT_MET, ExitCode.DEVICE);
    return TestLab.only(lab, ".raw.csv");
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }

  private static int execute(List<String> command) {
    return Platenwire.commandLine().execute(command.toArray(String[]::new));
  }

  private Map<Voice, Path> recordAll(List<Voice> voices) throws Exception {
    ExecutorService pool = Executors.newFixedThreadPool(voices.size());
    try {
      Map<Voice, CompletableFuture<Path>> running = new EnumMap<>(Voice.class);
      for (Voice voice : voices) {
        running.put(
            voice,
            CompletableFuture.supplyAsync(
                () -> {
                  try {
                    return record(voice);
                  } catch (Exception e) {
                    throw new AssertionError(voice + ": " + e.getMessage(), e);
                  }
                },
                pool));
      }
      Map<Voice, Path> done = new EnumMap<>(Voice.class);
      for (Voice voice : voices) {
        done.put(voice, running.get(voice).get(200, TimeUnit.SECONDS));
      }
      return done;
    } finally {
      pool.shutdown();
    }
  }

  private static JsonNode result(JsonNode summary, String name) {
    for (JsonNode result : summary.path("results")) {
      if (result.path("name").asText().equals(name)) {
        return result;
      }
    }
    throw new AssertionError("no result " + name + " in " + summary.path("results"));
  }

  private static void assertEqual(Voice voice, Path raw) throws Exception {
    SummaryCheck check = SummaryCheck.of(raw);
    assertThat(check.rowDifferences()).as(voice.word()).isEmpty();
    assertThat(check.versions()).as(voice.word()).hasSize(1);
    assertThat(check.versions().get(0).differences()).as(voice.word()).isEmpty();
    assertThat(check.isEqual()).as(voice.word()).isTrue();
    List<Quality> bad = new ArrayList<>();
    try (RawFileReader reader = RawFileReader.open(raw)) {
      reader.readRows(
          row -> {
            if (row.quality() == Quality.GARBLED) {
              bad.add(row.quality());
            }
          });
    }
    assertThat(bad).as(voice.word()).isEmpty();
  }

  /** 8 MPa on 100 mm: 8 π 100² / 4 = 62 832 N. */
  @Test
  void reduce_wholeTestOnEveryKindOfDevice_isEqualDoubleForDouble() throws Exception {
    for (Map.Entry<Voice, Path> test : recordAll(KINDS).entrySet()) {
      Voice voice = test.getKey();
      assertEqual(voice, test.getValue());
      JsonNode summary = new ObjectMapper().readTree(LabFolder.summaryOf(test.getValue()).toFile());
      if (voice.hasGauge()) {
        assertThat(summary.path("results").toString())
            .as(voice.word())
            .contains("width-at-3000-lbf");
      } else {
        assertThat(result(summary, "peak-load").path("value").asDouble())
            .as(voice.word())
            .isCloseTo(62.832, Percentage.withPercentage(2));
      }
    }
  }
}
