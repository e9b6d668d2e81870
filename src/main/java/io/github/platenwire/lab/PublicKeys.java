package io.github.platenwire.lab;

import io.github.platenwire.record.DurableFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.spec.InvalidKeySpecException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The public parts of a rig's keys in a folder: {@code RIG.pub}, then {@code RIG~2.pub}, {@code
 * RIG~3.pub} … in the order in which they were enrolled; no rig's name has a {@code ~}. Immutable.
 */
final class PublicKeys {
  private final Path folder;
  private final String rig;

  PublicKeys(Path folder, String rig) {
    this.folder = folder;
    this.rig = rig;
  }

  /**
   * Every key by its name, the first first.
   *
   * @throws LabException if a file holds no key
   */
  Map<String, String> all() throws LabException {
    Map<String, String> keys = new LinkedHashMap<>();
    for (int number = 1; ; number++) {
      Optional<String> key = read(name(number));
      if (key.isEmpty()) {
        return keys;
      }
      keys.put(name(number), key.get());
    }
  }

  /** The name that the next key will have. */
  String nextName() throws LabException {
    return name(all().size() + 1);
  }

  /** Puts a key's public part into the folder; its name must not be taken. */
  void add(String name, String publicHex) throws IOException {
    Files.createDirectories(folder);
    byte[] encoded;
    try {
      encoded = Ed25519.publicKey(HexFormat.of().parseHex(publicHex)).getEncoded();
    } catch (InvalidKeySpecException e) {
      throw new IllegalArgumentException("no Ed25519 public key, publicHex=" + publicHex, e);
    }
    DurableFile.create(
        file(name), Pem.write(Pem.PUBLIC, encoded).getBytes(StandardCharsets.US_ASCII));
  }

  private String name(int number) {
    return number == 1 ? rig : rig + "~" + number;
  }

  Path file(String name) {
    return folder.resolve(name + ".pub");
  }

  private Optional<String> read(String name) throws LabException {
    Path file = file(name);
    try {
      byte[] encoded =
          Pem.read(Pem.PUBLIC, Files.readString(file, StandardCharsets.ISO_8859_1))
              .orElseThrow(InvalidKeySpecException::new);
      return Optional.of(HexFormat.of().formatHex(Ed25519.raw(encoded)));
    } catch (NoSuchFileException e) {
      return Optional.empty();
    } catch (InvalidKeySpecException e) {
      throw new LabException(
          file + ": holds no Ed25519 public key; put back a copy of it, such as from a backup", e);
    } catch (IOException e) {
      throw new LabException(file + ": cannot be read (" + e + ")", e);
    }
  }
}
