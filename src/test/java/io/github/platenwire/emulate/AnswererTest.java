package io.github.platenwire.emulate;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.LineSettings;
import io.github.platenwire.port.Link.Pause;
import io.github.platenwire.port.Port;
import io.github.platenwire.port.PortAddress;
import io.github.platenwire.port.Ports;
import io.github.platenwire.reading.SystemClocks;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A device that is asked, behind an emulated serial server. */
@Timeout(30)
class AnswererTest {
  private static SpecimenTruth lasting(double seconds) {
    return new SpecimenTruth() {
      @Override
      public double loadNewtons(long nanos) {
        return 1234.5;
      }

      @Override
      public double gaugeMillimetres(long nanos) {
        return 0.25;
      }

      @Override
      public long endNanos() {
        return (long) (seconds * 1e9);
      }
    };
  }

  private static CompletableFuture<Boolean> start(Answerer answerer, AskedFrame frame) {
    CompletableFuture<Boolean> finished = new CompletableFuture<>();
    Thread thread =
        new Thread(
            () -> {
              try {
                finished.complete(answerer.answer(frame, SystemClocks.monotonic(), () -> {}));
              } catch (Exception e) {
                finished.completeExceptionally(e);
              }
            },
            "answers");
    thread.setDaemon(true);
    thread.start();
    return finished;
  }

  @Test
  void answer_askedOverTcp_answersEachQueryUntilTheTestIsOver() throws Exception {
    String text = Files.readString(Path.of("devices", "query-line-n-mm.toml"));
    DeviceDefinition device = DeviceDefinition.parse(text, "query-line-n-mm.toml");
    AskedFrame frame =
        Voice.QUERY_GAUGE.asked(lasting(1), Voice.QUERY_GAUGE.indicator(200_000, 10), 3);
    List<String> answers = new ArrayList<>();
    try (TcpOutlet outlet = TcpOutlet.listen(0)) {
      CompletableFuture<Boolean> finished = start(new Answerer(outlet), frame);
      try (Port port =
          device
              .asking()
              .orElseThrow()
              .opener(
                  Ports.opener(
                      PortAddress.parse("tcp://" + outlet.address()),
                      LineSettings.COMMON,
                      SystemClocks.monotonic()),
                  SystemClocks.monotonic(),
                  Pause.REAL)
              .open()) {
        while (!finished.isDone()) {
          Optional<Chunk> chunk = port.read();
          chunk.ifPresent(c -> answers.add(new String(c.bytes(), StandardCharsets.US_ASCII)));
        }
      }
      assertThat(finished.get(10, TimeUnit.SECONDS)).isTrue();
    }
    assertThat(answers.get(0)).isEqualTo("Platenwire,emulated load frame,3,1\n");
    assertThat(answers.subList(1, answers.size()))
        .isNotEmpty()
        .allMatch(answer -> answer.equals("+1.234500E+03,+2.50000E-01\n"));
    assertThat(frame.sent().linesSent()).isGreaterThanOrEqualTo(answers.size() - 1);
  }

  @Test
  void stop_nobodyAsks_endsSoon() throws Exception {
    AskedFrame frame = Voice.QUERY.asked(lasting(60), Voice.QUERY.indicator(200_000, 10), 3);
    try (TcpOutlet outlet = TcpOutlet.listen(0)) {
      Answerer answerer = new Answerer(outlet);
      CompletableFuture<Boolean> finished = start(answerer, frame);
      answerer.stop();
      assertThat(finished.get(10, TimeUnit.SECONDS)).isFalse();
    }
    assertThat(frame.sent().linesSent()).isZero();
  }
}
