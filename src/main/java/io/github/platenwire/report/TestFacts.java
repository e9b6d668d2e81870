package io.github.platenwire.report;

import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.record.Provenance;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.StoredSummary;
import io.github.platenwire.record.SummaryFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What was tested, when, by whom, on what, and in what state it was. Used once. */
final class TestFacts {
  private static final DateTimeFormatter CAST =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
  private static final int DIGITS = 6;

  private final ReportSetting setting;
  private final StoredSummary summary;
  private final RawScan scan;

  TestFacts(ReportSetting setting, StoredSummary summary, RawScan scan) {
    this.setting = setting;
    this.summary = summary;
    this.scan = scan;
  }

  void add(Page page) throws IOException {
    page.section("Specimen").facts(specimen(scan.header().specimen()));
    corrections(page);
    page.section("Test").facts(test());
    page.section("Frame and calibration").facts(channels());
    checklist(page);
  }

  private Facts specimen(Specimen specimen) {
    Facts facts = new Facts();
    facts.add("Specimen", Inline.strong(specimen.name()));
    facts.add("Series", specimen.series());
    facts.add("Shape", specimen.shape());
    int number = 0;
    for (double diameter : specimen.diametersMillimetres()) {
      facts.add("Diameter " + ++number, length(diameter));
    }
    specimen.lengthMillimetres().ifPresent(length -> facts.add("Length", length(length)));
    for (Dimension dimension : Dimension.values()) {
      specimen
          .dimension(dimension)
          .ifPresent(
              value ->
                  facts.add(
                      capital(dimension.word().replace('_', ' ')),
                      dimension.units().contains(Unit.MILLIMETRE)
                          ? length(value)
                          : dimension.units().stream()
                              .map(unit -> Words.plain(unit.fromBase(value)) + " " + unit.symbol())
                              .collect(Collectors.joining(" = "))));
    }
    specimen
        .massKilograms()
        .ifPresent(mass -> facts.add("Mass", both(mass, Unit.KILOGRAM, Unit.POUND)));
    facts.add("Cast", specimen.cast().map(CAST::format));
    specimen.plannedAgeDays().ifPresent(age -> facts.add("Planned age", Words.days(age)));
    facts.add("Ends", specimen.ends());
    facts.add("Curing", specimen.curing());
    facts.add("Moisture", specimen.moisture());
    facts.add(
        "Notes",
        Optional.ofNullable(specimen.asWritten().get("notes")).filter(words -> !words.isBlank()));
    return facts;
  }

  private String length(double millimetres) {
    return both(millimetres, Unit.MILLIMETRE, Unit.INCH);
  }

  private String both(double base, Unit si, Unit inchPound) {
    String metric = Words.shortest(si.fromBase(base), DIGITS) + " " + si.symbol();
    String other = Words.shortest(inchPound.fromBase(base), DIGITS) + " " + inchPound.symbol();
    return setting.first() == UnitSystem.SI
        ? metric + " (" + other + ")"
        : other + " (" + metric + ")";
  }

  private static String capital(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  private void corrections(Page page) throws IOException {
    List<Inline> items = new ArrayList<>();
    for (Provenance.Change change : SummaryFile.changes(summary.file())) {
      items.add(
          Inline.text(
              change.what()
                  + ": "
                  + change.from().map(Words::plain).orElse("not measured")
                  + " in the raw file's head, corrected to "
                  + Words.plain(change.to())));
    }
    page.list(items);
    Set<Path> told = new HashSet<>();
    Optional<Path> version = Optional.of(summary.file());
    while (version.isPresent() && told.add(version.get())) {
      version = told(page, version.get());
    }
  }

  /** Tells how a version came about; returns the one before it. */
  private Optional<Path> told(Page page, Path version) throws IOException {
    Optional<Provenance.Correction> correction = SummaryFile.correction(version);
    if (correction.isEmpty()) {
      return Optional.empty();
    }
    boolean added = SummaryFile.maker(version).equals(Optional.of(Provenance.Maker.OBSERVE));
    Path before = version.resolveSibling(correction.get().replacedFile());
    page.note(
        added ? Tone.PLAIN : Tone.CAUTION,
        Inline.text(
                (added
                        ? "Observation added after the test by "
                        : "Measurements of this specimen were corrected after the test by ")
                    + correction.get().who()
                    + " on "
                    + Words.moment(correction.get().when(), setting.zone())
                    + (added ? "" : ": " + correction.get().why())
                    + ". The version before stays as ")
            .and(setting.link(before))
            .and("."));
    return Optional.of(before).filter(Files::isRegularFile);
  }

  private Facts test() {
    RawHeader header = scan.header();
    Facts facts = new Facts();
    facts.add("Method", header.method().name() + ": " + summary.method().title());
    facts.add("Standard", summary.method().standard());
    facts.add("Started", Words.moment(summary.start(), setting.zone()));
    scan.end()
        .closing()
        .ifPresent(
            closing ->
                facts.add(
                    "Ended",
                    Words.moment(closing.ended(), setting.zone())
                        + ", by "
                        + closing.reason().word()));
    facts.add("Operator", header.operator().orElse("not said"));
    facts.add("Lab", header.lab());
    facts.add("Recorded with", summary.program());
    facts.add("Tested in spite of a warning", header.overrideReason());
    return facts;
  }

  private Facts channels() {
    Facts facts = new Facts();
    facts.add("Frame", summary.rig());
    for (StoredSummary.StoredChannel channel : summary.channels()) {
      facts.add("Calibration of " + channel.name(), channel.calibration());
    }
    for (RawHeader.HeaderChannel channel : scan.header().channels()) {
      String unit = channel.facts().unit().symbol();
      StringBuilder words = new StringBuilder();
      words.append("range ").append(Words.plain(channel.facts().rangeLow())).append(" to ");
      words.append(Words.plain(channel.facts().rangeHigh())).append(' ').append(unit);
      channel
          .facts()
          .resolution()
          .ifPresent(
              step -> words.append(", step ").append(Words.plain(step)).append(' ').append(unit));
      words.append(", device definition ").append(channel.device().name());
      words.append(", port ").append(channel.port());
      facts.add("Channel " + channel.facts().name(), words.toString());
    }
    return facts;
  }

  private void checklist(Page page) {
    PageTable table =
        PageTable.named("checklist", "Checklist before the start")
            .names("Check")
            .names("State")
            .words("What was seen");
    for (RawHeader.HeaderCheck check : scan.header().checklist()) {
      table.row(
          Cell.of(check.name()),
          Cell.of(check.state()).in(tone(check.state())),
          Cell.of(check.seen()));
    }
    page.table(table);
  }

  private static Tone tone(String state) {
    return switch (state) {
      case "passed" -> Tone.PLAIN;
      case "warning" -> Tone.CAUTION;
      default -> Tone.BAD;
    };
  }
}
