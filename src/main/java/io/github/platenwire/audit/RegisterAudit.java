package io.github.platenwire.audit;

import io.github.platenwire.audit.RegisterBook.Entry;
import io.github.platenwire.audit.RegisterBook.RigRegister;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.PrivateKeys;
import io.github.platenwire.lab.Register;
import io.github.platenwire.lab.RegisterCheck;
import io.github.platenwire.lab.RegisterLine;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Audits the registers by themselves: form, chain, signatures, keys, times, and what a binder says
 * of them. Confined to one thread.
 */
final class RegisterAudit {
  private static final int MOST_LINES = 10;

  private final AuditContext context;
  private final Set<String> confirmedKeys;
  private final Map<String, Findings> byRig = new TreeMap<>();
  private final List<RigRegister> registers = new ArrayList<>();

  /**
   * Audits registers.
   *
   * @param confirmedKeys fingerprints that a person has on paper; empty if none were given
   */
  RegisterAudit(AuditContext context, Set<String> confirmedKeys) {
    this.context = context;
    this.confirmedKeys = confirmedKeys;
  }

  /** Reads every register. */
  RegisterBook read() throws IOException {
    for (String rig : context.lab().registerNames()) {
      read(rig, byRig.computeIfAbsent(rig, name -> new Findings()));
    }
    return new RegisterBook(registers);
  }

  /** The findings of one rig's register. */
  List<Finding> findings(String rig) {
    return byRig.containsKey(rig) ? byRig.get(rig).list() : List.of();
  }

  private void read(String rig, Findings findings) {
    LabFolder lab = context.lab();
    Path path = Register.file(lab, rig);
    String file = context.relative(path);
    Map<String, String> keys = keys(rig, findings);
    try {
      RegisterCheck check = RegisterCheck.of(path, rig, keys);
      RigRegister register = new RigRegister(rig, file, check);
      registers.add(register);
      lines(file, check, !keys.isEmpty(), findings);
      newKeys(register, keys, findings);
      confirmed(register, findings);
      times(register, findings);
    } catch (IOException e) {
      findings.add(
          RawCheck.UNREADABLE, Location.of(file), "a register", String.valueOf(e.getMessage()));
    }
  }

  private Map<String, String> keys(String rig, Findings findings) {
    Location location = Location.of("keys/" + rig + ".pub");
    try {
      Map<String, String> keys = RegisterCheck.keys(context.lab().keysFolder(), rig);
      if (keys.isEmpty()) {
        findings.add(
            RegisterLineCheck.KEY_UNREADABLE, location, "the rig's public key", "no such file");
      }
      return keys;
    } catch (LabException e) {
      findings.add(
          RegisterLineCheck.KEY_UNREADABLE,
          location,
          "the rig's public key",
          String.valueOf(e.getMessage()));
      return Map.of();
    }
  }

  /** One finding for each kind of fault: the first line in full, the others by number. */
  private static void lines(
      String file, RegisterCheck check, boolean keysKnown, Findings findings) {
    for (RegisterCheck.Kind kind : RegisterCheck.Kind.values()) {
      List<RegisterCheck.Finding> found =
          check.findings().stream().filter(finding -> finding.kind() == kind).toList();
      if (!found.isEmpty() && (keysKnown || kind != RegisterCheck.Kind.KEY)) {
        findings.add(
            checkOf(kind),
            Location.of(file, found.get(0).line()),
            expected(kind),
            found.get(0).words() + others(found));
      }
    }
  }

  private static String others(List<RegisterCheck.Finding> found) {
    if (found.size() == 1) {
      return "";
    }
    List<String> lines =
        found.stream().skip(1).limit(MOST_LINES).map(f -> String.valueOf(f.line())).toList();
    return "; also line "
        + String.join(", ", lines)
        + (found.size() > MOST_LINES + 1
            ? " and " + (found.size() - MOST_LINES - 1) + " more"
            : "");
  }

  private static Check checkOf(RegisterCheck.Kind kind) {
    return switch (kind) {
      case FORM -> RegisterLineCheck.REGISTER_LINE_DAMAGED;
      case CHAIN -> RegisterLineCheck.REGISTER_CHAIN_BROKEN;
      case KEY -> RegisterLineCheck.REGISTER_KEY_UNKNOWN;
      case SIGNATURE -> RegisterLineCheck.REGISTER_SIGNATURE_WRONG;
      case TORN -> RegisterLineCheck.REGISTER_TORN;
    };
  }

  private static String expected(RegisterCheck.Kind kind) {
    return switch (kind) {
      case FORM -> "a register line";
      case CHAIN -> "a line of this rig, one number up, tied to the line before it";
      case KEY -> "a key of the rig";
      case SIGNATURE -> "a signature over the line";
      case TORN -> "whole lines only";
    };
  }

  private void newKeys(RigRegister register, Map<String, String> keys, Findings findings) {
    Set<String> named = new HashSet<>(Set.of(register.rig()));
    for (RegisterLine line : register.check().newKeys()) {
      named.add(line.test());
      String fingerprint = PrivateKeys.fingerprint(line.publicKey());
      if (confirmedKeys.isEmpty()) {
        findings.add(
            RegisterLineCheck.KEY_ENROLLED,
            Location.of(register.file(), line.number()),
            "the key that the rig had",
            "a new key, " + line.test() + ", fingerprint " + fingerprint + ", at " + line.time());
      }
    }
    keys.keySet().stream()
        .filter(name -> !named.contains(name))
        .forEach(
            name ->
                findings.add(
                    RegisterLineCheck.KEY_ENROLLED,
                    Location.of("keys/" + name + ".pub"),
                    "a key that the register names",
                    "no line of the register names it"));
  }

  private void confirmed(RigRegister register, Findings findings) {
    Set<String> told = new HashSet<>();
    for (RegisterLine line : register.check().lines()) {
      String fingerprint = PrivateKeys.fingerprint(line.publicKey());
      if (!confirmedKeys.isEmpty()
          && !confirmedKeys.contains(fingerprint)
          && told.add(fingerprint)) {
        findings.add(
            RegisterLineCheck.KEY_NOT_CONFIRMED,
            Location.of(register.file(), line.number()),
            "one of the fingerprints given with --key",
            fingerprint + ", from this line on");
      }
    }
  }

  private static void times(RigRegister register, Findings findings) {
    Instant before = Instant.MIN;
    for (Entry entry : RegisterBook.entries(register)) {
      Instant time = entry.line().time();
      if (time.isBefore(before)) {
        findings.add(
            RegisterLineCheck.REGISTER_TIME_BACKWARD,
            entry.location(),
            "a time after " + before,
            String.valueOf(time));
      }
      before = time;
    }
  }
}
