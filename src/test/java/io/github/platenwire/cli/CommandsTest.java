package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.emulate.PseudoTerminal;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

@Timeout(120)
class CommandsTest {
  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "init", "record", "observe", "listen", "probe", "device", "emulate", "demo", "audit",
        "report", "compare", "study", "bench"
      })
  void help_everyCommand_showsExamples(String command) {
    StringWriter out = new StringWriter();
    CommandLine line = Platenwire.commandLine().setOut(new PrintWriter(out));
    assertThat(line.execute(command, "--help")).isZero();
    assertThat(out.toString()).contains("Examples:", "platenwire " + command);
  }

  @Test
  void version_anyBuild_namesProgramAndCommit() {
    StringWriter out = new StringWriter();
    Platenwire.commandLine().setOut(new PrintWriter(out)).execute("--version");
    assertThat(out.toString())
        .matches("platenwire \\d+\\.\\d+\\.\\d+ \\([0-9a-f]{7,}(, changed since)?\\)\\R");
  }

  @Test
  void commandLineFor_anyCommand_saysTheSameAsTheWholeOne() {
    for (String name : Platenwire.commandLine().getSubcommands().keySet()) {
      assertThat(usage(Platenwire.commandLineFor(name, "--help"), name, "--help"))
          .as(name)
          .isEqualTo(usage(Platenwire.commandLine(), name, "--help"))
          .contains("platenwire " + name);
    }
    assertThat(Platenwire.commandLineFor("audit", "x").getSubcommands()).containsOnlyKeys("audit");
    assertThat(Platenwire.commandLineFor("--version").getSubcommands()).isEmpty();
    assertThat(Platenwire.commandLineFor("--help").getSubcommands())
        .hasSameSizeAs(Platenwire.commandLine().getSubcommands());
    assertThat(Platenwire.commandLineFor("recrod").getSubcommands()).containsKey("record");
  }

  private static String usage(CommandLine line, String... args) {
    StringWriter out = new StringWriter();
    assertThat(line.setOut(new PrintWriter(out)).execute(args)).isZero();
    return out.toString();
  }

  @Test
  void completion_bash_knowsTheCommands() {
    StringWriter out = new StringWriter();
    Platenwire.commandLine().setOut(new PrintWriter(out)).execute("generate-completion");
    assertThat(out.toString()).contains("complete").contains("record").contains("--unattended");
  }

  @Test
  void misspeltCommand_anything_isOneLineWithASuggestionAndExits2() {
    StringWriter err = new StringWriter();
    int code = Platenwire.commandLine().setErr(new PrintWriter(err)).execute("recrod");
    assertThat(code).isEqualTo(2);
    assertThat(err.toString()).contains("recrod").contains("record");
  }

  @Test
  void init_newFolder_makesALabThatCommandsAccept() throws Exception {
    Path lab = folder.resolve("lab");
    Ran init = Ran.of("init", lab, "--units", "inch-pound", "--zone", "America/Denver");
    assertThat(init.exitCode()).as(init.err()).isZero();
    assertThat(Files.readString(lab.resolve("lab.toml"))).contains("inch-pound", "America/Denver");
    Ran record = Ran.of("record", "NOBODY", "--lab", lab);
    assertThat(record.exitCode()).isEqualTo(2);
    assertThat(record.err()).contains("NOBODY");
  }

  @Test
  void init_wrongZone_exits2() throws Exception {
    Ran init = Ran.of("init", folder.resolve("lab"), "--zone", "Moon/Base");
    assertThat(init.exitCode()).isEqualTo(2);
    assertThat(init.err()).contains("Moon/Base");
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void listen_definition_showsDecodedReadingsAndKeepsTheBytes() throws Exception {
    Path log = folder.resolve("bench.bytes");
    try (PseudoTerminal line = PseudoTerminal.open();
        Program listen =
            Program.start(
                "listen",
                line.path(),
                "--device",
                "signed-line-lbf",
                "--seconds",
                "3",
                "--save",
                log)) {
      Feeder.start(line, Collections.nCopies(2000, 12_345), 100);
      assertThat(listen.awaitExit()).as(listen.err()).isZero();
      assertThat(listen.out())
          .contains("+0012345 lbf")
          .contains("load = 12345 lbf")
          .contains("jitter", "0 of them garbled (0 %)");
    }
    assertThat(Files.readString(log, StandardCharsets.UTF_8)).contains("+0012345 lbf");
    Ran replay = Ran.of("listen", "replay:" + log, "--device", "signed-line-lbf", "--seconds", "1");
    assertThat(replay.exitCode()).isZero();
    assertThat(replay.out()).contains("load = 12345 lbf");
  }

  @Test
  void listen_withoutDefinition_showsHexAndText() throws Exception {
    Path log = folder.resolve("bench.bytes");
    Files.writeString(log, "# platenwire-bytes 1\n0 +0012345 lbf\\x0D\\x0A\n");
    Ran listen = Ran.of("listen", "replay:" + log, "--seconds", "0.5");
    assertThat(listen.exitCode()).as(listen.err()).isZero();
    assertThat(listen.out()).contains("2B 30 30 31 32 33 34 35").contains("+0012345 lbf··");
  }

  @Test
  void listen_unknownDevice_listsThoseThereAre() throws Exception {
    Ran listen = Ran.of("listen", "replay:nothing", "--device", "signed-lin-lbf");
    assertThat(listen.exitCode()).isEqualTo(2);
    assertThat(listen.err()).contains("signed-line-lbf");
  }

  @Test
  void emulate_tcp_isRecordedAsTheTruthItPrints() throws Exception {
    try (Program emulate =
        Program.start(
            "emulate",
            "--on",
            "tcp://127.0.0.1:45331",
            "--strength",
            "6",
            "--idle",
            "3",
            "--load-rate",
            "1",
            "--seed",
            "3")) {
      emulate.awaitLine(line -> line.startsWith("Waiting for somebody"));
      Path lab = TestLab.make(folder.resolve("lab"), "tcp://127.0.0.1:45331");
      Ran record = Ran.of("record", TestLab.SPECIMEN, "--lab", lab, "--unattended");
      assertThat(record.exitCode()).as(record.err() + record.out()).isZero();
      emulate.awaitExit();
      assertThat(emulate.out()).contains("True strength 6.0 MPa (870 psi)").contains("bytes");
      // The emulated cylinder is 100 mm, the table says 4 in: 6.0 MPa there are 5.81 MPa (843 psi)
      // here.
      assertThat(record.out()).contains("5.8 MPa");
    }
  }
}
