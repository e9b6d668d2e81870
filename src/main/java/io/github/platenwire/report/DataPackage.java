package io.github.platenwire.report;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.Digests;
import io.github.platenwire.study.ClosedTest;
import io.github.platenwire.study.StudyData;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Locale;

/**
 * Describes the raw and summary files of a study so that any program can load them: a Frictionless
 * Data Package (version 1 profiles {@code data-package}, {@code tabular-data-resource} and {@code
 * data-resource}, whose descriptors newer readers take too), with each file's size, SHA-256 and
 * columns. Stateless.
 */
public final class DataPackage {
  /** The name by which such packages are found. */
  public static final String FILE = "datapackage.json";

  private static final int BUFFER = 1 << 16;

  private DataPackage() {}

  /**
   * Writes the description into the lab folder: its paths may only lead downwards from there.
   *
   * @param replace whether an older one may be replaced
   * @return the file
   * @throws java.nio.file.FileAlreadyExistsException if there is one and it may not be replaced
   * @throws ReportException if the study has no closed test, for a package must hold something
   * @throws IOException if a file cannot be read or written
   */
  public static Path write(ReportSetting setting, StudyData data, boolean replace)
      throws IOException, ReportException {
    if (data.tests().isEmpty()) {
      throw new ReportException(
          "the study has no closed test yet, so there is nothing to describe");
    }
    Path file = setting.lab().root().resolve(FILE);
    byte[] text = text(setting, data);
    PageFiles.put(file, out -> out.write(text), replace);
    return file;
  }

  private static byte[] text(ReportSetting setting, StudyData data) throws IOException {
    ObjectMapper mapper = new ObjectMapper();
    ObjectNode root = mapper.createObjectNode();
    root.put("profile", "data-package");
    root.put("name", name(data.study().title()));
    root.put("title", data.study().title());
    root.put(
        "description",
        "Readings as received and summaries of every closed test of "
            + data.labName()
            + ". Comment lines of the raw files hold a TOML document with device definitions,"
            + " calibrations, method and specimen; a quality other than ok marks a reading that is"
            + " used for no result.");
    root.put("created", setting.now().toString());
    root.put("generator", setting.program());
    ArrayNode resources = root.putArray("resources");
    for (ClosedTest test : data.tests()) {
      raw(resources.addObject(), setting.lab().root(), test);
      summary(resources.addObject(), setting.lab().root(), test);
    }
    String json = mapper.writerWithDefaultPrettyPrinter().writeValueAsString(root) + "\n";
    return json.getBytes(StandardCharsets.UTF_8);
  }

  /** Lower-case letters, digits, full stops, hyphens and low lines; anything else is a hyphen. */
  private static String name(String words) {
    String name = words.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9._-]+", "-");
    String trimmed = name.replaceAll("^-+|-+$", "");
    return trimmed.isEmpty() ? "study" : trimmed;
  }

  private static void raw(ObjectNode node, Path root, ClosedTest test) throws IOException {
    common(node, root, test.record(), "raw");
    node.put("profile", "tabular-data-resource");
    node.put("title", "Readings of " + test.specimen());
    node.put("format", "csv");
    node.put("mediatype", "text/csv");
    ObjectNode dialect = node.putObject("dialect");
    dialect.put("delimiter", ",");
    dialect.put("quoteChar", "\"");
    dialect.put("doubleQuote", true);
    dialect.put("lineTerminator", "\n");
    dialect.put("commentChar", "#");
    dialect.put("header", true);
    schema(node.putObject("schema"));
    ArrayNode channels = node.putArray("channels");
    test.summary()
        .channels()
        .forEach(
            channel ->
                channels.addObject().put("name", channel.name()).put("unit", channel.unit()));
  }

  private static void schema(ObjectNode schema) {
    ArrayNode fields = schema.putArray("fields");
    ObjectNode seq = field(fields, "seq", "integer", "Number of the row over all channels, from 1");
    seq.putObject("constraints").put("required", true).put("unique", true).put("minimum", 1);
    ObjectNode elapsed =
        field(fields, "elapsed_us", "integer", "Time since the origin when its last byte came");
    elapsed.put("unit", "us");
    elapsed.putObject("constraints").put("required", true);
    ObjectNode channel =
        field(fields, "channel", "string", "Channel, or 'event' for what happened");
    channel.putObject("constraints").put("required", true);
    field(fields, "received", "string", "The frame as it came, or the event's words");
    field(fields, "value", "number", "Calibrated value in the channel's unit; empty for none");
    ObjectNode quality = field(fields, "quality", "string", "How far the reading can be trusted");
    ArrayNode words = quality.putObject("constraints").putArray("enum");
    for (Quality one : Quality.values()) {
      words.add(one.word());
    }
    schema.putArray("missingValues").add("");
    schema.put("primaryKey", "seq");
  }

  private static ObjectNode field(ArrayNode fields, String name, String type, String description) {
    return fields.addObject().put("name", name).put("type", type).put("description", description);
  }

  private static void summary(ObjectNode node, Path root, ClosedTest test) throws IOException {
    common(node, root, test.summaryFile(), "summary");
    node.put("profile", "data-resource");
    node.put("title", "Summary of " + test.specimen());
    node.put("format", "json");
    node.put("mediatype", "application/json");
  }

  private static void common(ObjectNode node, Path root, String path, String kind)
      throws IOException {
    Path file = root.resolve(path);
    String stem = String.valueOf(file.getFileName()).replaceFirst("\\.(raw|summary).*$", "");
    node.put("name", name(stem) + "." + kind);
    node.put("path", path);
    node.put("encoding", StandardCharsets.UTF_8.name().toLowerCase(Locale.ROOT));
    node.put("bytes", Files.size(file));
    node.put("hash", "sha256:" + sha256(file));
  }

  private static String sha256(Path file) throws IOException {
    MessageDigest digest = Digests.sha256();
    byte[] buffer = new byte[BUFFER];
    try (InputStream in = Files.newInputStream(file)) {
      for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
        digest.update(buffer, 0, read);
      }
    }
    return HexFormat.of().formatHex(digest.digest());
  }
}
