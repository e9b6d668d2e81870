package io.github.platenwire.record;

import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.Dimensions;
import io.github.platenwire.method.GaugeMount;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawHeader.HeaderCheck;
import io.github.platenwire.record.RawHeader.KeptFile;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads the TOML document of a raw file's head, strictly. Stateless. */
final class HeaderParser {
  /** A local date-time with seconds, as TOML wants it. */
  static final DateTimeFormatter DATE_TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss", Locale.ROOT);

  /** Here begin the files that are kept word for word: much text, and mostly the same one. */
  private static final String KEPT_FROM = "\n[method]\n";

  private static final String[] OWN = {
    "format",
    "test",
    "start",
    "origin-nanos",
    "zone",
    "program",
    "lab",
    "operator",
    "override-reason",
    "specimen",
    "channel",
    "check"
  };

  private HeaderParser() {}

  /**
   * Reads the document.
   *
   * @param text without the comment marks
   * @param source the raw file's name, for messages
   * @throws TomlException at the first thing that is not as the format says
   */
  static RawHeader parse(String text, String source) throws TomlException {
    int kept = text.indexOf(KEPT_FROM);
    if (kept > 0) {
      try {
        return parse(
            TomlSection.parse(text.substring(0, kept + 1), source),
            KeptFiles.of(text.substring(kept + 1), source));
      } catch (TomlException e) {
        // What is wrong, and in which line, is told of the whole.
      }
    }
    TomlSection root = TomlSection.parse(text, source);
    root.allow(Stream.of(OWN, KeptFiles.KEYS).flatMap(Arrays::stream).toArray(String[]::new));
    return header(root, KeptFiles.of(root));
  }

  /** Tables that stand apart, each by its own: together they say what they say in one. */
  private static RawHeader parse(TomlSection root, KeptFiles kept) throws TomlException {
    root.allow(OWN);
    return header(root, kept);
  }

  private static RawHeader header(TomlSection root, KeptFiles files) throws TomlException {
    root.choice("format", RawHeader.FORMAT);
    List<HeaderChannel> channels = new ArrayList<>();
    for (TomlSection section : root.sections("channel")) {
      channels.add(channel(section, files.devices(), files.calibrations()));
    }
    List<HeaderCheck> checks = new ArrayList<>();
    for (TomlSection section : root.sections("check")) {
      section.allow("name", "state", "seen");
      checks.add(
          new HeaderCheck(section.string("name"), section.string("state"), section.string("seen")));
    }
    return new RawHeader(
        root.string("test"),
        root.instant("start"),
        root.whole("origin-nanos"),
        zone(root),
        root.string("program"),
        root.string("lab"),
        root.optionalString("operator"),
        root.optionalString("override-reason"),
        specimen(root.section("specimen")),
        files.method(),
        files.rig(),
        channels,
        checks);
  }

  private static ZoneId zone(TomlSection root) throws TomlException {
    try {
      return ZoneId.of(root.string("zone"));
    } catch (DateTimeException e) {
      throw root.error("zone", "no such time zone: " + e.getMessage());
    }
  }

  private static Specimen specimen(TomlSection section) throws TomlException {
    section.allow(specimenKeys());
    Optional<TomlSection> asWritten = section.optionalSection("as-written");
    return new Specimen(
        section.string("name"),
        section.string("series"),
        section.string("shape"),
        section.numbers("diameters-mm"),
        section.optionalNumber("length-mm"),
        dimensions(section),
        section.optionalNumber("mass-kg"),
        section.optionalDateTime("cast"),
        section.optionalNumber("planned-age-days"),
        section.optionalString("ends"),
        section.optionalString("curing"),
        section.optionalString("moisture"),
        asWritten.isPresent() ? asWritten.get().stringMap() : Map.of());
  }

