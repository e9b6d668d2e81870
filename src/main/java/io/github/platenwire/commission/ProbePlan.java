package io.github.platenwire.commission;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.port.LineSettings;
import io.github.platenwire.port.LineSettings.Flow;
import io.github.platenwire.port.LineSettings.Parity;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * What is tried on a port. Immutable.
 *
 * @param definitions those that are tried
 * @param settings how the line is set in turn, the likeliest first
 * @param listenNanos how long each setting is listened to, at most
 * @param ask whether devices that must be asked may be asked
 */
public record ProbePlan(
    List<DeviceDefinition> definitions,
    List<LineSettings> settings,
    long listenNanos,
    boolean ask) {
  /** Common speeds, the likeliest first; common practice, no source. */
  private static final int[] SPEEDS = {9600, 19200, 115_200, 38_400, 57_600, 4800, 2400, 1200};

  /** Keeps the lists from being changed. */
  public ProbePlan {
    definitions = List.copyOf(definitions);
    settings = List.copyOf(settings);
  }

  /**
   * The settings of all definitions, and the common speeds with 8 data bits and no parity, and with
   * 7 and even parity.
   */
  public static List<LineSettings> allSettings(List<DeviceDefinition> definitions) {
    Set<LineSettings> settings = new LinkedHashSet<>();
    settings.add(LineSettings.COMMON);
    definitions.forEach(definition -> settings.add(definition.lineSettings()));
    for (int speed : SPEEDS) {
      settings.add(new LineSettings(speed, 8, Parity.NONE, 1, Flow.NONE));
      settings.add(new LineSettings(speed, 7, Parity.EVEN, 1, Flow.NONE));
    }
    return new ArrayList<>(settings);
  }
}
