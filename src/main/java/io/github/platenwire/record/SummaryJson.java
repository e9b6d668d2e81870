package io.github.platenwire.record;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.platenwire.method.BreakPosition;
import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.MethodResult;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.method.VirginTable;
import io.github.platenwire.quantity.UncertaintyBudget;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * Lays a {@link Summary} out as JSON; the schema is {@code schema/summary-1.schema.json}. Not
 * thread-safe.
 */
final class SummaryJson {
  private final ObjectMapper mapper;

  SummaryJson(ObjectMapper mapper) {
    this.mapper = mapper;
  }

  ObjectNode of(Summary summary) {
    RawHeader header = summary.header();
    ObjectNode root = mapper.createObjectNode();
    root.put("format", SummaryFile.FORMAT);
    root.put("test", header.test());
    root.put("lab", header.lab());
    root.put("program", header.program());
    optional(root, "operator", header.operator());
    optional(root, "override_reason", header.overrideReason());
    root.set("specimen", specimen(header.specimen()));
    root.putObject("rig").put("name", header.rig().name());
    root.putObject("method")
        .put("name", header.method().name())
        .put("title", summary.methodTitle())
        .put("standard", summary.standard());
    root.putObject("times")
        .put("start", header.start().toString())
        .put("ended", summary.closing().ended().toString())
        .put("zone", header.zone().getId());
    root.set("raw", raw(summary));
    MethodResult result = summary.result();
    ArrayNode results = root.putArray("results");
    result.figures().forEach(figure -> results.add(figure(figure)));
    ArrayNode checks = root.putArray("checks");
    result
        .checks()
        .forEach(
            c ->
                checks
                    .addObject()
                    .put("name", c.name())
                    .put("met", c.met())
                    .put("words", c.words()));
    ArrayNode departures = root.putArray("departures");
    result.departures().forEach(departures::add);
    ArrayNode suspects = root.putArray("suspect_rows");
    result.suspects().forEach(suspects::add);
    result.curve().ifPresent(curve -> curve(root.putObject("virgin_curve"), curve));
    channels(root.putArray("channels"), summary);
    ArrayNode checklist = root.putArray("checklist");
    header
        .checklist()
        .forEach(
            c ->
                checklist
                    .addObject()
                    .put("name", c.name())
                    .put("state", c.state())
                    .put("seen", c.seen()));
    observations(root.putObject("observations"), summary.observations());
    optional(root, "companions", summary.companions());
    optional(root, "failure", summary.failure());
    provenance(root, header.rig().name(), summary.provenance());
    return root;
  }

  private static void provenance(ObjectNode root, String rig, Provenance provenance) {
    root.put("made_by", provenance.maker().word());
    ObjectNode register = root.putObject("register").put("rig", rig);
    optional(register, "witness_before", provenance.witnessBefore());
    if (provenance.correction().isEmpty()) {
      root.putNull("correction");
      return;
    }
    Provenance.Correction correction = provenance.correction().get();
    ObjectNode node = root.putObject("correction");
    node.put("who", correction.who());
    node.put("when", correction.when().toString());
    node.put("why", correction.why());
    node.put("replaces", correction.replacedFile());
    node.put("replaced_sha256", correction.replacedSha256());
    ArrayNode changes = node.putArray("changes");
    for (Provenance.Change change : correction.changes()) {
      ObjectNode entry = changes.addObject().put("what", change.what());
      change.from().ifPresentOrElse(from -> entry.put("from", from), () -> entry.putNull("from"));
      entry.put("to", change.to());
    }
  }

  private ObjectNode specimen(Specimen specimen) {
    ObjectNode node = mapper.createObjectNode();
    node.put("name", specimen.name());
    node.put("series", specimen.series());
    node.put("shape", specimen.shape());
    ArrayNode millimetres = node.putArray("diameters_mm");
    ArrayNode inches = node.putArray("diameters_in");
    for (double diameter : specimen.diametersMillimetres()) {
      millimetres.add(diameter);
      inches.add(Unit.INCH.fromBase(diameter));
    }
    real(node, "length_mm", specimen.lengthMillimetres(), Unit.MILLIMETRE);
    real(node, "length_in", specimen.lengthMillimetres(), Unit.INCH);
    for (Dimension dimension : Dimension.values()) {
      specimen
          .dimension(dimension)
          .ifPresent(
              base ->
                  dimension
                      .units()
                      .forEach(unit -> node.put(dimension.summaryKey(unit), unit.fromBase(base))));
    }
    real(node, "mass_kg", specimen.massKilograms(), Unit.KILOGRAM);
    real(node, "mass_lb", specimen.massKilograms(), Unit.POUND);
    optional(node, "cast", specimen.cast().map(HeaderParser.DATE_TIME::format));
    real(node, "planned_age_days", specimen.plannedAgeDays(), Unit.ONE);
    optional(node, "ends", specimen.ends());
    optional(node, "curing", specimen.curing());
    optional(node, "moisture", specimen.moisture());
    ObjectNode asWritten = node.putObject("as_written");
    new TreeMap<>(specimen.asWritten()).forEach(asWritten::put);
    return node;
  }