  private static String[] specimenKeys() {
    return Stream.concat(
            Stream.of(
                "name",
                "series",
                "shape",
                "diameters-mm",
                "length-mm",
                "mass-kg",
                "cast",
                "planned-age-days",
                "ends",
                "curing",
                "moisture",
                "as-written"),
            Arrays.stream(Dimension.values()).map(Dimension::headerKey))
        .toArray(String[]::new);
  }

  private static Dimensions dimensions(TomlSection section) throws TomlException {
    Map<Dimension, Double> values = new EnumMap<>(Dimension.class);
    for (Dimension dimension : Dimension.values()) {
      section
          .optionalNumber(dimension.headerKey())
          .ifPresent(value -> values.put(dimension, value));
    }
    return Dimensions.of(values);
  }

  private static HeaderChannel channel(
      TomlSection section, Map<String, KeptFile> devices, Map<String, KeptFile> calibrations)
      throws TomlException {
    section.allow(
        "name",
        "quantity",
        "unit",
        "port",
        "device",
        "field",
        "delay-ms",
        "byte-us",
        "direction",
        "under-load",
        "gauge-length-mm",
        "lever",
        "late-after-ms",
        "range",
        "zero-tolerance",
        "resolution",
        "greatest-slope",
        "calibration-percent",
        "correction-percent",
        "calibration",
        "scale",
        "correction",
        "correction-points",
        "correction-coefficients",
        "correction-range");
    Optional<String> calibrationName = section.optionalString("calibration");
    return new HeaderChannel(
        facts(section),
        section.string("port"),
        (int) section.whole("field"),
        known(section, "device", section.string("device"), devices),
        section.number("delay-ms"),
        section.number("late-after-ms"),
        calibrationName.isPresent()
            ? Optional.of(known(section, "calibration", calibrationName.get(), calibrations))
            : Optional.empty(),
        HeaderCorrection.parse(section));
  }

  private static ChannelFacts facts(TomlSection section) throws TomlException {
    return untimed(section)
        .timed(
            Math.round(section.number("delay-ms") * 1000),
            section.optionalNumber("byte-us").orElse(0))
        .mounted(mount(section));
  }

  private static Optional<GaugeMount> mount(TomlSection section) throws TomlException {
    if (!section.has("direction")) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new GaugeMount(
              section.choice("direction", "axial", "transverse").equals("transverse"),
              section.choice("under-load", "rises", "falls").equals("rises"),
              section.optionalNumber("gauge-length-mm"),
              section.number("lever")));
    } catch (IllegalArgumentException e) {
      throw section.error("lever", String.valueOf(e.getMessage()));
    }
  }

  private static ChannelFacts untimed(TomlSection section) throws TomlException {
    List<Double> range = section.numbers("range");
    if (range.size() != 2) {
      throw section.error("range", "'range' must be two numbers, [low, high]");
    }
    Quantity quantity = quantity(section);
    return new ChannelFacts(
            section.string("name"),
            quantity,
            unit(section, quantity),
            range.get(0),
            range.get(1),
            section.optionalNumber("resolution"),
            section.number("zero-tolerance"),
            section.optionalNumber("greatest-slope"),
            section.optionalNumber("calibration-percent"))
        .corrected(section.optionalNumber("correction-percent"));
  }

  private static Quantity quantity(TomlSection section) throws TomlException {
    String word = section.string("quantity");
    return Arrays.stream(Quantity.values())
        .filter(quantity -> quantity.word().equals(word))
        .findFirst()
        .orElseThrow(() -> section.error("quantity", "no such quantity: '" + word + "'"));
  }

  private static Unit unit(TomlSection section, Quantity quantity) throws TomlException {
    try {
      return Unit.parse(section.string("unit"), quantity);
    } catch (IllegalArgumentException e) {
      throw section.error("unit", String.valueOf(e.getMessage()));
    }
  }

  private static KeptFile known(
      TomlSection section, String key, String name, Map<String, KeptFile> files)
      throws TomlException {
    KeptFile file = files.get(name);
    if (file == null) {
      throw section.error(key, "the head keeps no " + key + " of the name '" + name + "'");
    }
    return file;
  }
}
