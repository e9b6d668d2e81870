package io.github.platenwire.record;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.platenwire.record.Provenance.Change;
import io.github.platenwire.record.Provenance.Correction;
import io.github.platenwire.record.SummaryDifferences.Difference;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A summary as it lies on the disk, read once and asked many things. Immutable; safe for any
 * readers.
 */
public final class SummaryDocument {
  private final Path file;
  private final String sha256;
  private final long bytes;
  private final JsonNode root;
  private final Optional<Correction> correction;

  private SummaryDocument(Path file, byte[] bytes) throws IOException {
    this.file = file;
    this.sha256 = Digests.sha256Hex(bytes);
    this.bytes = bytes.length;
    this.root = SummaryFile.tree(file, bytes);
    this.correction = correction(root.path("correction"));
  }

  /**
   * Reads a summary.
   *
   * @throws IOException if the file cannot be read or is no summary
   */
  public static SummaryDocument read(Path file) throws IOException {
    return new SummaryDocument(file, Files.readAllBytes(file));
  }

  private Optional<Correction> correction(JsonNode node) throws IOException {
    if (!node.isObject()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new Correction(
              node.path("who").asText(),
              Instant.parse(node.path("when").asText()),
              node.path("why").asText(),
              SummaryFile.changes(root),
              node.path("replaces").asText(),
              node.path("replaced_sha256").asText()));
    } catch (DateTimeException e) {
      throw new IOException(file + ": 'correction/when' is no moment in UTC", e);
    }
  }

  /** The file. */
  public Path file() {
    return file;
  }

  /** SHA-256 of the file, 64 hex digits. */
  public String sha256() {
    return sha256;
  }

  /** The file's length. */
  public long bytes() {
    return bytes;
  }

  /** What a person saw after the test. */
  public Observations observations() {
    return SummaryFile.observations(root);
  }

  /** What was corrected after the test; empty in a first version. */
  public Optional<Correction> correction() {
    return correction;
  }

  /** In what the specimen differs from the raw file's head. */
  public List<Change> changes() {
    return correction.map(Correction::changes).orElse(List.of());
  }

  /** The witness of the register's line before its own; empty if it could not be read then. */
  public Optional<String> witnessBefore() {
    JsonNode witness = root.path("register").path("witness_before");
    return witness.isTextual() ? Optional.of(witness.asText()) : Optional.empty();
  }

  /** Where it says something else than what was computed again. */
  public List<Difference> differences(Summary computed) {
    return SummaryDifferences.of(root, computed);
  }
}
