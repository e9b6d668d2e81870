package io.github.platenwire.device;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;

/** Bytes in hexadecimal digits, blanks between them or not. */
final class Hex {
  private Hex() {}

  static byte[] bytes(String hex) {
    return HexFormat.of().parseHex(hex.replace(" ", ""));
  }

  /** As text of one character a byte, which {@link Frames} takes. */
  static String latin1(String hex) {
    return new String(bytes(hex), StandardCharsets.ISO_8859_1);
  }
}
