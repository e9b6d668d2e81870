package io.github.platenwire.commission;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.toml.TomlText;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Writes a definition of binary frames. Stateless. */
final class BinaryDraft {
  private BinaryDraft() {}

  static String text(
      FrameRaster raster,
      Optional<FrameCheck> check,
      List<PackedGuess> fields,
      List<String> units,
      Hints hints) {
    List<String> out = new ArrayList<>();
    out.add("# Inferred from the bytes alone. Length, beginning and checksum are sure; what the");
    out.add("# numbers mean is a guess: hold each against the device's display and set 'order',");
    out.add("# 'scale' and 'unit' until they agree, also for a negative value.");
    out.add("");
    out.add("format = \"platenwire-device 1\"");
    out.add("name = " + TomlText.quote(hints.name()));
    out.add("title = \"Binary frames of " + raster.length() + " bytes, sent unasked\"");
    out.add("kind = \"binary\"");
    out.addAll(SerialLines.of(hints));
    out.add("");
    out.add("[binary]");
    out.add("length = " + raster.length());
    out.add("sync = " + TomlText.quote(escaped(raster.sync())));
    check.ifPresent(found -> out.addAll(checksum(found)));
    Set<String> names = new HashSet<>();
    for (int i = 0; i < fields.size(); i++) {
      if (!units.get(i).equals(Hints.PASS_OVER)) {
        out.addAll(field(fields.get(i), units.get(i), names));
      }
    }
    return String.join("\n", out) + "\n";
  }

  private static List<String> checksum(FrameCheck check) {
    List<String> out = new ArrayList<>();
    out.add("");
    out.add("# " + check.words() + ": fits the frames of the log");
    out.add("[checksum]");
    out.addAll(check.toml());
    out.add("at = " + check.at());
    if (check.from() > 0) {
      out.add("from = " + check.from());
    }
    if (check.lowFirst()) {
      out.add("byte-order = \"low-first\"");
    }
    return out;
  }

  private static List<String> field(PackedGuess field, String unit, Set<String> names) {
    String base =
        UnitSpellings.quantity(unit).equals(Optional.of(Quantity.LENGTH)) ? "gauge" : "load";
    String name = base;
    for (int i = 2; !names.add(name); i++) {
      name = base + "-" + i;
    }
    List<String> out = new ArrayList<>();
    out.add("");
    out.add("[fields." + name + "]");
    out.add("kind = " + (field.isFloat() ? "\"float\"" : "\"integer\""));
    out.add("at = " + field.at());
    out.add("order = " + TomlText.quote(field.order()));
    out.add("unit = " + TomlText.quote(unit));
    out.add("scale = 1  # to be set: unknown to the bytes");
    return out;
  }

  private static String escaped(byte[] bytes) {
    StringBuilder text = new StringBuilder();
    for (byte b : bytes) {
      text.append(String.format(Locale.ROOT, "\\x%02X", b));
    }
    return text.toString();
  }

  static String hex(byte[] bytes) {
    StringBuilder text = new StringBuilder();
    for (byte b : bytes) {
      text.append(text.length() == 0 ? "" : " ").append(String.format(Locale.ROOT, "%02X", b));
    }
    return text.toString();
  }
}
