package io.github.platenwire.report;

import io.github.platenwire.chart.Theme;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.quantity.UnitSystem;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/**
 * What every report of a lab needs to know. Immutable.
 *
 * @param lab the lab folder
 * @param folder where the page will lie: links are relative to it
 * @param program name, version and commit of the program
 * @param now when the report is made, UTC
 */
public record ReportSetting(LabFolder lab, Path folder, String program, Instant now) {
  /** Makes the folder absolute. */
  public ReportSetting {
    folder = folder.toAbsolutePath().normalize();
  }

  UnitSystem first() {
    return lab.settings().unitsFirst();
  }

  /** Of charts. */
  Theme theme() {
    return Theme.LIGHT.withFirst(first());
  }

  ZoneId zone() {
    return lab.settings().zone();
  }

  String made() {
    return "made " + Words.moment(now, zone()) + " with " + program;
  }

  /** A link to a file, by its name alone where no relative way leads to it. */
  Inline link(Path file) {
    return link(file, Inline.code(String.valueOf(file.getFileName())));
  }

  Inline link(Path file, Inline words) {
    Path target = file.toAbsolutePath().normalize();
    boolean reachable = target.getRoot() != null && target.getRoot().equals(folder.getRoot());
    return reachable ? Inline.link(address(folder.relativize(target)), words) : words;
  }

  private static String address(Path relative) {
    List<String> parts = new ArrayList<>();
    relative.forEach(
        part ->
            parts.add(
                URLEncoder.encode(part.toString(), StandardCharsets.UTF_8).replace("+", "%20")));
    return String.join("/", parts);
  }

  /** A record's raw file by its place in the lab folder. */
  Inline record(String inLab, Inline words) {
    return link(lab.root().resolve(inLab), words);
  }
}
