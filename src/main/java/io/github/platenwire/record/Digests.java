package io.github.platenwire.record;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4) as the records use it. Stateless. */
public final class Digests {
  private static final int PIECE_BYTES = 1 << 16;

  private Digests() {}

  /** A fresh SHA-256. */
  public static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** The digest of some bytes as 64 lower-case hex digits. */
  public static String sha256Hex(byte[] bytes) {
    return HexFormat.of().formatHex(sha256().digest(bytes));
  }

  /** The digest of a file, read piece by piece. */
  public static String sha256Hex(Path file) throws IOException {
    MessageDigest digest = sha256();
    byte[] piece = new byte[PIECE_BYTES];
    try (InputStream in = Files.newInputStream(file)) {
      for (int count = in.read(piece); count >= 0; count = in.read(piece)) {
        digest.update(piece, 0, count);
      }
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  /** The digest over what was put in so far, which goes on afterwards. */
  static String hexSoFar(MessageDigest digest) {
    return HexFormat.of().formatHex(copyOf(digest).digest());
  }

  /** A second digest in the same state. */
  static MessageDigest copyOf(MessageDigest digest) {
    try {
      return (MessageDigest) digest.clone();
    } catch (CloneNotSupportedException e) {
      throw new IllegalStateException("Java's SHA-256 can be cloned", e);
    }
  }
}
