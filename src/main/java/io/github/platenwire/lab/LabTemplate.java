package io.github.platenwire.lab;

import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.toml.TomlText;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The files with which a new lab folder begins. Immutable; every change gives a new template. The
 * texts are not checked here: whoever opens the lab meets their errors.
 */
public final class LabTemplate {
  private static final String EXAMPLE_RIG = "frame-1";

  private static final List<String> SHIPPED =
      List.of(
          LabFolder.SETTINGS,
          LabFolder.SPECIMENS,
          LabFolder.STUDY,
          "devices/README.txt",
          "calibrations/README.txt",
          "records/README.txt",
          "register/README.txt");

  private final SortedMap<String, String> files;

  private LabTemplate(SortedMap<String, String> files) {
    this.files = files;
  }

  /**
   * The commented example: one rig, two specimens, a study of four series.
   *
   * @param labName the lab's name, as printed on reports
   * @param zone the time zone in which cast times are written and times are shown
   * @param unitsFirst which system of units is shown first
   */
  public static LabTemplate example(String labName, ZoneId zone, UnitSystem unitsFirst) {
    SortedMap<String, String> files = new TreeMap<>();
    for (String path : SHIPPED) {
      files.put(path, shipped("config/lab/" + path));
    }
    files.put(rigPath(EXAMPLE_RIG), shipped("config/" + rigPath(EXAMPLE_RIG)));
    String settings = shipped("config/lab/" + LabFolder.SETTINGS);
    settings = withValue(settings, "name", labName);
    settings = withValue(settings, "zone", zone.getId());
    settings = withValue(settings, "units-first", unitsFirst.word());
    files.put(LabFolder.SETTINGS, settings);
    return new LabTemplate(files);
  }

  /**
   * These rigs in place of those that the template has.
   *
   * @param texts each rig's file text by the rig's name
   */
  public LabTemplate withRigs(Map<String, String> texts) {
    SortedMap<String, String> changed = new TreeMap<>(files);
    changed.keySet().removeIf(path -> path.startsWith(LabFolder.RIGS + "/"));
    texts.forEach((name, text) -> changed.put(rigPath(name), text));
    return new LabTemplate(changed);
  }

  /** Another specimen table. */
  public LabTemplate withSpecimens(String text) {
    return withFile(LabFolder.SPECIMENS, text);
  }

  /** Another study. */
  public LabTemplate withStudy(String text) {
    return withFile(LabFolder.STUDY, text);
  }

  /**
   * One more file, or another text for a file that the template has.
   *
   * @param path below the lab folder, with slashes, such as {@code calibrations/cell-1.toml}
   * @throws IllegalArgumentException if the path does not stay within the lab folder
   */
  public LabTemplate withFile(String path, String text) {
    if (!path.matches("([A-Za-z0-9_-][A-Za-z0-9._-]*/)*[A-Za-z0-9_-][A-Za-z0-9._-]*")) {
      throw new IllegalArgumentException("no plain path below the lab folder, path=" + path);
    }
    SortedMap<String, String> changed = new TreeMap<>(files);
    changed.put(path, text);
    return new LabTemplate(changed);
  }

  /** Each file's text by its path below the lab folder, written with slashes. */
  Map<String, String> files() {
    return Map.copyOf(files);
  }

  private static String rigPath(String name) {
    return LabFolder.RIGS + "/" + name + ".toml";
  }

  private static String shipped(String path) {
    return Shipped.own()
        .text(path)
        .orElseThrow(() -> new IllegalStateException("not packed with the program: " + path));
  }

  /** Puts a value into the one line of the settings that gives its key. */
  private static String withValue(String settings, String key, String value) {
    Matcher line = Pattern.compile("(?m)^" + key + " = .*$").matcher(settings);
    if (!line.find()) {
      throw new IllegalStateException("the shipped lab.toml has no line for " + key);
    }
    return settings.substring(0, line.start())
        + key
        + " = "
        + TomlText.quote(value)
        + settings.substring(line.end());
  }
}
