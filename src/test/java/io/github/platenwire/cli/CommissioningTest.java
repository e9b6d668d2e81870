package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.platenwire.device.DeviceDefinition;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** An unknown device on the bench: heard, drafted, checked; and those that are known found. */
@Timeout(180)
class CommissioningTest {
  private static final Pattern PATH = Pattern.compile("/dev/\\S+");

  @TempDir Path folder;

  private Path unknownLog() throws Exception {
    StringBuilder text = new StringBuilder("# platenwire-bytes 1\n");
    for (int i = 0; i < 40; i++) {
      text.append(
          String.format(
              Locale.ROOT,
              "%d 10:%02d:07;%05d;%7.2f LB;%c\\x0D\\x0A\n",
              i * 50_000,
              i,
              200 + i,
              -3 + i * 1.7,
              i % 9 == 4 ? 'U' : 'S'));
    }
    return Files.writeString(folder.resolve("unknown.bytes"), text);
  }

  @Test
  void deviceNew_unknownLog_isCommentedAndPassesItsOwnCheck() throws Exception {
    Path log = unknownLog();
    Path file = folder.resolve("bench.toml");
    Ran made =
        Ran.of(
            "device",
            "new",
            "--name",
            "bench",
            "--sample",
            log,
            "--out",
            file,
            "--unattended",
            "--baud",
            "19200",
            "--format",
            "7E1");
    assertThat(made.exitCode()).as(made.err() + made.out()).isZero();
    String text = Files.readString(file);
    assertThat(text).contains("# Inferred from 40 lines", "# passed over: a running number");
    DeviceDefinition definition = DeviceDefinition.parse(text, "bench.toml");
    assertThat(definition.lineSettings().baud()).isEqualTo(19_200);
    assertThat(definition.valueFields().get(0).unit().symbol()).isEqualTo("lbf");
    Ran check = Ran.of("device", "check", file, "--sample", log);
    assertThat(check.exitCode()).as(check.err() + check.out()).isZero();
    assertThat(check.out()).contains("40 frames decoded", "Everything was decoded");
    Ran again = Ran.of("device", "new", "--name", "bench", "--sample", log, "--out", file);
    assertThat(again.exitCode()).isEqualTo(2);
    assertThat(again.err()).contains("never overwritten");
    assertThat(Files.readString(file)).isEqualTo(text);
  }

  @Test
  void deviceCheck_damagedLine_saysWhereAndWhyAndEndsWithOne() throws Exception {
    Path log = Files.writeString(folder.resolve("a.bin"), "+0000001 lbf\r\n+0000002 lbX\r\n");
    Ran check = Ran.of("device", "check", "signed-line-lbf", "--sample", log);
    assertThat(check.exitCode()).isEqualTo(1);
    assertThat(check.out())
        .contains("1 frame decoded", "+0000002 lbX", "byte 25: the layout ends here");
    Ran json = Ran.of("device", "check", "signed-line-lbf", "--sample", log, "--json");
    assertThat(json.exitCode()).isEqualTo(1);
    JsonNode node = new ObjectMapper().readTree(json.out());
    assertThat(node.path("undecoded").get(0).path("offset").asInt()).isEqualTo(14);
    assertThat(node.path("undecoded").get(0).path("fault_offset").asInt()).isEqualTo(25);
  }

  @Test
  void deviceCommands_fileThatIsNotThere_sayWhichAndEndWith2() {
    Path sample = folder.resolve("gone.bin");
    Path toml = folder.resolve("gone.toml");
    assertUsage("gone.bin", "device", "check", "signed-line-kn", "--sample", sample);
    assertUsage("gone.bin", "device", "new", "--name", "x", "--sample", sample, "--unattended");
    assertUsage("gone.toml", "device", "check", toml, "--sample", Path.of("pom.xml"));
    assertUsage("gone.toml", "listen", "tcp://127.0.0.1:1", "--device", toml);
  }

  private static void assertUsage(String file, Object... args) {
    StringWriter err = new StringWriter();
    int code =
        Platenwire.commandLine()
            .setErr(new PrintWriter(err))
            .execute(Arrays.stream(args).map(String::valueOf).toArray(String[]::new));
    assertThat(code).as(err.toString()).isEqualTo(ExitCode.USAGE);
    assertThat(err.toString()).contains("there is no file").contains(file);
  }

  @Test
  void deviceNew_noUnitInTheLine_saysWhichOptionAnswers() throws Exception {
    Path log = Files.writeString(folder.resolve("a.bin"), " 1.50\r\n 2.25\r\n 3.75\r\n 4.00\r\n");
    Path file = folder.resolve("x.toml");
    Object[] args = {
      "device", "new", "--name", "x", "--sample", log, "--out", file, "--unattended"
    };
    Ran made = Ran.of(args);
    assertThat(made.exitCode()).isEqualTo(2);
    assertThat(made.err()).contains("--unit UNIT");
    assertThat(file).doesNotExist();
    Object[] told = Arrays.copyOf(args, args.length + 2);
    told[args.length] = "--unit";
    told[args.length + 1] = "kN";
    assertThat(Ran.of(told).exitCode()).isZero();
  }

