package io.github.platenwire.lab;

import io.github.platenwire.record.Digests;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One line of a register. Its text has one form only, told in {@code src/docs/register-format.md},
 * so that every byte of it counts. Immutable.
 *
 * @param rig the rig whose register it stands in
 * @param number 1, 2, 3 … without a hole
 * @param time when the line was made, UTC
 * @param kind what it tells of
 * @param test the test's id; for a key the name of the file that holds it, without ending
 * @param rawSha256 of the raw file, 64 hex digits; empty for a key
 * @param summarySha256 of the summary file, 64 hex digits; empty for a key
 * @param previousSha256 of the line before, without its line feed; 64 zeros for the first
 * @param publicKey the raw public key that the line is signed by, 64 hex digits
 * @param signature Ed25519 (RFC 8032) over {@link #signedBytes}, 128 hex digits
 */
public record RegisterLine(
    String rig,
    long number,
    Instant time,
    Kind kind,
    String test,
    String rawSha256,
    String summarySha256,
    String previousSha256,
    String publicKey,
    String signature) {
  /** The format that is written and read. */
  public static final String FORMAT = "platenwire-register 1";

  /** What stands in the place of a line before the first. */
  public static final String NO_LINE = "0".repeat(64);

  /** So many hex digits of a line's digest are printed as the witness. */
  public static final int WITNESS_DIGITS = 16;

  private static final Pattern LINE =
      Pattern.compile(
          "\\{\"format\":\""
              + Pattern.quote(FORMAT)
              + "\",\"rig\":\"([A-Za-z0-9._-]{1,100})\",\"number\":([1-9][0-9]{0,17})"
              + ",\"time\":\"([0-9TZ:.-]{1,40})\",\"kind\":\"([a-z]{1,20})\""
              + ",\"test\":\"([A-Za-z0-9._~-]{1,200})\",\"raw\":\"([0-9a-f]{64}|)\""
              + ",\"summary\":\"([0-9a-f]{64}|)\",\"previous\":\"([0-9a-f]{64})\""
              + ",\"key\":\"([0-9a-f]{64})\",\"signature\":\"([0-9a-f]{128})\"\\}");

  /** What a line tells of. */
  public enum Kind {
    /** A test was closed in order. */
    CLOSE("close"),
    /** An interrupted test was closed afterwards, or registered afterwards. */
    RECOVERED("recovered"),
    /** A new version of a test's summary was made. */
    CORRECTION("correction"),
    /** A new version of a test's summary was made, with observations added. */
    OBSERVATION("observation"),
    /** From this line on the rig signs with another key. */
    KEY("key");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    /** The word in the register. */
    public String word() {
      return word;
    }

    static Optional<Kind> ofWord(String word) {
      return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
    }
  }

  /** A line that is still to be signed: its text up to the signature. */
  static String unsigned(
      String rig,
      long number,
      Instant time,
      Kind kind,
      String test,
      String rawSha256,
      String summarySha256,
      String previousSha256,
      String publicKey) {
    return "{\"format\":\""
        + FORMAT
        + "\",\"rig\":\""
        + rig
        + "\",\"number\":"
        + number
        + ",\"time\":\""
        + time
        + "\",\"kind\":\""
        + kind.word()
        + "\",\"test\":\""
        + test
        + "\",\"raw\":\""
        + rawSha256
        + "\",\"summary\":\""
        + summarySha256
        + "\",\"previous\":\""
        + previousSha256
        + "\",\"key\":\""
        + publicKey
        + "\"";
  }

  /**
   * Reads a line.
   *
   * @param text without line feed
   * @return empty if it has not the one right form
   */
  static Optional<RegisterLine> parse(String text) {
    Matcher parts = LINE.matcher(text);
    if (!parts.matches()) {
      return Optional.empty();
    }
    Optional<Kind> kind = Kind.ofWord(parts.group(4));
    try {
      Instant time = Instant.parse(parts.group(3));
      return kind.map(
              known ->
                  new RegisterLine(
                      parts.group(1),
                      Long.parseLong(parts.group(2)),
                      time,
                      known,
                      parts.group(5),
                      parts.group(6),
                      parts.group(7),
                      parts.group(8),
                      parts.group(9),
                      parts.group(10)))
          .filter(line -> line.text().equals(text));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** The line as it stands in the file, without line feed. */
  public String text() {
    return beforeSignature() + ",\"signature\":\"" + signature + "\"}";
  }

  private String beforeSignature() {
    return unsigned(
        rig, number, time, kind, test, rawSha256, summarySha256, previousSha256, publicKey);
  }

  /** What is signed: the line's text up to, and without, {@code ,"signature":}. */
  public byte[] signedBytes() {
    return beforeSignature().getBytes(StandardCharsets.UTF_8);
  }

  /** SHA-256 of the line without its line feed, 64 hex digits. */
  public String sha256() {
    return Digests.sha256Hex(text().getBytes(StandardCharsets.UTF_8));
  }

  /** The first 16 hex digits of {@link #sha256}, as printed on paper. */
  public String witness() {
    return sha256().substring(0, WITNESS_DIGITS);
  }
}
