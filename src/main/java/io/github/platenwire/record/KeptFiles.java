package io.github.platenwire.record;

import io.github.platenwire.record.RawHeader.KeptFile;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The files that a raw file's head keeps word for word. The records of an archive keep the same few
 * over and over, and reading them takes longer than thousands of rows, so that what was read last
 * is remembered by its text. Immutable; safe for any threads.
 *
 * @param method the method
 * @param rig the rig
 * @param devices device definitions by name
 * @param calibrations calibrations by name
 */
record KeptFiles(
    KeptFile method,
    KeptFile rig,
    Map<String, KeptFile> devices,
    Map<String, KeptFile> calibrations) {
  /** The tables that they stand in. */
  static final String[] KEYS = {"method", "rig", "device", "calibration"};

  /** Some megabytes; beyond it nothing is remembered any more. */
  private static final int MOST = 128;

  private static final Map<String, KeptFiles> KNOWN = new ConcurrentHashMap<>();

  KeptFiles {
    devices = Map.copyOf(devices);
    calibrations = Map.copyOf(calibrations);
  }

  /**
   * From the part of a head that holds nothing else.
   *
   * @param source for messages
   */
  static KeptFiles of(String text, String source) throws TomlException {
    KeptFiles known = KNOWN.get(text);
    if (known != null) {
      return known;
    }
    TomlSection root = TomlSection.parse(text, source);
    root.allow(KEYS);
    KeptFiles read = of(root);
    if (KNOWN.size() < MOST) {
      KNOWN.put(text, read);
    }
    return read;
  }

  /** From a document that holds other things too. */
  static KeptFiles of(TomlSection root) throws TomlException {
    return new KeptFiles(
        kept(root.section("method")),
        kept(root.section("rig")),
        byName(root.sections("device")),
        byName(root.sections("calibration")));
  }

  private static Map<String, KeptFile> byName(List<TomlSection> sections) throws TomlException {
    Map<String, KeptFile> files = new HashMap<>();
    for (TomlSection section : sections) {
      KeptFile file = kept(section);
      files.put(file.name(), file);
    }
    return files;
  }

  private static KeptFile kept(TomlSection section) throws TomlException {
    section.allow("name", "text");
    return new KeptFile(section.string("name"), section.string("text"));
  }
}
