package io.github.platenwire.record;

import static io.github.platenwire.toml.TomlText.block;
import static io.github.platenwire.toml.TomlText.key;
import static io.github.platenwire.toml.TomlText.number;
import static io.github.platenwire.toml.TomlText.quote;

import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.GaugeMount;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawHeader.HeaderCheck;
import io.github.platenwire.record.RawHeader.KeptFile;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * Writes a {@link RawHeader} as the TOML document of a raw file's head. {@link HeaderParser} reads
 * it back equal. Stateless.
 */
final class HeaderText {
  private final StringBuilder out = new StringBuilder();

  private HeaderText() {}

  /** The document, without the comment marks that the raw file puts before each line. */
  static String write(RawHeader header) {
    HeaderText text = new HeaderText();
    text.general(header);
    text.specimen(header.specimen());
    Map<String, KeptFile> devices = new LinkedHashMap<>();
    Map<String, KeptFile> calibrations = new LinkedHashMap<>();
    for (HeaderChannel channel : header.channels()) {
      text.channel(channel);
      devices.put(channel.device().name(), channel.device());
      channel.calibration().ifPresent(file -> calibrations.put(file.name(), file));
    }
    for (HeaderCheck check : header.checklist()) {
      text.check(check);
    }
    text.kept("method", header.method());
    text.kept("rig", header.rig());
    devices.values().forEach(file -> text.kept("[device]", file));
    calibrations.values().forEach(file -> text.kept("[calibration]", file));
    return text.out.toString();
  }

  private void general(RawHeader header) {
    string("format", RawHeader.FORMAT);
    string("test", header.test());
    plain("start", header.start().toString());
    plain("origin-nanos", Long.toString(header.originNanos()));
    string("zone", header.zone().getId());
    string("program", header.program());
    string("lab", header.lab());
    optional("operator", header.operator());
    optional("override-reason", header.overrideReason());
  }

  private void specimen(Specimen specimen) {
    table("specimen");
    string("name", specimen.name());
    string("series", specimen.series());
    string("shape", specimen.shape());
    plain(
        "diameters-mm",
        "["
            + String.join(
                ", ", specimen.diametersMillimetres().stream().map(d -> number(d)).toList())
            + "]");
    real("length-mm", specimen.lengthMillimetres());
    for (Dimension dimension : Dimension.values()) {
      real(dimension.headerKey(), specimen.dimension(dimension));
    }
    real("mass-kg", specimen.massKilograms());
    specimen.cast().ifPresent(cast -> plain("cast", HeaderParser.DATE_TIME.format(cast)));
    real("planned-age-days", specimen.plannedAgeDays());
    optional("ends", specimen.ends());
    optional("curing", specimen.curing());
    optional("moisture", specimen.moisture());
    table("specimen.as-written");
    new TreeMap<>(specimen.asWritten()).forEach(this::string);
  }

  private void channel(HeaderChannel channel) {
    ChannelFacts facts = channel.facts();
    table("[channel]");
    string("name", facts.name());
    string("quantity", facts.quantity().word());
    string("unit", facts.unit().symbol());
    string("port", channel.port());
    string("device", channel.device().name());
    plain("field", Integer.toString(channel.field()));
    plain("delay-ms", number(channel.delayMillis()));
    if (channel.facts().microsPerByte() > 0) {
      plain("byte-us", number(channel.facts().microsPerByte()));
    }
    facts.mount().ifPresent(this::mount);
    plain("late-after-ms", number(channel.lateAfterMillis()));
    plain("range", "[" + number(facts.rangeLow()) + ", " + number(facts.rangeHigh()) + "]");
    plain("zero-tolerance", number(facts.zeroTolerance()));
    real("resolution", facts.resolution());
    real("greatest-slope", facts.greatestSlope());
    real("calibration-percent", facts.calibrationPercent());
    real("correction-percent", facts.correctionPercent());
    optional("calibration", channel.calibration().map(KeptFile::name));
    HeaderCorrection.write(channel.correction()).forEach(this::plain);
  }

  private void mount(GaugeMount mount) {
    string("direction", mount.across() ? "transverse" : "axial");
    string("under-load", mount.rises() ? "rises" : "falls");
    real("gauge-length-mm", mount.gaugeLengthMillimetres());
    plain("lever", number(mount.lever()));
  }

  private void check(HeaderCheck check) {
    table("[check]");
    string("name", check.name());
    string("state", check.state());
    string("seen", check.seen());
  }

  private void kept(String table, KeptFile file) {
    table(table);
    string("name", file.name());
    plain("text", block(file.text()));
  }

  private void table(String name) {
    out.append("\n[").append(name).append("]\n");
  }

  private void string(String name, String value) {
    plain(key(name), quote(value));
  }

  private void optional(String name, Optional<String> value) {
    value.ifPresent(text -> string(name, text));
  }

  private void real(String name, OptionalDouble value) {
    value.ifPresent(real -> plain(name, number(real)));
  }

  private void plain(String name, String value) {
    out.append(name).append(" = ").append(value).append('\n');
  }
}