  private ObjectNode raw(Summary summary) {
    Closing closing = summary.closing();
    return mapper
        .createObjectNode()
        .put("file", summary.rawFileName())
        .put("sha256", closing.fileSha256())
        .put("rows", closing.rows())
        .put("lost", closing.lost())
        .put("reason", closing.reason().word());
  }

  private ObjectNode figure(MethodResult.Figure figure) {
    ObjectNode node = mapper.createObjectNode();
    node.put("name", figure.name());
    node.put("title", figure.title());
    finite(node, "value", figure.exact());
    node.put("unit", figure.unit().symbol());
    node.put("ucum", figure.unit().ucum());
    node.put("rounded", figure.rounded());
    node.putObject("inch_pound")
        .put("rounded", figure.inchPoundRounded())
        .put("unit", figure.inchPoundUnit().symbol());
    figure.samplingBound().ifPresent(bound -> finite(node, "sampling_bound", bound));
    figure.uncertainty().ifPresent(budget -> node.set("uncertainty", budget(budget)));
    ArrayNode rows = node.putArray("rows");
    figure.rows().forEach(rows::add);
    return node;
  }

  private ObjectNode budget(UncertaintyBudget budget) {
    ObjectNode node = mapper.createObjectNode();
    finite(node, "expanded", budget.expanded());
    node.put("coverage_factor", 2);
    finite(node, "combined", budget.combined());
    finite(node, "effective_degrees_of_freedom", budget.effectiveDegreesOfFreedom());
    ArrayNode lines = node.putArray("budget");
    for (UncertaintyBudget.Line line : budget.lines()) {
      ObjectNode entry = lines.addObject();
      entry.put("source", line.source());
      finite(entry, "contribution", line.contribution());
      finite(entry, "degrees_of_freedom", line.degreesOfFreedom());
    }
    return node;
  }

  /** Columns side by side, so that a table program takes it as it is. */
  private static void curve(ObjectNode node, VirginTable curve) {
    ArrayNode gauges = node.putArray("gauges");
    curve.gauges().forEach(gauges::add);
    ArrayNode loads = node.putArray("load_n");
    ArrayNode widths = node.putArray("width_mm");
    ArrayNode masks = node.putArray("gauge_mask");
    ArrayNode rows = node.putArray("row");
    for (VirginTable.Point point : curve.points()) {
      loads.add(point.newtons());
      widths.add(point.millimetres());
      masks.add(point.mask());
      rows.add(point.row());
    }
  }

  private void channels(ArrayNode array, Summary summary) {
    for (int i = 0; i < summary.channels().size(); i++) {
      ChannelTally tally = summary.channels().get(i);
      ObjectNode node = array.addObject();
      node.put("name", tally.channel());
      ChannelFacts facts = summary.header().channels().get(i).facts();
      node.put("unit", facts.unit().symbol());
      node.put("readings", tally.received());
      node.put("marked", tally.marked());
      ObjectNode byQuality = node.putObject("by_quality");
      for (Quality quality : Quality.values()) {
        byQuality.put(quality.word(), tally.of(quality));
      }
      finite(node, "rate_hz", tally.rateHertz());
      finite(node, "jitter_ms", tally.jitterMillis());
      finite(node, "longest_gap_ms", tally.longestGapMillis());
      node.put("calibration", summary.calibrationStates().get(i));
      finite(node, "calibration_percent", facts.calibrationPercent().orElse(Double.NaN));
      finite(node, "correction_percent", facts.correctionPercent().orElse(Double.NaN));
    }
  }

  private static void observations(ObjectNode node, Observations observations) {
    optional(node, "fracture_type", observations.fractureType());
    optional(node, "fracture_words", observations.fractureWords());
    optional(node, "aggregate", observations.aggregate());
    observations.imprint().ifPresent(seen -> node.put("imprint", seen));
    observations.voids().ifPresent(words -> node.put("voids", words));
    optional(node, "notes", observations.notes());
    if (!observations.enclosures().isEmpty()) {
      ArrayNode enclosures = node.putArray("enclosures");
      for (Enclosure one : observations.enclosures()) {
        enclosures
            .addObject()
            .put("file", one.file())
            .put("sha256", one.sha256())
            .put("came_from", one.cameFrom());
      }
    }
    BreakPosition position = observations.breakPosition();
    if (position instanceof BreakPosition.Outside outside) {
      node.put("break_position", "outside the middle third");
      node.put("break_distance_mm", outside.millimetres());
    } else {
      optional(
          node,
          "break_position",
          position.equals(BreakPosition.MIDDLE_THIRD)
              ? Optional.of("middle third")
              : Optional.empty());
      node.putNull("break_distance_mm");
    }
  }

  private static void optional(ObjectNode node, String name, Optional<String> value) {
    value.ifPresentOrElse(text -> node.put(name, text), () -> node.putNull(name));
  }

  private static void real(ObjectNode node, String name, OptionalDouble base, Unit unit) {
    base.ifPresentOrElse(value -> node.put(name, unit.fromBase(value)), () -> node.putNull(name));
  }

  /** JSON has no NaN and no infinity: both are null. */
  private static void finite(ObjectNode node, String name, double value) {
    if (Double.isFinite(value)) {
      node.put(name, value);
    } else {
      node.putNull(name);
    }
  }
}
