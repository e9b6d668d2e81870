package io.github.platenwire.lab;

import io.github.platenwire.calibration.CorrectionKind;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads rig files strictly. Stateless. */
final class RigReader {
  /** Where the channel does not say otherwise: silence of a second is late. */
  private static final double LATE_AFTER_MILLIS = 1000;

  /**
   * Where the channel does not say otherwise: a zero of up to 1 % of the range may be taken off.
   */
  private static final double ZERO_TOLERANCE_PART = 0.01;

  private static final double LONGEST_MILLIS = 600_000;

  /** What a channel can measure. */
  private static final List<Quantity> MEASURED =
      List.of(Quantity.FORCE, Quantity.LENGTH, Quantity.STRAIN, Quantity.MASS);

  private RigReader() {}

  static Rig parse(String text, String source, String fileName) throws TomlException {
    TomlSection file = TomlSection.parse(text, source);
    file.allow("format", "name", "title", "channel");
    LabFormat.check(file, "platenwire-rig");
    LabFormat.checkName(file, fileName);
    String title = LabFormat.words(file, "title");
    List<Channel> channels = new ArrayList<>();
    for (TomlSection section : file.sections("channel")) {
      Channel channel = channel(section);
      refuseTwin(section, channel, channels);
      channels.add(channel);
    }
    if (channels.isEmpty()) {
      throw file.error("a rig needs at least one channel, begun by [[channel]]");
    }
    return new Rig(fileName, title, channels, text);
  }

  private static void refuseTwin(TomlSection section, Channel channel, List<Channel> earlier)
      throws TomlException {
    for (Channel other : earlier) {
      if (other.name().equals(channel.name())) {
        throw section.error(
            "name", "there is a channel '" + channel.name() + "' already; each needs its own name");
      }
      if (other.port().equals(channel.port())
          && other.device().equals(channel.device())
          && other.field().equals(channel.field())) {
        throw section.error(
            "channels '"
                + other.name()
                + "' and '"
                + channel.name()
                + "' take the same value of the same device at "
                + channel.port()
                + "; give them different ports, or different fields of the device");
      }
    }
  }

  private static Channel channel(TomlSection section) throws TomlException {
    section.allow(
        "name",
        "quantity",
        "unit",
        "port",
        "device",
        "field",
        "delay-ms",
        "calibration",
        "correction",
        "range",
        "zero-tolerance",
        "late-after-ms",
        "resolution",
        "greatest-slope",
        "direction",
        "under-load",
        "gauge-length-mm",
        "gauge-length-in",
        "lever");
    String name = name(section);
    Quantity quantity = quantity(section);
    Unit unit = unit(section, quantity);
    List<Double> range = range(section, unit);
    double span = range.get(1) - range.get(0);
    return new Channel(
        name,
        quantity,
        unit,
        LabFormat.words(section, "port"),
        fileName(section, "device", section.string("device")),
        field(section),
        within(section, "delay-ms", 0, 0, LONGEST_MILLIS),
        calibration(section),
        correction(section),
        range.get(0),
        range.get(1),
        within(section, "zero-tolerance", span * ZERO_TOLERANCE_PART, 0, span),
        within(section, "late-after-ms", LATE_AFTER_MILLIS, 1, LONGEST_MILLIS),
        positive(section, "resolution"),
        positive(section, "greatest-slope"),
        MountReader.mount(section, quantity));
  }

  private static String name(TomlSection section) throws TomlException {
    String name = section.string("name");
    if (name.equals("event")) {
      throw section.error(
          "name", "'event' is kept for what happens in a test; name the channel otherwise");
    }
    if (!name.matches("[a-z][a-z0-9-]*")) {
      throw section.error(
          "name",
          "'"
              + name
              + "' is no channel name: lower-case letters, digits and hyphens, a letter first,"
              + " such as load or gauge-1");
    }
    return name;
  }

  private static Quantity quantity(TomlSection section) throws TomlException {
    String word =
        section.choice(
            "quantity", MEASURED.stream().map(Quantity::word).sorted().toArray(String[]::new));
    return MEASURED.stream().filter(one -> one.word().equals(word)).findFirst().orElseThrow();
  }

  private static Unit unit(TomlSection section, Quantity quantity) throws TomlException {
    String symbol = section.string("unit");
    try {
      return Unit.parse(symbol, quantity);
    } catch (IllegalArgumentException e) {
      throw section.error("unit", String.valueOf(e.getMessage()));
    }
  }

  private static List<Double> range(TomlSection section, Unit unit) throws TomlException {
    List<Double> range = section.numbers("range");
    if (range.size() != 2 || range.get(0) >= range.get(1)) {
      throw section.error(
          "range",
          (section.has("range") ? "'range' must be" : "'range' is missing; it must be")
              + " the least and the greatest value in "
              + unit.symbol()
              + ", such as range = [0, 1500]");
    }
    return range;
  }

  private static Optional<String> field(TomlSection section) throws TomlException {
    return section.has("field") ? Optional.of(LabFormat.words(section, "field")) : Optional.empty();
  }

  private static Optional<String> calibration(TomlSection section) throws TomlException {
    return section.has("calibration")
        ? Optional.of(fileName(section, "calibration", section.string("calibration")))
        : Optional.empty();
  }

  private static Optional<CorrectionKind> correction(TomlSection section) throws TomlException {
    if (!section.has("correction")) {
      return Optional.empty();
    }
    if (!section.has("calibration")) {
      throw section.error(
          "correction", "'correction' needs a calibration; name it with calibration = \"…\"");
    }
    return CorrectionKind.ofWord(section.choice("correction", CorrectionKind.words()));
  }

  private static String fileName(TomlSection section, String key, String name)
      throws TomlException {
    if (!Names.isDefinitionName(name)) {
      throw section.error(
          key,
          "'"
              + name
              + "' is no name of a "
              + key
              + " file: write it without folder and without .toml");
    }
    return name;
  }

  private static double within(
      TomlSection section, String key, double absent, double least, double greatest)
      throws TomlException {
    OptionalDouble written = section.optionalNumber(key);
    double value = written.orElse(absent);
    if (value < least || value > greatest) {
      throw section.error(
          key,
          "'"
              + key
              + "' must be "
              + Names.plain(least)
              + " to "
              + Names.plain(greatest)
              + ", but it is "
              + Names.plain(value));
    }
    return value;
  }

  private static OptionalDouble positive(TomlSection section, String key) throws TomlException {
    OptionalDouble value = section.optionalNumber(key);
    if (value.isPresent() && value.getAsDouble() <= 0) {
      throw section.error(
          key,
          "'" + key + "' must be greater than 0, but it is " + Names.plain(value.getAsDouble()));
    }
    return value;
  }
}
