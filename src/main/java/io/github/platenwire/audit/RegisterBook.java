package io.github.platenwire.audit;

import io.github.platenwire.lab.RegisterCheck;
import io.github.platenwire.lab.RegisterLine;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * The registers of all rigs, to be looked up by test. Immutable once made; safe for any threads.
 */
final class RegisterBook {
  private final List<RigRegister> registers;
  private final Map<String, List<Entry>> byTest = new HashMap<>();

  /**
   * One rig's register.
   *
   * @param file relative to the lab folder
   */
  record RigRegister(String rig, String file, RegisterCheck check) {}

  /** One line, with the file that it stands in. */
  record Entry(String rig, String file, RegisterLine line) {
    Location location() {
      return Location.of(file, line.number());
    }

    /** Whether it tells of a test that was closed, in order or afterwards. */
    boolean closes() {
      return line.kind() == RegisterLine.Kind.CLOSE || line.kind() == RegisterLine.Kind.RECOVERED;
    }
  }

  RegisterBook(List<RigRegister> registers) {
    this.registers = List.copyOf(registers);
    for (RigRegister register : registers) {
      for (Entry entry : entries(register)) {
        if (entry.line().kind() != RegisterLine.Kind.KEY) {
          byTest.computeIfAbsent(entry.line().test(), test -> new ArrayList<>()).add(entry);
        }
      }
    }
  }

  List<RigRegister> registers() {
    return registers;
  }

  static List<Entry> entries(RigRegister register) {
    return register.check().lines().stream()
        .map(line -> new Entry(register.rig(), register.file(), line))
        .toList();
  }

  /** Every line of a test, rig by rig in the order of the lines. */
  List<Entry> of(String test) {
    return byTest.getOrDefault(test, List.of());
  }

  /** Every test that any register tells of, sorted. */
  Set<String> tests() {
    return new TreeSet<>(byTest.keySet());
  }

  /** Whether a witness is that of any line. */
  boolean knows(String witness) {
    return registers.stream().anyMatch(register -> register.check().knowsWitness(witness));
  }
}
