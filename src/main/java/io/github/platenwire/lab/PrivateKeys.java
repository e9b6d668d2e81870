package io.github.platenwire.lab;

import io.github.platenwire.record.Digests;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.spec.InvalidKeySpecException;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;

/**
 * The folder in which this machine's user keeps the private parts of the rigs' keys, outside every
 * lab folder: {@code FINGERPRINT.key}, readable by its owner only (mode 0600) where the file system
 * knows of owners. Safe for any thread.
 */
public final class PrivateKeys {
  private static final int FINGERPRINT_DIGITS = 16;
  private static final String ENDING = ".key";

  private final Path folder;

  /** Keys in a folder; it is made when the first key is. */
  public PrivateKeys(Path folder) {
    this.folder = folder.toAbsolutePath().normalize();
  }

  /**
   * Where a user's keys are kept if nobody says otherwise: {@code PLATENWIRE_KEYS} if it is set;
   * else {@code platenwire/keys} in the user's folder for settings, which is {@code APPDATA} on
   * Windows, {@code XDG_CONFIG_HOME} where it is set, and {@code .config} in the home folder
   * elsewhere.
   *
   * @param environment the process's environment
   * @param home the user's home folder
   */
  public static Path usualFolder(Map<String, String> environment, Path home) {
    String said = environment.getOrDefault("PLATENWIRE_KEYS", "");
    if (!said.isBlank()) {
      return Path.of(said);
    }
    for (String variable : new String[] {"XDG_CONFIG_HOME", "APPDATA"}) {
      String settings = environment.getOrDefault(variable, "");
      if (!settings.isBlank()) {
        return Path.of(settings).resolve("platenwire").resolve("keys");
      }
    }
    return home.resolve(".config").resolve("platenwire").resolve("keys");
  }

  /** The folder, absolute. */
  public Path folder() {
    return folder;
  }

  /** A short name for a key: the first 16 hex digits of the SHA-256 of its 32 public bytes. */
  public static String fingerprint(String publicHex) {
    return Digests.sha256Hex(HexFormat.of().parseHex(publicHex)).substring(0, FINGERPRINT_DIGITS);
  }

  /**
   * The key of a public part.
   *
   * @param name see {@link RigKey#name}
   * @return empty if the private part is not on this machine
   * @throws IOException if it is there but cannot be read
   */
  Optional<RigKey> find(String name, String publicHex) throws IOException {
    Path file = file(publicHex);
    if (!Files.isRegularFile(file)) {
      return Optional.empty();
    }
    Optional<byte[]> encoded = Pem.read(Pem.PRIVATE, Files.readString(file));
    try {
      RigKey key =
          new RigKey(
              name,
              publicHex,
              Ed25519.privateKey(encoded.orElseThrow(InvalidKeySpecException::new)));
      byte[] trial = publicHex.getBytes(StandardCharsets.US_ASCII);
      byte[] signature = HexFormat.of().parseHex(key.sign(trial));
      if (Ed25519.isSigned(HexFormat.of().parseHex(publicHex), trial, signature)) {
        return Optional.of(key);
      }
    } catch (InvalidKeySpecException e) {
      throw new IOException(file + ": holds no Ed25519 private key; put back a copy of it", e);
    }
    throw new IOException(file + ": holds another key than its name says; put back a copy of it");
  }

  /**
   * Makes a key and keeps its private part.
   *
   * @throws IOException if it cannot be kept
   */
  RigKey make(String name) throws IOException {
    KeyPair pair = pair();
    String publicHex;
    try {
      publicHex = HexFormat.of().formatHex(Ed25519.raw(pair.getPublic().getEncoded()));
    } catch (InvalidKeySpecException e) {
      throw new IllegalStateException("Java writes public keys as RFC 8410 says", e);
    }
    write(file(publicHex), Pem.write(Pem.PRIVATE, pair.getPrivate().getEncoded()));
    return new RigKey(name, publicHex, pair.getPrivate());
  }

  private static KeyPair pair() {
    try {
      return KeyPairGenerator.getInstance("Ed25519").generateKeyPair();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("Java 17 has Ed25519", e);
    }
  }

  private void write(Path file, String text) throws IOException {
    boolean owners = folder.getFileSystem().supportedFileAttributeViews().contains("posix");
    if (owners) {
      Files.createDirectories(
          folder,
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
      Files.createFile(
          file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
    } else {
      Files.createDirectories(folder);
      Files.createFile(file);
    }
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      ByteBuffer bytes = StandardCharsets.US_ASCII.encode(text);
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
      channel.force(true);
    }
  }

  private Path file(String publicHex) {
    return folder.resolve(fingerprint(publicHex) + ENDING);
  }
}
