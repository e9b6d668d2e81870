package io.github.platenwire.record;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.platenwire.method.BreakPosition;
import io.github.platenwire.method.GhostCurve;
import io.github.platenwire.method.VirginTable;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Writes and reads {@code *.summary.json}. Stateless. */
public final class SummaryFile {
  /** The format that is written. */
  public static final String FORMAT = "platenwire-summary 1";

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private SummaryFile() {}

  /**
   * Writes a summary under a name that must not be taken. It is written and forced beside its place
   * and then moved there, so that nobody ever sees half of one.
   *
   * @return SHA-256 of the file, in hex
   * @throws java.nio.file.FileAlreadyExistsException if there is one already
   * @throws IOException if it cannot be written; nothing stands under the name then
   */
  public static String write(Path path, Summary summary) throws IOException {
    byte[] bytes = json(summary).getBytes(StandardCharsets.UTF_8);
    DurableFile.create(path, bytes);
    return Digests.sha256Hex(bytes);
  }

  /** The summary as the text that goes into its file. */
  public static String json(Summary summary) throws JsonProcessingException {
    return MAPPER
            .writerWithDefaultPrettyPrinter()
            .writeValueAsString(new SummaryJson(MAPPER).of(summary))
        + "\n";
  }

  /**
   * Reads back what a comparison of companions needs.
   *
   * @throws IOException if the file cannot be read or is no summary; the message names it
   */
  public static SummaryFacts read(Path path) throws IOException {
    JsonNode root = tree(path);
    JsonNode specimen = root.path("specimen");
    return new SummaryFacts(
        root.path("test").asText(),
        specimen.path("name").asText(),
        specimen.path("series").asText(),
        number(specimen.path("planned_age_days")),
        root.path("method").path("name").asText(),
        root.path("raw").path("reason").asText(),
        result(root, "strength"),
        result(root, "diameter"));
  }

  /**
   * Reads the whole summary back, for whoever works with closed tests.
   *
   * @throws IOException if the file cannot be read or is no summary; the message names it
   */
  public static StoredSummary stored(Path path) throws IOException {
    return new StoredSummaryReader(path, tree(path)).read();
  }

  /** The file's JSON, once it is certain that it is a summary. */
  static JsonNode tree(Path path) throws IOException {
    return tree(path, Files.readAllBytes(path));
  }

  /** The same of a file that was read already. */
  static JsonNode tree(Path path, byte[] bytes) throws IOException {
    JsonNode root;
    try {
      root = MAPPER.readTree(bytes);
    } catch (JsonProcessingException e) {
      throw new IOException(path + ": is no summary: " + e.getOriginalMessage(), e);
    }
    if (!FORMAT.equals(root.path("format").asText())) {
      throw new IOException(path + ": 'format' should be \"" + FORMAT + "\"");
    }
    return root;
  }

  /**
   * What a person saw after the test, as a summary tells it.
   *
   * @throws IOException if the file cannot be read or is no summary
   */
  public static Observations observations(Path path) throws IOException {
    return observations(tree(path));
  }

  static Observations observations(JsonNode root) {
    JsonNode node = root.path("observations");
    return new Observations(
        text(node, "fracture_type"),
        text(node, "fracture_words"),
        text(node, "aggregate"),
        text(node, "imprint"),
        text(node, "voids"),
        text(node, "notes"),
        enclosures(node),
        breakPosition(node));
  }

  private static List<Enclosure> enclosures(JsonNode observations) {
    List<Enclosure> enclosures = new ArrayList<>();
    for (JsonNode one : observations.path("enclosures")) {
      enclosures.add(
          new Enclosure(
              one.path("file").asText(),
              one.path("sha256").asText(),
              one.path("came_from").asText()));
    }
    return enclosures;
  }

  private static BreakPosition breakPosition(JsonNode observations) {
    Optional<Double> distance = number(observations.path("break_distance_mm"));
    if (distance.isPresent()) {
      return BreakPosition.outside(distance.get());
    }
    return text(observations, "break_position").isPresent()
        ? BreakPosition.MIDDLE_THIRD
        : BreakPosition.NOT_RECORDED;
  }

  /** What went wrong in the test, as a summary tells it; otherwise as {@link #observations}. */
  public static Optional<String> failure(Path path) throws IOException {
    return text(tree(path), "failure");
  }

  /**
   * In what a summary's specimen differs from the raw file's head; empty for a first version.
   *
   * @throws IOException if the file cannot be read or is no summary
   */
  public static List<Provenance.Change> changes(Path path) throws IOException {
    return changes(tree(path));
  }

  static List<Provenance.Change> changes(JsonNode root) {
    List<Provenance.Change> changes = new ArrayList<>();
    for (JsonNode change : root.path("correction").path("changes")) {
      changes.add(
          new Provenance.Change(
              change.path("what").asText(),
              number(change.path("from")),
              change.path("to").asDouble()));
    }
    return changes;
  }

  /**
   * What made a summary; empty for a word that this program does not know.
   *
   * @throws IOException if the file cannot be read or is no summary
   */
  public static Optional<Provenance.Maker> maker(Path path) throws IOException {
    return Provenance.Maker.ofWord(tree(path).path("made_by").asText());
  }

  /**
   * Who corrected a summary's specimen or added to what was seen, when and why; empty for a first
   * version.
   *
   * @throws IOException if the file cannot be read, is no summary, or tells no time
   */
  public static Optional<Provenance.Correction> correction(Path path) throws IOException {
    JsonNode node = tree(path).path("correction");
    if (!node.isObject()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new Provenance.Correction(
              node.path("who").asText(),
              Instant.parse(node.path("when").asText()),
              node.path("why").asText(),
              changes(path),
              node.path("replaces").asText(),
              node.path("replaced_sha256").asText()));
    } catch (DateTimeException e) {
      throw new IOException(path + ": 'correction' tells no time: " + e.getMessage(), e);
    }
  }

  private static Optional<String> text(JsonNode node, String name) {
    return node.path(name).isTextual() ? Optional.of(node.path(name).asText()) : Optional.empty();
  }

  /**
   * Reads back the curve of first loading, to hold a running test beside.
   *
   * @return empty if the test followed no crack
   * @throws IOException if the file cannot be read or is no summary; the message names it
   */
  public static Optional<GhostCurve> readCurve(Path path) throws IOException {
    try {
      JsonNode root = MAPPER.readTree(Files.readAllBytes(path));
      JsonNode curve = root.path("virgin_curve");
      List<VirginTable.Point> points = StoredSummaryReader.points(curve);
      return points.size() < 2
          ? Optional.empty()
          : Optional.of(new GhostCurve(root.path("specimen").path("name").asText(), points));
    } catch (JsonProcessingException e) {
      throw new IOException(path + ": is no summary: " + e.getOriginalMessage(), e);
    }
  }

  private static Optional<Double> result(JsonNode root, String name) {
    for (JsonNode result : root.path("results")) {
      if (name.equals(result.path("name").asText())) {
        return number(result.path("value"));
      }
    }
    return Optional.empty();
  }

  private static Optional<Double> number(JsonNode node) {
    return node.isNumber() ? Optional.of(node.asDouble()) : Optional.empty();
  }
}
