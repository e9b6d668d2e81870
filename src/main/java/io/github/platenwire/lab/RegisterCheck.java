package io.github.platenwire.lab;

import io.github.platenwire.record.Digests;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Reads a register and holds it against itself and the rig's public keys: form, numbers, chain,
 * keys, signatures. What was cut off its end shows only against something outside: a witness on
 * paper or in a later summary ({@link #knowsWitness}), a shared copy, or records without a line.
 * Immutable; reads only.
 *
 * @param file the register
 * @param lines the lines that have the right form, in file order
 * @param findings what is not as it should be; empty if all is well
 */
public record RegisterCheck(Path file, List<RegisterLine> lines, List<Finding> findings) {
  /** Makes the lists immutable. */
  public RegisterCheck {
    lines = List.copyOf(lines);
    findings = List.copyOf(findings);
  }

  /**
   * Something that is not as it should be.
   *
   * @param kind what of the line
   * @param line the line in the file, from 1
   * @param words what was expected and what was seen
   */
  public record Finding(Kind kind, long line, String words) {}

  /** What of a line is not as it should be. */
  public enum Kind {
    /** It has not the one right form. */
    FORM,
    /** It stands in the wrong place or the wrong register, or is tied to another line. */
    CHAIN,
    /** The key that it names is none of the rig's. */
    KEY,
    /** Its signature does not go with it. */
    SIGNATURE,
    /** It was never finished. */
    TORN
  }

  /**
   * Checks one rig's register.
   *
   * @throws LabException if a public key's file holds no key
   * @throws IOException if the register cannot be read
   */
  public static RegisterCheck of(LabFolder lab, String rig) throws LabException, IOException {
    return of(Register.file(lab, rig), rig, new PublicKeys(lab.keysFolder(), rig).all());
  }

  /**
   * Checks a register's lines against keys that are known from elsewhere.
   *
   * @param file the register
   * @param rig the rig's name
   * @param keys the rig's public keys, 64 hex digits each, by the name of the file that holds them
   * @throws IOException if the register cannot be read
   */
  public static RegisterCheck of(Path file, String rig, Map<String, String> keys)
      throws IOException {
    Walk walk = new Walk(rig, keys);
    List<String> texts = RegisterFile.wholeLines(file);
    // A signature takes about a millisecond: by far the most of it, and each stands for itself.
    List<Signed> lines = texts.parallelStream().map(Signed::of).toList();
    lines.forEach(walk::next);
    int torn = RegisterFile.tornBytes(file);
    if (torn > 0) {
      walk.find(Kind.TORN, texts.size() + 1L, torn + " bytes of a line that was never finished");
    }
    return new RegisterCheck(file, walk.lines, walk.findings);
  }

  /**
   * The public keys of a rig in a folder, by the name of the file that holds them, the first first.
   *
   * @param folder such as {@link LabFolder#keysFolder}
   * @throws LabException if a file holds no key
   */
  public static Map<String, String> keys(Path folder, String rig) throws LabException {
    return new PublicKeys(folder, rig).all();
  }

  /**
   * The whole lines of a register as they stand, good or not; empty if there is no such file.
   *
   * @throws IOException if it cannot be read
   */
  public static List<String> texts(Path file) throws IOException {
    return RegisterFile.wholeLines(file);
  }

  /** Whether a witness, 16 hex digits, is that of one of the lines. */
  public boolean knowsWitness(String witness) {
    return lines.stream().anyMatch(line -> line.witness().equals(witness));
  }

  /** The lines by which the rig was given another key. */
  public List<RegisterLine> newKeys() {
    return lines.stream().filter(line -> line.kind() == RegisterLine.Kind.KEY).toList();
  }

  /** The witness of the last line; empty if there is none. */
  public Optional<String> head() {
    return lines.isEmpty() ? Optional.empty() : Optional.of(lines.get(lines.size() - 1).witness());
  }

  /** A line and whether its signature goes with it. */
  private record Signed(String text, Optional<RegisterLine> line, boolean good) {
    static Signed of(String text) {
      Optional<RegisterLine> line = RegisterLine.parse(text);
      return new Signed(text, line, line.map(Signed::isGood).orElse(false));
    }

    private static boolean isGood(RegisterLine line) {
      HexFormat hex = HexFormat.of();
      return Ed25519.isSigned(
          hex.parseHex(line.publicKey()), line.signedBytes(), hex.parseHex(line.signature()));
    }
  }

  /** Goes from line to line. */
  private static final class Walk {
    private final String rig;
    private final Map<String, String> keys;
    private final Set<String> valid = new HashSet<>();
    private final List<RegisterLine> lines = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();
    private String previous = RegisterLine.NO_LINE;
    private long at;

    Walk(String rig, Map<String, String> keys) {
      this.rig = rig;
      this.keys = keys;
      Optional.ofNullable(keys.get(rig)).ifPresent(valid::add);
    }

    void find(Kind kind, long line, String words) {
      findings.add(new Finding(kind, line, words));
    }

    void next(Signed signed) {
      at++;
      if (signed.line().isEmpty()) {
        find(Kind.FORM, at, "this is no register line: " + signed.text());
        previous = Digests.sha256Hex(signed.text().getBytes(StandardCharsets.ISO_8859_1));
        return;
      }
      RegisterLine line = signed.line().get();
      place(line);
      key(line, signed.good());
      lines.add(line);
      previous = line.sha256();
    }

    private void place(RegisterLine line) {
      if (!line.rig().equals(rig)) {
        find(Kind.CHAIN, at, "the line belongs to rig '" + line.rig() + "', not to '" + rig + "'");
      }
      if (line.number() != at) {
        find(Kind.CHAIN, at, "the line should have number " + at + ", but has " + line.number());
      }
      if (!line.previousSha256().equals(previous)) {
        find(
            Kind.CHAIN,
            at,
            "the line is tied to a line with sha256="
                + line.previousSha256()
                + ", but the one before it has "
                + previous);
      }
    }

    private void key(RegisterLine line, boolean signed) {
      if (line.kind() == RegisterLine.Kind.KEY && line.publicKey().equals(keys.get(line.test()))) {
        valid.add(line.publicKey());
      }
      if (!valid.contains(line.publicKey())) {
        find(
            Kind.KEY,
            at,
            "signed by a key that is not the rig's: fingerprint "
                + PrivateKeys.fingerprint(line.publicKey()));
      }
      if (!signed) {
        find(Kind.SIGNATURE, at, "the signature does not go with the line");
      }
    }
  }
}
