package io.github.platenwire.device;

import io.github.platenwire.device.BinaryFrame.Check;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.Optional;

/** Reads definitions of devices that send frames of fixed length, unasked. Stateless. */
final class BinaryDefinitionParser {
  private static final int LONGEST = 1024;

  private BinaryDefinitionParser() {}

  static DeviceDefinition parse(TomlSection root, String text) throws TomlException {
    root.allow("format", "name", "title", "kind", "serial", "binary", "checksum", "fields");
    String name = DefinitionParser.name(root);
    String title = DefinitionParser.title(root);
    TomlSection binary = root.section("binary");
    binary.allow("length", "sync");
    int length = within(binary, "length", 1, LONGEST);
    byte[] sync = sync(binary, length);
    Optional<TomlSection> checksum = root.optionalSection("checksum");
    Optional<Check> check =
        checksum.isPresent() ? Optional.of(check(checksum.get(), length)) : Optional.empty();
    if (sync.length == 0 && check.isEmpty()) {
      throw binary.error(
          "there is neither 'sync' nor a table [checksum]; without either, nothing tells where a"
              + " frame begins");
    }
    BinaryFrame frame = new BinaryFrame(length, sync, check);
    PackedFields fields =
        new PackedFields(root, "at", (section, bytes) -> firstByte(section, bytes, length));
    return new PackedDefinition(
        name,
        title,
        SerialTable.parse(root),
        fields.values(),
        text,
        frame,
        fields.fields(),
        Optional.empty());
  }

  private static byte[] sync(TomlSection binary, int length) throws TomlException {
    byte[] sync;
    try {
      sync = ByteText.parse(binary.optionalString("sync").orElse(""));
    } catch (IllegalArgumentException e) {
      throw binary.error("sync", String.valueOf(e.getMessage()));
    }
    if (sync.length >= length) {
      throw binary.error(
          "sync", "the sync bytes are " + sync.length + ", but a frame has only " + length);
    }
    return sync;
  }

  private static int firstByte(TomlSection section, int bytes, int length) throws TomlException {
    int at = within(section, "at", 0, length - 1);
    if (at + bytes > length) {
      throw section.error(
          "at", "bytes " + at + " to " + (at + bytes - 1) + " reach beyond the frame's " + length);
    }
    return at;
  }

  private static Check check(TomlSection section, int length) throws TomlException {
    String kind = section.choice("kind", "xor", "sum-8", "sum-16", "lrc", "crc-8", "crc-16");
    boolean crc = kind.startsWith("crc");
    if (crc) {
      section.allow(
          "kind",
          "at",
          "from",
          "to",
          "byte-order",
          "polynomial",
          "initial",
          "reflect-in",
          "reflect-out",
          "xor-out");
    } else {
      section.allow("kind", "at", "from", "to", "byte-order");
    }
    Checksum sum =
        switch (kind) {
          case "xor" -> Checksum.XOR;
          case "sum-8" -> Checksum.SUM_8;
          case "sum-16" -> Checksum.SUM_16;
          case "lrc" -> Checksum.LRC;
          case "crc-8" -> crc(section, Byte.SIZE);
          default -> crc(section, Short.SIZE);
        };
    return placed(section, sum, length);
  }

  private static Check placed(TomlSection section, Checksum sum, int length) throws TomlException {
    int at = firstByte(section, sum.width(), length);
    int from = section.has("from") ? within(section, "from", 0, length - 1) : 0;
    int to = section.has("to") ? within(section, "to", 1, length) : at;
    if (from >= to) {
      throw section.error(
          section.has("to") ? "to" : "at",
          "the checksum covers no byte: from " + from + " up to, but without, " + to);
    }
    if (from < at + sum.width() && at < to) {
      throw section.error("at", "the checksum lies within the bytes that it covers");
    }
    if (sum.width() == 1 && section.has("byte-order")) {
      throw section.error("byte-order", "a checksum of one byte has no byte order; leave it out");
    }
    boolean lowFirst =
        section.choiceOr("byte-order", "high-first", "high-first", "low-first").equals("low-first");
    return new Check(sum, at, from, to, lowFirst);
  }

  private static Crc crc(TomlSection section, int bits) throws TomlException {
    int most = (1 << bits) - 1;
    return new Crc(
        bits,
        within(section, "polynomial", 1, most),
        section.has("initial") ? within(section, "initial", 0, most) : 0,
        section.flagOr("reflect-in", /* absent= */ false),
        section.flagOr("reflect-out", /* absent= */ false),
        section.has("xor-out") ? within(section, "xor-out", 0, most) : 0);
  }

  /** A whole number that must be there, within limits. */
  static int within(TomlSection section, String key, int least, int most) throws TomlException {
    long value = section.whole(key);
    if (value < least || value > most) {
      throw section.error(key, key + " must be " + least + " to " + most + ", but it is " + value);
    }
    return (int) value;
  }
}
