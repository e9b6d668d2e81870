package io.github.platenwire.method;

import io.github.platenwire.live.CrackSettings;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads what both kinds of method that follow a crack have in common. Not thread-safe. */
final class CrackParser {
  static final String[] KEYS = {
    "format",
    "kind",
    "name",
    "title",
    "standard",
    "ask",
    "specimen",
    "alignment",
    "zero",
    "gauge",
    "load",
    "machine",
    "initial-line",
    "first-crack",
    "lasting",
    "thresholds",
    "asked",
    "curve",
    "cracked-stiffness",
    "stop",
    "cycle",
    "hold",
    "lost",
    "rounding"
  };

  private static final double MICROS = 1e6;

  /** Heads of records from before this table existed have none: no load was set aside then. */
  private static final CrackRules.Load EVERY_LOAD = new CrackRules.Load(1e12, 0, 1);

  private final TomlSection file;

  CrackParser(TomlSection file) {
    this.file = file;
  }

  CrackRules parse(Optional<CrackRules.Wedge> wedge, Optional<CrackRules.Notch> notch)
      throws TomlException {
    Numbers cracked = table("cracked-stiffness", "from-mm", "to-mm");
    double crackedFrom = cracked.positive("from-mm");
    Numbers first = table("first-crack", "small-width-mm", "departure-factor");
    return new CrackRules(
        file.string("name"),
        file.string("title"),
        file.string("standard"),
        file.section("specimen").strings("shapes"),
        timing(),
        zero(),
        gauge(),
        load(),
        table("machine", "accuracy-percent").positive("accuracy-percent"),
        fit(),
        first.positive("small-width-mm"),
        first.above("departure-factor", 1),
        lasting(),
        thresholds(),
        asked(),
        newtons(table("curve", "step-kn").positive("step-kn")),
        crackedFrom,
        cracked.above("to-mm", crackedFrom),
        table("stop", "width-mm").positive("width-mm"),
        cycle(),
        hold(),
        lost(),
        rounding(),
        wedge,
        notch);
  }

  private Numbers table(String name, String... keys) throws TomlException {
    Numbers table = new Numbers(file.section(name));
    table.allow(keys);
    return table;
  }

  private static double newtons(double kilonewtons) {
    return Unit.KILONEWTON.toBase(kilonewtons);
  }

  private static long micros(double seconds) {
    return Math.round(seconds * MICROS);
  }

  CrackRules.Timing timing() throws TomlException {
    Numbers table =
        table("alignment", "gap-seconds", "burst-seconds", "timing-seconds", "smooth-seconds");
    return new CrackRules.Timing(
        micros(table.within("gap-seconds", 0, 10)),
        micros(table.within("burst-seconds", 0, 10)),
        table.notNegative("timing-seconds") * MICROS,
        micros(table.notNegative("smooth-seconds")));
  }

  private CrackRules.Zero zero() throws TomlException {
    Numbers table =
        table(
            "zero",
            "seconds",
            "quiet-load-percent-of-range",
            "rise-percent-of-range",
            "quiet-gauge-mm");
    return new CrackRules.Zero(
        micros(table.positive("seconds")),
        table.within("quiet-load-percent-of-range", 0, 100),
        table.within("rise-percent-of-range", 0, 100),
        table.positive("quiet-gauge-mm"));
  }

  private CrackRules.Gauge gauge() throws TomlException {
    Numbers table =
        table("gauge", "greatest-slope-mm-per-second", "resolution-mm", "accuracy-percent");
    return new CrackRules.Gauge(
        table.positive("greatest-slope-mm-per-second"),
        table.notNegative("resolution-mm"),
        table.positive("accuracy-percent"));
  }

  private CrackRules.Load load() throws TomlException {
    if (!file.has("load")) {
      return EVERY_LOAD;
    }
    Numbers table =
        table(
            "load",
            "greatest-slope-percent-of-range-per-second",
            "stamp-jitter-seconds",
            "noise-factor");
    return new CrackRules.Load(
        table.positive("greatest-slope-percent-of-range-per-second"),
        micros(table.positive("stamp-jitter-seconds")),
        table.positive("noise-factor"));
  }