  @Test
  void deviceCheck_wrongKey_givesLineAndColumn() throws Exception {
    Path log = unknownLog();
    String text =
        Files.readString(Path.of("devices", "signed-line-kn.toml"))
            .replace("terminator =", "terminater =");
    Path file = Files.writeString(folder.resolve("wrong.toml"), text);
    Ran check = Ran.of("device", "check", file, "--sample", log);
    assertThat(check.exitCode()).isEqualTo(2);
    int line = 1 + (int) text.substring(0, text.indexOf("terminater")).lines().count() - 1;
    assertThat(check.err())
        .containsPattern("wrong\\.toml:" + (line + 1) + ":1: .*terminater.*terminator");
  }

  private static Program emulator(String layout) throws Exception {
    Program emulator = Program.start("emulate", "--on", "pty", "--layout", layout, "--idle", "100");
    emulator.awaitLine(text -> PATH.matcher(text).find());
    return emulator;
  }

  private static String path(Program emulator) {
    Matcher matcher = PATH.matcher(emulator.out());
    assertThat(matcher.find()).isTrue();
    return matcher.group();
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void listen_deviceThatMustBeAsked_isAskedAndThatIsSaid() throws Exception {
    try (Program emulator = emulator("query-gauge")) {
      Path log = folder.resolve("asked.bytes");
      Ran listen =
          Ran.of(
              "listen", path(emulator), "--device", "query-line-n-mm", "--for", "2", "--save", log);
      assertThat(listen.exitCode()).as(listen.err()).isZero();
      assertThat(listen.out())
          .contains("This writes to the device", "READ?", "identity:", "load = ", "gauge = ");
      Ran replay = Ran.of("listen", "replay:" + log, "--device", "query-line-n-mm", "--json");
      assertThat(replay.exitCode()).as(replay.err()).isZero();
      JsonNode summary = new ObjectMapper().readTree(replay.out());
      assertThat(summary.path("channels").get(0).path("readings").asInt()).isGreaterThan(5);
      assertThat(summary.path("channels").get(1).path("jitter_s").isNumber()).isTrue();
    }
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void listen_interrupted_sumsUpAndKeepsTheLog() throws Exception {
    Path log = folder.resolve("cut.bytes");
    try (Program emulator = emulator("status-kn");
        Program listen =
            Program.start(
                "listen", path(emulator), "--device", "status-line-kn", "--hex", "--save", log)) {
      listen.awaitLine(text -> text.contains("53 54 2C 2B"));
      listen.awaitLine(text -> text.contains("load = "));
      new ProcessBuilder("kill", "-INT", Long.toString(listen.process().pid())).start().waitFor();
      assertThat(listen.awaitExit()).isEqualTo(130);
      assertThat(listen.out()).contains("jitter ms").contains("of them garbled");
    }
    assertThat(Ran.of("device", "check", "status-line-kn", "--sample", log).exitCode()).isZero();
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void probe_emulatedDevices_findsEachByItsDefinition() throws Exception {
    try (Program spoken = emulator("status-kn");
        Program asked = emulator("query")) {
      Ran probe = Ran.of("probe", path(spoken), path(asked), "/dev/nosuch", "--ask", "--json");
      assertThat(probe.exitCode()).as(probe.err()).isZero();
      JsonNode ports = new ObjectMapper().readTree(probe.out());
      assertThat(best(ports.get(0))).isEqualTo("status-line-kn");
      assertThat(best(ports.get(1))).isEqualTo("query-line-n");
      assertThat(ports.get(1).path("fits").get(0).path("asked").asBoolean()).isTrue();
      assertThat(ports.get(2).path("failure").asText()).contains("there is no such port");
    }
  }

  private static String best(JsonNode port) {
    return port.path("fits").path(0).path("definition").asText();
  }

  @Test
  void probe_onlyAPortThatIsMissing_endsWithThree() throws Exception {
    Ran probe = Ran.of("probe", "/dev/nosuch");
    assertThat(probe.exitCode()).isEqualTo(3);
    assertThat(probe.out()).contains("Cannot be listened to", "Is the adapter plugged in");
  }

  @Test
  void probe_logOfAnUnknownDevice_saysWhatToDoNext() throws Exception {
    Ran probe = Ran.of("probe", "replay:" + unknownLog());
    assertThat(probe.exitCode()).isEqualTo(1);
    assertThat(probe.out()).contains("no definition fits", "device new");
  }
}
