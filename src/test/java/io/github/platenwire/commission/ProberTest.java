package io.github.platenwire.commission;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.InMemoryPort;
import io.github.platenwire.port.LineSettings;
import io.github.platenwire.port.PortException;
import io.github.platenwire.reading.SystemClocks;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class ProberTest {
  private static final long LISTEN_NANOS = TimeUnit.MILLISECONDS.toNanos(40);

  private final List<String> written = new ArrayList<>();
  private final List<LineSettings> opened = new ArrayList<>();

  private static List<DeviceDefinition> shipped(String... names) throws Exception {
    List<DeviceDefinition> all = new ArrayList<>();
    for (String name : names) {
      all.add(DeviceDefinition.parse(Files.readString(Path.of("devices", name + ".toml")), name));
    }
    return all;
  }

  private static ProbePlan plan(boolean ask, String... names) throws Exception {
    List<DeviceDefinition> definitions = shipped(names);
    return new ProbePlan(definitions, ProbePlan.allSettings(definitions), LISTEN_NANOS, ask);
  }

  /** A port that says something at one speed, and answers each request with an answer. */
  private InMemoryPort port(LineSettings settings, int baud, String said, String answer) {
    opened.add(settings);
    InMemoryPort[] self = new InMemoryPort[1];
    self[0] =
        new InMemoryPort(
            "test",
            1000,
            bytes -> {
              written.add(new String(bytes, StandardCharsets.ISO_8859_1));
              say(self[0], answer);
            });
    say(self[0], settings.baud() == baud ? said : said.isEmpty() ? "" : "\u00FE\u0081\u00E0\0");
    return self[0];
  }

  private static void say(InMemoryPort port, String text) {
    if (text.isEmpty()) {
      return;
    }
    try {
      port.offer(
          new Chunk(text.getBytes(StandardCharsets.ISO_8859_1), SystemClocks.monotonic().nanos()));
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
  }

  private ProbeResult probe(ProbePlan plan, int baud, String said, String answer) throws Exception {
    return new Prober(plan, SystemClocks.monotonic(), (step, steps, words) -> {})
        .probe(settings -> () -> port(settings, baud, said, answer));
  }

  @Test
  void probe_oneSpeedOfMany_isFoundWithItsDefinition() throws Exception {
    String said = "+0001.23 kN\r\n".repeat(20);
    ProbeResult result =
        probe(plan(true, "signed-line-lbf", "signed-line-kn", "query-line-n"), 38_400, said, "");
    // both lines carry their unit, so both definitions read it; the one stated in kN goes first
    assertThat(result.fits()).hasSize(2);
    ProbeFit fit = result.fits().get(0);
    assertThat(fit.definition().name()).isEqualTo("signed-line-kn");
    assertThat(fit.settings().baud()).isEqualTo(38_400);
    assertThat(fit.report().share()).isEqualTo(1);
    assertThat(fit.report().readings()).isNotEmpty();
    assertThat(written).as("a port that speaks is not asked").isEmpty();
  }

  @Test
  void probe_notTold_neverWrites() throws Exception {
    ProbeResult result = probe(plan(false, "query-line-n", "registers-load"), 9600, "", "+1E3\n");
    assertThat(result.fits()).isEmpty();
    assertThat(result.bytes()).isZero();
    assertThat(written).isEmpty();
    assertThat(opened).as("silent at one speed is silent at all").hasSize(1);
  }

  @Test
  void probe_toldToAsk_sendsReadRequestsOnly() throws Exception {
    ProbeResult result = probe(plan(true, "query-line-n"), 9600, "", "+1.23E+03\n");
    assertThat(result.fits()).hasSize(1);
    assertThat(result.fits().get(0).asked()).isTrue();
    assertThat(written).isNotEmpty().allMatch(request -> request.equals("READ?\n"));
  }

  @Test
  void probe_unknownLines_keepsWhatLooksMostLikeText() throws Exception {
    ProbeResult result =
        probe(plan(false, "signed-line-kn"), 4800, "load is 12 of 40\r\n".repeat(9), "");
    assertThat(result.fits()).isEmpty();
    assertThat(result.readable().map(LineSettings::baud)).contains(4800);
    assertThat(result.heard()).startsWith("load is 12");
  }

  @Test
  void probe_portThatRefusesEverySetting_saysWhy() throws Exception {
    ProbePlan plan = plan(true, "signed-line-kn");
    Prober prober = new Prober(plan, SystemClocks.monotonic(), (step, steps, words) -> {});
    assertThatThrownBy(
            () ->
                prober.probe(
                    settings ->
                        () -> {
                          throw new PortException(PortException.Reason.UNUSABLE, "no such speed");
                        }))
        .isInstanceOf(PortException.class)
        .hasMessage("no such speed");
  }

  @Test
  void probe_settingThatTheAdapterCannotDo_isLeftOut() throws Exception {
    ProbeResult result =
        new Prober(
                plan(false, "signed-line-kn"), SystemClocks.monotonic(), (step, steps, words) -> {})
            .probe(
                settings ->
                    () -> {
                      if (settings.parity() != LineSettings.Parity.NONE) {
                        throw new PortException(PortException.Reason.UNUSABLE, "no parity");
                      }
                      return port(settings, 19_200, "+0001.23 kN\r\n".repeat(9), "");
                    });
    assertThat(result.fits()).hasSize(1);
  }
}
