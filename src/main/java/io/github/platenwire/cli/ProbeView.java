package io.github.platenwire.cli;

import io.github.platenwire.commission.ProbeFit;
import io.github.platenwire.commission.ProbeResult;
import io.github.platenwire.commission.Prober;
import io.github.platenwire.commission.SampleReport;
import io.github.platenwire.port.LineSettings;
import io.github.platenwire.port.ListedPort;
import io.github.platenwire.port.PortAddress;
import io.github.platenwire.terminal.Paragraph;
import io.github.platenwire.terminal.Style;
import java.util.ArrayList;
import java.util.List;

/** What came of probing, for a person. Stateless. */
final class ProbeView {
  private static final int MOST_FITS = 3;
  private static final int SAMPLES = 4;

  private ProbeView() {}

  static List<String> lines(List<ProbedPort> probed, boolean onlyListed, Face face) {
    List<String> out = new ArrayList<>();
    for (ProbedPort port : probed) {
      if (!out.isEmpty() && !onlyListed) {
        out.add("");
      }
      out.add(face.look().palette().paint(Style.STRONG, safe(title(port.port()), face)));
      if (!onlyListed) {
        result(out, port, face);
      }
    }
    return out;
  }

  private static String title(ListedPort port) {
    boolean more = !port.description().isEmpty() && !port.path().endsWith(port.description());
    return port.path()
        + (more ? "  " + port.description() : "")
        + (port.place().isEmpty() ? "" : "  (at " + port.place() + ")");
  }

  private static void result(List<String> out, ProbedPort port, Face face) {
    if (port.result().isEmpty()) {
      String path = port.port().path() + ": ";
      String failure = port.failure();
      String bare = failure.startsWith(path) ? failure.substring(path.length()) : failure;
      say(out, Style.BAD, "Cannot be listened to: " + bare, face);
      return;
    }
    ProbeResult result = port.result().get();
    if (!result.fits().isEmpty()) {
      result.fits().stream().limit(MOST_FITS).forEach(fit -> fit(out, port.port(), fit, face));
      int more = result.fits().size() - MOST_FITS;
      if (more > 0) {
        say(out, Style.PLAIN, "and " + more + " more that fit no better", face);
      }
      next(out, port.port(), result, face);
    } else if (result.bytes() == 0) {
      say(out, Style.WARNING, silent(), face);
    } else {
      unknown(out, port.port(), result, face);
    }
  }

  private static String silent() {
    return "Silent. Is the device switched on, set to send, and the cable the right one? A device"
        + " that speaks only when asked is found with --ask.";
  }

  private static void fit(List<String> out, ListedPort port, ProbeFit fit, Face face) {
    boolean whole = fit.report().isComplete();
    say(
        out,
        whole ? Style.GOOD : Style.WARNING,
        fit.definition().name()
            + (isSerial(port) ? " at " + Prober.words(fit.settings()) : "")
            + (fit.asked() ? ", asked" : "")
            + ": explains "
            + explained(fit.report()),
        face);
    fit.report().readings().stream()
        .skip(fit.definition().valueFields().size())
        .limit(SAMPLES)
        .forEach(reading -> out.add("     " + safe(reading, face)));
  }

  private static String explained(SampleReport report) {
    return report.share() == 1
        ? "all " + report.bytes() + " bytes"
        : report.explainedBytes()
            + " of "
            + report.bytes()
            + " bytes, "
            + SampleView.percent(report.share());
  }

  private static void next(List<String> out, ListedPort port, ProbeResult result, Face face) {
    ProbeFit best = result.fits().get(0);
    boolean own = best.asked() || best.settings().equals(best.definition().lineSettings());
    out.add("  Next:");
    out.add(
        safe(
            "    platenwire listen "
                + port.path()
                + " --device "
                + best.definition().name()
                + (own ? "" : line(port, best.settings())),
            face));
  }

  /** The options that set a serial line; other ports take no notice of them. */
  private static String line(ListedPort port, LineSettings settings) {
    return isSerial(port) ? " --baud " + Prober.words(settings).replace(" ", " --format ") : "";
  }

  private static boolean isSerial(ListedPort port) {
    return PortAddress.parse(port.path()) instanceof PortAddress.Serial;
  }

  private static void unknown(List<String> out, ListedPort port, ProbeResult result, Face face) {
    String at =
        result
            .readable()
            .filter(settings -> isSerial(port))
            .map(settings -> " Most like text at " + Prober.words(settings) + ":")
            .orElse(" It begins:");
    say(
        out,
        Style.WARNING,
        result.bytes() + " bytes were heard, but no definition fits." + at,
        face);
    out.add("     " + safe(result.heard(), face));
    out.add("  Next: keep a minute of it, and have a definition drafted:");
    String line = result.readable().map(settings -> line(port, settings)).orElse("");
    out.add(safe("    platenwire listen " + port.path() + line + " --save LOG", face));
    out.add("    platenwire device new --name NAME --sample LOG");
  }

  private static void say(List<String> out, Style style, String words, Face face) {
    for (String line : Paragraph.lines(safe(words, face), face.columns() - 2)) {
      out.add("  " + face.look().palette().paint(style, line));
    }
  }

  private static String safe(String words, Face face) {
    return face.look().glyphs().text(words);
  }
}
