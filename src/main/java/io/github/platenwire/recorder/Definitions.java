package io.github.platenwire.recorder;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.lab.Calibration;
import io.github.platenwire.method.Method;
import io.github.platenwire.toml.TomlException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Methods, device definitions and calibrations as raw files keep them, read once for each text: the
 * records of an archive hold the same few over and over, and reading one takes longer than a
 * thousand rows. What is kept is immutable. Safe for any threads.
 */
public final class Definitions {
  /** More different texts than a lab has in years; beyond it nothing is remembered any more. */
  private static final int MOST = 256;

  private static final Map<Text, Method> METHODS = new ConcurrentHashMap<>();
  private static final Map<Text, DeviceDefinition> DEVICES = new ConcurrentHashMap<>();
  private static final Map<Text, Calibration> CALIBRATIONS = new ConcurrentHashMap<>();

  private Definitions() {}

  private record Text(String text, String name) {}

  @FunctionalInterface
  private interface Reading<T> {
    T of(String text, String name) throws TomlException;
  }

  static Method method(String text, String name) throws TomlException {
    return read(METHODS, new Text(text, name), Method::parse);
  }

  static DeviceDefinition device(String text, String name) throws TomlException {
    return read(DEVICES, new Text(text, name), DeviceDefinition::parse);
  }

  /**
   * The calibration that a head keeps.
   *
   * @param text its file's text
   * @param name its file's name
   * @throws TomlException if it is none
   */
  public static Calibration calibration(String text, String name) throws TomlException {
    return read(
        CALIBRATIONS, new Text(text, name), (kept, file) -> Calibration.parse(kept, file, file));
  }

  private static <T> T read(Map<Text, T> known, Text key, Reading<T> reading) throws TomlException {
    T found = known.get(key);
    if (found == null) {
      found = reading.of(key.text(), key.name());
      if (known.size() < MOST) {
        known.put(key, found);
      }
    }
    return found;
  }
}
