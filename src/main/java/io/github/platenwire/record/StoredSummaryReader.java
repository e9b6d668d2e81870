package io.github.platenwire.record;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.platenwire.method.MethodResult;
import io.github.platenwire.method.VirginTable;
import io.github.platenwire.quantity.UncertaintyBudget;
import io.github.platenwire.quantity.Unit;
import java.io.IOException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads a whole summary back from its JSON. Used once; not thread-safe. */
final class StoredSummaryReader {
  private final Path file;
  private final JsonNode root;

  StoredSummaryReader(Path file, JsonNode root) {
    this.file = file;
    this.root = root;
  }

  StoredSummary read() throws IOException {
    try {
      return new StoredSummary(
          file,
          needed(root, "test"),
          needed(root, "program"),
          specimen(root.path("specimen")),
          needed(root.path("rig"), "name"),
          method(root.path("method")),
          Instant.parse(needed(root.path("times"), "start")),
          ZoneId.of(needed(root.path("times"), "zone")),
          raw(root.path("raw")),
          result(),
          channels(),
          texts(root.path("observations")),
          text(root, "failure"),
          text(root.path("register"), "witness_before"));
    } catch (DateTimeException | IllegalArgumentException e) {
      throw new IOException(file + ": cannot be used: " + e.getMessage(), e);
    }
  }

  private static StoredSummary.StoredSpecimen specimen(JsonNode node) {
    return new StoredSummary.StoredSpecimen(
        needed(node, "name"),
        needed(node, "series"),
        needed(node, "shape"),
        text(node, "cast").map(cast -> LocalDateTime.parse(cast, HeaderParser.DATE_TIME)),
        real(node, "planned_age_days"),
        texts(node.path("as_written")));
  }

  private static StoredSummary.StoredMethod method(JsonNode node) {
    return new StoredSummary.StoredMethod(
        needed(node, "name"), needed(node, "title"), needed(node, "standard"));
  }

  private static StoredSummary.StoredRaw raw(JsonNode node) {
    return new StoredSummary.StoredRaw(
        needed(node, "file"),
        needed(node, "sha256"),
        node.path("rows").asLong(),
        needed(node, "reason"));
  }

  private MethodResult result() {
    List<MethodResult.Figure> figures = new ArrayList<>();
    for (JsonNode node : root.path("results")) {
      figures.add(figure(node));
    }
    List<MethodResult.Check> checks = new ArrayList<>();
    for (JsonNode node : root.path("checks")) {
      checks.add(
          new MethodResult.Check(
              needed(node, "name"), node.path("met").asBoolean(), needed(node, "words")));
    }
    List<String> departures = new ArrayList<>();
    root.path("departures").forEach(node -> departures.add(node.asText()));
    return new MethodResult(
        figures, checks, departures, wholes(root.path("suspect_rows")), curve());
  }

  private static MethodResult.Figure figure(JsonNode node) {
    JsonNode inchPound = node.path("inch_pound");
    OptionalDouble bound = real(node, "sampling_bound");
    return new MethodResult.Figure(
        needed(node, "name"),
        needed(node, "title"),
        real(node, "value").orElse(Double.NaN),
        unit(needed(node, "unit")),
        needed(node, "rounded"),
        unit(needed(inchPound, "unit")),
        needed(inchPound, "rounded"),
        node.path("uncertainty").isObject()
            ? Optional.of(budget(node.path("uncertainty").path("budget")))
            : Optional.empty(),
        bound.isPresent() ? Optional.of(bound.getAsDouble()) : Optional.empty(),
        wholes(node.path("rows")));
  }

  /** Degrees of freedom that are null are infinite, which JSON cannot say. */
  private static UncertaintyBudget budget(JsonNode lines) {
    List<UncertaintyBudget.Line> all = new ArrayList<>();
    for (JsonNode line : lines) {
      all.add(
          new UncertaintyBudget.Line(
              needed(line, "source"),
              real(line, "contribution").orElse(Double.NaN),
              real(line, "degrees_of_freedom").orElse(Double.POSITIVE_INFINITY)));
    }
    return new UncertaintyBudget(all);
  }

  private static Unit unit(String symbol) {
    return Arrays.stream(Unit.values())
        .filter(unit -> unit.symbol().equals(symbol))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("'" + symbol + "' is no unit"));
  }

  private Optional<VirginTable> curve() {
    JsonNode curve = root.path("virgin_curve");
    List<VirginTable.Point> points = points(curve);
    List<String> gauges = new ArrayList<>();
    curve.path("gauges").forEach(gauge -> gauges.add(gauge.asText()));
    return points.size() < 2 ? Optional.empty() : Optional.of(new VirginTable(gauges, points));
  }

  static List<VirginTable.Point> points(JsonNode curve) {
    List<VirginTable.Point> points = new ArrayList<>();
    for (int i = 0; i < curve.path("load_n").size(); i++) {
      points.add(
          new VirginTable.Point(
              curve.path("load_n").path(i).asDouble(),
              curve.path("width_mm").path(i).asDouble(),
              curve.path("gauge_mask").path(i).asInt(),
              curve.path("row").path(i).asLong()));
    }
    return points;
  }

  private List<StoredSummary.StoredChannel> channels() {
    List<StoredSummary.StoredChannel> channels = new ArrayList<>();
    for (JsonNode node : root.path("channels")) {
      channels.add(
          new StoredSummary.StoredChannel(
              needed(node, "name"),
              needed(node, "unit"),
              node.path("readings").asLong(),
              node.path("marked").asLong(),
              needed(node, "calibration")));
    }
    return channels;
  }

  private static List<Long> wholes(JsonNode array) {
    List<Long> wholes = new ArrayList<>();
    array.forEach(node -> wholes.add(node.asLong()));
    return wholes;
  }

  /** Every plain value of an object as text; what is null or nested is left out. */
  private static Map<String, String> texts(JsonNode object) {
    Map<String, String> texts = new LinkedHashMap<>();
    for (Map.Entry<String, JsonNode> entry : object.properties()) {
      if (entry.getValue().isValueNode() && !entry.getValue().isNull()) {
        texts.put(entry.getKey(), entry.getValue().asText());
      }
    }
    return texts;
  }

  private static String needed(JsonNode node, String name) {
    return text(node, name)
        .orElseThrow(() -> new IllegalArgumentException("'" + name + "' is missing"));
  }

  private static Optional<String> text(JsonNode node, String name) {
    return node.path(name).isTextual() ? Optional.of(node.path(name).asText()) : Optional.empty();
  }

  private static OptionalDouble real(JsonNode node, String name) {
    return node.path(name).isNumber()
        ? OptionalDouble.of(node.path(name).asDouble())
        : OptionalDouble.empty();
  }
}
