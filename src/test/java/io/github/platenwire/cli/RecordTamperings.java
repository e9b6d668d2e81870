package io.github.platenwire.cli;

import static io.github.platenwire.cli.AuditLab.edit;
import static io.github.platenwire.cli.AuditLab.forge;

import io.github.platenwire.cli.AuditFindingsTest.Tampering;
import io.github.platenwire.lab.PrivateKeys;
import io.github.platenwire.lab.Register;
import io.github.platenwire.lab.RegisterLine;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.reading.WallClock;
import io.github.platenwire.record.Digests;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/**
 * What can be wrong with a test, brought into a raw file's head or events with all seals made anew:
 * the register shows such a forgery anyhow, but the checks of the test itself must show it too.
 */
final class RecordTamperings {
  private RecordTamperings() {}

  /** A time of day after everything that the archive holds. */
  static WallClock later() {
    return () -> SystemClocks.wall().now().plus(Duration.ofMinutes(5));
  }

  private static void put(Map<String, Tampering> all, String id, UnaryOperator<String> change) {
    all.put(id, lab -> forge(lab.raw(1), change));
  }

  private static UnaryOperator<String> swap(String regex, String by) {
    return text -> text.replaceFirst(regex, by);
  }

  static void method(Map<String, Tampering> all) {
    put(
        all,
        "rate-outside",
        text ->
            text.replace("low-mpa-per-second = 0.20", "low-mpa-per-second = 0.29")
                .replace("low-psi-per-second = 28.0", "low-psi-per-second = 41.0"));
    put(all, "age-outside", swap("\n# cast = 20..-", "\n# cast = 1999-"));
    put(all, "zero-outside", swap("zero-tolerance = 5.0", "zero-tolerance = 0.001"));
    put(all, "range-exceeded", swap("range = \\[-15.0, 1500.0", "range = [-15.0, 100.0"));
    put(all, "method-not-met", swap("diameters-mm = \\[1\\d+\\.", "diameters-mm = [109."));
    put(
        all,
        "overridden",
        swap("\n# operator", "\n# override-reason = \"client asked for it\"\n# operator"));
    put(all, "before-cast", swap("\n# cast = 20..-", "\n# cast = 2090-"));
    all.put(
        "specimen-changed",
        lab ->
            edit(lab.root().resolve("specimens.csv"), swap("(RA-S-07-2,.*),ground", "$1,capped")));
    all.put(
        "table-unreadable",
        lab -> edit(lab.root().resolve("specimens.csv"), swap("RA-S-07-2,", "RA-S-07-1,")));
  }

  static void links(Map<String, Tampering> all) {
    put(all, "zero-drift", swap("zero load=[0-9.]+", "zero load=3.0"));
    put(all, "clock-step", swap(",loading,", ",clock step -3600.0 s,"));
    put(all, "link-lost", swap(",loading,", ",link lost load (pulled),"));
    put(all, "readings-lost", swap(" lost=0 ", " lost=5 "));
    put(all, "silence", swap("(\n400,[0-9]+,load),.*", "$1,,,late"));
    put(all, "gap-unmarked", RecordTamperings::withGap);
    put(
        all,
        "marked-readings",
        text ->
            text.replaceFirst("(\n400,[0-9]+,load),.*", "$1,???,,garbled")
                .replaceFirst("(\n401,[0-9]+,load),.*", "$1,???,,garbled"));
  }

  /** Every row from the thousandth on a minute later. */
  private static String withGap(String text) {
    StringBuilder out = new StringBuilder();
    for (String line : text.lines().toList()) {
      String[] columns = line.split(",", 3);
      boolean later = line.matches("[0-9]{4},[0-9]+,.*");
      out.append(
              later
                  ? columns[0] + "," + (Long.parseLong(columns[1]) + 60_000_000) + "," + columns[2]
                  : line)
          .append('\n');
    }
    return out.toString();
  }

  static void calibrations(Map<String, Tampering> all) {
    put(all, "calibration-missing", swap("\n# calibration = \"frame-1-load\"", ""));
    put(
        all,
        "calibration-out-of-date",
        text ->
            text.replaceFirst("\n# date = 20..-", "\n# date = 2001-")
                .replaceFirst("\n# due = 20..-", "\n# due = 2002-"));
    put(
        all,
        "calibration-range",
        swap(
            "(\n# expanded-uncertainty-percent = 0.5)",
            "$1\n# unit = \\\\\"kN\\\\\"\n# [[run]]"
                + "\n# direction = \\\\\"ascending\\\\\""
                + "\n# rows = [[20, 20], [40, 40], [60, 60], [80, 80], [100, 100]]"));
    all.put(
        "calibration-differs",
        lab -> edit(calibration(lab), swap("percent = 0.5", "percent = 0.2")));
    all.put("calibration-not-kept", lab -> Files.delete(calibration(lab)));
  }

  private static Path calibration(AuditLab lab) {
    return lab.root().resolve("calibrations").resolve("frame-1-load.toml");
  }

  static void order(Map<String, Tampering> all) {
    put(all, "ended-before-start", swap(" ended=20..-", " ended=2001-"));
    put(all, "closed-before-start", swap("\n# start = 20..-", "\n# start = 2090-"));
    put(all, "start-backward", swap("\n# start = 20..-", "\n# start = 2001-"));
    all.put(
        "overlap",
        lab -> {
          String start = start(Files.readString(lab.raw(0)));
          forge(lab.raw(1), text -> text.replace(start(text), start));
        });
    put(all, "tested-twice", swap("name = \"RA-S-07-2\"", "name = \"RA-S-07-1\""));
  }

  private static String start(String text) {
    int at = text.indexOf("\n# start = ");
    return text.substring(at, text.indexOf('\n', at + 1));
  }

  /** Signs the whole register with another key, over the files as they are. */
  static void signAnew(AuditLab lab) throws Exception {
    List<RegisterLine> lines =
        io.github.platenwire.lab.RegisterCheck.of(lab.lab(), AuditLab.RIG).lines();
    Files.delete(lab.registerFile());
    Files.delete(lab.lab().keysFolder().resolve(AuditLab.RIG + ".pub"));
    PrivateKeys forgers = new PrivateKeys(lab.root().resolveSibling("forger"));
    Register register = Register.open(lab.lab(), AuditLab.RIG, forgers, SystemClocks.wall());
    for (int i = 0; i < lines.size(); i++) {
      try (Register.Entry entry = register.begin()) {
        entry.append(
            RegisterLine.Kind.CLOSE,
            lab.test(i),
            Digests.sha256Hex(Files.readAllBytes(lab.raw(i))),
            Digests.sha256Hex(Files.readAllBytes(lab.summary(i))));
      }
    }
  }
}
