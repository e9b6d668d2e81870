package io.github.platenwire.port;

import static org.assertj.core.api.Assertions.assertThat;

import com.fazecast.jSerialComm.SerialPort;
import io.github.platenwire.emulate.PseudoTerminal;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Which native libraries a program loads, and in what order it ends; seen from outside it. */
@Timeout(60)
@EnabledOnOs(OS.LINUX)
class SerialLibraryTest {
  @TempDir Path temp;

  /** Puts the serial library where it looks by itself, as another user of the machine could. */
  private Path plant() throws IOException {
    Path planted = temp.resolve("jSerialComm/" + SerialPort.getVersion() + "/libjSerialComm.so");
    Files.createDirectories(planted.getParent());
    for (String resource : NativeLibraries.serialResources()) {
      if (resource.contains(System.getProperty("os.arch").equals("amd64") ? "x86_64" : "v8_64")) {
        try (InputStream in = SerialPort.class.getResourceAsStream("/" + resource)) {
          Files.copy(in, planted);
        }
      }
    }
    return planted.toRealPath();
  }

  private List<String> run(String what, String... options) throws Exception {
    List<String> all = new ArrayList<>(List.of(options));
    all.add("-Djava.io.tmpdir=" + temp.toRealPath());
    all.add("-Duser.home=" + home());
    Process child = SerialChild.start(all, what);
    List<String> heard = SerialChild.allHeard(child);
    assertThat(child.waitFor()).isZero();
    return heard;
  }

  private Path home() throws IOException {
    return Files.createDirectories(temp.toRealPath().resolve("home"));
  }

  @Test
  void load_leftToItself_takesThePlantedLibrary() throws Exception {
    Path planted = plant();

    assertThat(run("careless")).containsExactly("loaded " + planted);
  }

  @Test
  void load_throughPorts_takesOurOwnFromAPrivateFolder() throws Exception {
    plant();

    List<String> heard = run("careful");

    assertThat(heard).startsWith("temporary " + temp.toRealPath(), "home " + home()).hasSize(4);
    for (String loaded : heard.subList(2, 4)) {
      Path library = Path.of(loaded.substring("loaded ".length()));
      assertThat(library.toString()).contains("/platenwire/native/");
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(library)))
          .isEqualTo("r-x------");
      assertThat(Files.getOwner(library)).isEqualTo(Files.getOwner(temp));
    }
  }

  /** The library takes os.arch_full for the processor; there is none of this name in its jar. */
  @Test
  void load_libraryCannotBeLoaded_saysWhatToDoAndLeavesNothingOpen() throws Exception {
    List<String> heard = run("unloadable", "-Dos.arch_full=none");

    assertThat(heard).hasSize(2).allMatch(heard.get(0)::equals);
    assertThat(heard.get(0))
        .startsWith("UNUSABLE the library for serial ports cannot be loaded from ")
        .contains("noexec")
        .contains("XDG_CACHE_HOME")
        .contains("The system said: ")
        .hasSizeLessThan(1_000);
    assertThat(temp.resolve("jSerialComm")).doesNotExist();
    assertThat(home().resolve(".jSerialComm")).doesNotExist();
  }

  @Test
  void shutdown_toldToEnd_recordIsClosedBeforeItsPort() throws Exception {
    try (PseudoTerminal line = PseudoTerminal.open()) {
      Process child = SerialChild.start(List.of(), "open", line.path());
      try (BufferedReader out = child.inputReader(StandardCharsets.UTF_8)) {
        assertThat(SerialChild.heard(out)).isEqualTo("forgot true");
        assertThat(SerialChild.heard(out)).isEqualTo("ready");

        child.toHandle().destroy();

        assertThat(SerialChild.heard(out)).isEqualTo("closing");
        assertThat(SerialChild.heard(out)).isEqualTo("port was open to the end");
        assertThat(SerialChild.heard(out)).isEmpty();
      }
      // 128 + 15: ended by SIGTERM after the hooks (POSIX, common practice)
      assertThat(child.waitFor()).isEqualTo(143);
    }
  }
}
