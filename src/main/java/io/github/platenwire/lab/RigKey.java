package io.github.platenwire.lab;

import java.security.PrivateKey;
import java.util.HexFormat;

/**
 * A key that a rig's register is signed by. Immutable.
 *
 * @param name the file that holds the public part, without ending: {@code frame-1}, {@code
 *     frame-1~2} …
 * @param publicHex the public part, 64 hex digits
 * @param secret the private part
 */
public record RigKey(String name, String publicHex, PrivateKey secret) {
  String sign(byte[] message) {
    return HexFormat.of().formatHex(Ed25519.sign(secret, message));
  }

  /** Says which key it is, and never what it is. */
  @Override
  public String toString() {
    return "RigKey " + name + " " + PrivateKeys.fingerprint(publicHex);
  }
}
