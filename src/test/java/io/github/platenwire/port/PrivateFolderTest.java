package io.github.platenwire.port;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

@EnabledOnOs({OS.LINUX, OS.MAC})
class PrivateFolderTest {
  private static final byte[] CONTENT = {1, 2, 3, 4};

  @TempDir Path temp;
  private Path base;

  @BeforeEach
  void resolveLinks() throws IOException {
    base = temp.toRealPath();
  }

  private static void setMode(Path path, String mode) throws IOException {
    Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(mode));
  }

  private static String mode(Path path) throws IOException {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
  }

  @Test
  void claim_notThereYet_madeForOwnerOnly() throws IOException {
    PrivateFolder folder = PrivateFolder.claim(base.resolve("cache/platenwire/native"));

    assertThat(mode(folder.path())).isEqualTo("rwx------");
    assertThat(mode(folder.path().getParent())).isEqualTo("rwx------");
    assertThat(folder.path()).isEmptyDirectory();
  }

  @Test
  void claim_openToOthers_isClosedToThem() throws IOException {
    Path open = Files.createDirectory(base.resolve("native"));
    setMode(open, "rwxrwxrwx");

    PrivateFolder.claim(open);

    assertThat(mode(open)).isEqualTo("rwx------");
  }

  @Test
  void claim_othersMayWriteFurtherUp_refused() throws IOException {
    Path open = Files.createDirectory(base.resolve("shared"));
    setMode(open, "rwxrwxrwx");

    assertThatThrownBy(() -> PrivateFolder.claim(open.resolve("platenwire/native")))
        .isInstanceOf(IOException.class)
        .hasMessage(open + " can be written by other users");
  }

  @Test
  void claim_belongsToAnotherUser_refused() throws IOException {
    Path foreign = Files.createDirectory(base.resolve("foreign"));
    assumeTrue(
        Integer.valueOf(0).equals(Files.getAttribute(base, "unix:uid")),
        "only the administrator can give a folder away");
    Files.setAttribute(foreign, "unix:uid", 65534);

    assertThatThrownBy(() -> PrivateFolder.claim(foreign))
        .isInstanceOf(IOException.class)
        .hasMessage(foreign + " belongs to another user");
    assertThatThrownBy(() -> PrivateFolder.claim(foreign.resolve("below")))
        .isInstanceOf(IOException.class)
        .hasMessage(foreign + " belongs to another user, uid=65534");
  }

  @Test
  void claim_pathIsAFile_refused() throws IOException {
    Path file = Files.createFile(base.resolve("native"));

    assertThatThrownBy(() -> PrivateFolder.claim(file)).isInstanceOf(IOException.class);
  }

  @Test
  void install_firstTime_ownerMayReadAndRun() throws IOException {
    PrivateFolder folder = PrivateFolder.claim(base.resolve("native"));

    Path file = folder.install("Linux/x/lib.so", CONTENT);

    assertThat(file).isEqualTo(folder.path().resolve("Linux/x/lib.so")).hasBinaryContent(CONTENT);
    assertThat(mode(file)).isEqualTo("r-x------");
    assertThat(file.getParent()).isDirectoryContaining(path -> path.equals(file));
    try (var inside = Files.list(file.getParent())) {
      assertThat(inside).containsExactly(file);
    }
  }

  @Test
  void install_sameAlready_fileIsLeft() throws IOException {
    PrivateFolder folder = PrivateFolder.claim(base.resolve("native"));
    Path file = folder.install("lib.so", CONTENT);
    Object before = Files.getAttribute(file, "unix:ino");

    folder.install("lib.so", CONTENT);

    assertThat(Files.getAttribute(file, "unix:ino")).isEqualTo(before);
  }

  @Test
  void install_otherBytesThere_areReplaced() throws IOException {
    PrivateFolder folder = PrivateFolder.claim(base.resolve("native"));
    Files.write(folder.path().resolve("lib.so"), new byte[] {4, 3, 2, 1});

    Path file = folder.install("lib.so", CONTENT);

    assertThat(file).hasBinaryContent(CONTENT);
  }

  @Test
  void install_linkThere_isReplacedNotFollowed() throws IOException {
    PrivateFolder folder = PrivateFolder.claim(base.resolve("native"));
    Path elsewhere = Files.write(base.resolve("elsewhere"), CONTENT);
    Files.createSymbolicLink(folder.path().resolve("lib.so"), elsewhere);

    Path file = folder.install("lib.so", CONTENT);

    assertThat(Files.isSymbolicLink(file)).isFalse();
    assertThat(file).hasBinaryContent(CONTENT);
  }
}
