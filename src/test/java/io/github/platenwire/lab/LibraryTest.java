package io.github.platenwire.lab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Definitions of the lab and of a program packed as a jar, as a user has it. */
class LibraryTest {
  private static final String SHIPPED = "io/github/platenwire/shipped/";

  @TempDir private Path dir;
  private URLClassLoader program;
  private Library<Thing> library;

  record Thing(String name, String origin) {}

  private static Thing read(String text, String source) throws TomlException {
    return new Thing(TomlSection.parse(text, source).string("name"), source);
  }

  @BeforeEach
  void makeJar() throws IOException {
    Path jar = dir.resolve("program.jar");
    try (OutputStream file = Files.newOutputStream(jar);
        JarOutputStream out = new JarOutputStream(file)) {
      // a jar made by Maven lists its folders, too
      out.putNextEntry(new JarEntry(SHIPPED + "things/"));
      put(out, SHIPPED + "things/shipped-a.toml", "name = \"shipped-a\"");
      put(out, SHIPPED + "things/both.toml", "name = \"both\"");
      put(out, SHIPPED + "things/wrong.toml", "name = 1");
      put(out, SHIPPED + "things/deep/below.toml", "name = \"below\"");
      put(out, SHIPPED + "things/README.txt", "no definition");
    }
    program = new URLClassLoader(new URL[] {jar.toUri().toURL()}, null);
    Path lab = Files.createDirectories(dir.resolve("lab/things"));
    Files.writeString(lab.resolve("own.toml"), "name = \"own\"");
    Files.writeString(lab.resolve("both.toml"), "\uFEFFname = \"both\"");
    Files.writeString(lab.resolve("other.toml"), "name = \"another\"");
    Files.write(lab.resolve("latin.toml"), "#\n# \u00FC".getBytes(StandardCharsets.ISO_8859_1));
    Files.writeString(lab.resolve("own.toml~"), "left by an editor");
    library =
        new Library<>(
            "thing",
            dir.resolve("lab"),
            "things",
            "things",
            new Shipped(program),
            LibraryTest::read,
            Thing::name);
  }

  private static void put(JarOutputStream out, String name, String text) throws IOException {
    out.putNextEntry(new JarEntry(name));
    out.write(text.getBytes(StandardCharsets.UTF_8));
  }

  @AfterEach
  void close() throws IOException {
    program.close();
  }

  @Test
  void names_labAndProgram_listsBothOnce() {
    assertThat(library.names())
        .containsExactly("both", "latin", "other", "own", "shipped-a", "wrong");
  }

  @Test
  void find_ownShippedAndBoth_labComesFirst() throws LabException {
    assertThat(library.find("own").origin()).isEqualTo("things/own.toml");
    assertThat(library.find("shipped-a").origin()).isEqualTo("shipped things/shipped-a.toml");
    assertThat(library.find("both").origin()).isEqualTo("things/both.toml");
  }

  private void assertRefused(String name, String message) {
    assertThatThrownBy(() -> library.find(name))
        .isInstanceOf(LabException.class)
        .hasMessage(message);
  }

  @Test
  void find_unknown_saysWhatThereIs() {
    assertRefused(
        "shiped-a",
        "there is no thing 'shiped-a', neither as things/shiped-a.toml in the lab folder nor"
            + " shipped with Platenwire; did you mean 'shipped-a'?");
    assertRefused(
        "qqqq",
        "there is no thing 'qqqq', neither as things/qqqq.toml in the lab folder nor shipped with"
            + " Platenwire; there are: both, latin, other, own, shipped-a, wrong");
    assertRefused(
        "OWN",
        "there is no thing 'OWN', neither as things/OWN.toml in the lab folder nor shipped with"
            + " Platenwire; did you mean 'own'?");
  }

  @Test
  void find_pathOutOfTheFolder_isUnknown() {
    assertThatThrownBy(() -> library.find("deep/below"))
        .hasMessageStartingWith("there is no thing 'deep/below'");
    assertThatThrownBy(() -> library.find("../things/own"))
        .hasMessageStartingWith("there is no thing '../things/own'");
  }

  @Test
  void find_wrongText_saysFileLineAndColumn() {
    assertRefused(
        "wrong",
        "shipped things/wrong.toml:1:1: 'name' must be a text in double quotes, but it is 1");
    assertRefused(
        "other",
        "things/other.toml: the name in the file is 'another', but the file is called other.toml;"
            + " the two must be the same");
    assertRefused(
        "latin", "things/latin.toml:2: a letter here is not UTF-8; save the file as UTF-8 text");
  }
}