  private CrackSettings.FitWindow fit() throws TomlException {
    Numbers table = table("initial-line", "from-kn", "to-kn");
    double from = table.notNegative("from-kn");
    return new CrackSettings.FitWindow(newtons(from), newtons(table.above("to-kn", from)));
  }

  private CrackSettings.Lasting lasting() throws TomlException {
    Numbers table = table("lasting", "rows", "seconds", "hysteresis-mm");
    return new CrackSettings.Lasting(
        table.wholeWithin("rows", 1, 1000),
        micros(table.notNegative("seconds")),
        table.notNegative("hysteresis-mm"));
  }

  private List<CrackRules.Threshold> thresholds() throws TomlException {
    List<CrackRules.Threshold> list = new ArrayList<>();
    double last = 0;
    for (TomlSection table : file.sections("thresholds")) {
      table.allow("width-mm", "meaning", "source");
      last = new Numbers(table).above("width-mm", last);
      list.add(new CrackRules.Threshold(last, table.string("meaning"), table.string("source")));
    }
    return List.copyOf(list);
  }

  private List<CrackRules.Asked> asked() throws TomlException {
    TomlSection table = file.section("asked");
    table.allow("loads-kn", "loads-lbf");
    List<CrackRules.Asked> list = new ArrayList<>();
    ask(list, table, "loads-kn", Unit.KILONEWTON);
    ask(list, table, "loads-lbf", Unit.POUND_FORCE);
    return List.copyOf(list);
  }

  private static void ask(List<CrackRules.Asked> list, TomlSection table, String key, Unit unit)
      throws TomlException {
    for (double load : table.numbers(key)) {
      if (!(load > 0)) {
        throw table.error(key, "each of the '" + key + "' must be greater than 0");
      }
      list.add(
          new CrackRules.Asked(unit.toBase(load), BothUnits.plain(load) + " " + unit.symbol()));
    }
  }

  private CrackSettings.CycleRule cycle() throws TomlException {
    Numbers table = table("cycle", "least-kn", "least-percent-of-peak");
    return new CrackSettings.CycleRule(
        newtons(table.positive("least-kn")), table.within("least-percent-of-peak", 0, 100) / 100);
  }

  private CrackSettings.HoldRule hold() throws TomlException {
    Numbers table = table("hold", "seconds", "percent", "least-kn");
    return new CrackSettings.HoldRule(
        micros(table.positive("seconds")),
        table.within("percent", 0, 100) / 100,
        newtons(table.positive("least-kn")));
  }

  private LoadLost.Rule lost() throws TomlException {
    Numbers table =
        table(
            "lost", "fraction", "wider-mm", "fall-percent", "seconds", "least-kn", "tail-seconds");
    return new LoadLost.Rule(
        table.within("fraction", 0, 1),
        table.notNegative("wider-mm"),
        table.within("fall-percent", 0, 100) / 100,
        micros(table.positive("seconds")),
        newtons(table.positive("least-kn")),
        micros(table.positive("tail-seconds")));
  }

  private CrackRules.Rounding rounding() throws TomlException {
    Numbers table =
        table(
            "rounding",
            "load-kn",
            "load-lbf",
            "width-mm",
            "width-in",
            "stiffness-kn-per-mm",
            "stiffness-lbf-per-in",
            "work-joules",
            "work-inch-pounds",
            "stress-mpa",
            "stress-psi");
    return new CrackRules.Rounding(
        steps(table, "load-kn", "load-lbf"),
        steps(table, "width-mm", "width-in"),
        steps(table, "stiffness-kn-per-mm", "stiffness-lbf-per-in"),
        steps(table, "work-joules", "work-inch-pounds"),
        steps(table, "stress-mpa", "stress-psi"));
  }

  private static Steps steps(Numbers table, String si, String inchPound) throws TomlException {
    return new Steps(table.step(si), table.step(inchPound));
  }
}
