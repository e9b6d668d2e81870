package io.github.platenwire.lab;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Keys as text (RFC 7468), as other programs read them too. Stateless. */
final class Pem {
  static final String PUBLIC = "PUBLIC KEY";
  static final String PRIVATE = "PRIVATE KEY";

  private Pem() {}

  static String write(String label, byte[] bytes) {
    String body =
        Base64.getMimeEncoder(64, "\n".getBytes(StandardCharsets.US_ASCII)).encodeToString(bytes);
    return "-----BEGIN " + label + "-----\n" + body + "\n-----END " + label + "-----\n";
  }

  /** The bytes; empty if the text is nothing of the kind. */
  static Optional<byte[]> read(String label, String text) {
    Matcher parts =
        Pattern.compile(
                "\\s*-----BEGIN "
                    + label
                    + "-----([A-Za-z0-9+/=\\s]*)-----END "
                    + label
                    + "-----\\s*")
            .matcher(text);
    try {
      return parts.matches()
          ? Optional.of(Base64.getMimeDecoder().decode(parts.group(1)))
          : Optional.empty();
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }
}
