package io.github.platenwire.explain;

import io.github.platenwire.live.CrackResult;
import io.github.platenwire.live.FollowedRow;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Tells why a record has no figure of a name that its method could have given. Immutable. */
final class AbsentFigure {
  private static final Pattern LOAD_AT = Pattern.compile("load-at-([0-9.]+)-mm");
  private static final String DISCARDED = "The result is discarded";

  private final Evidence evidence;
  private final String name;

  AbsentFigure(Evidence evidence, String name) {
    this.evidence = evidence;
    this.name = name;
  }

  /** The lines; empty if nothing is known of such a figure. */
  List<String> lines() {
    Telling telling = new Telling(evidence.first());
    telling.head("There is no " + name + " of " + evidence.specimen().name() + ".");
    int before = telling.lines().size();
    if (name.equals("strength")) {
      discarded(telling);
    } else if (new AbsorptionStory(evidence).isRate(name)) {
      rate(telling);
    } else if (LOAD_AT.matcher(name).matches()) {
      notReached(telling);
    } else if (name.equals("modulus") || name.equals("poisson")) {
      all(telling);
    }
    return telling.lines().size() == before ? List.of() : telling.lines();
  }

  private void all(Telling telling) {
    evidence.result().departures().forEach(telling::head);
  }

  private void discarded(Telling telling) {
    List<String> why =
        evidence.result().departures().stream().filter(one -> one.startsWith(DISCARDED)).toList();
    if (why.isEmpty()) {
      all(telling);
      return;
    }
    why.forEach(telling::head);
    telling.head("");
    new StressStory(evidence).tell(evidence.figure("peak-load").orElseThrow(), telling);
    new SizeStory(evidence).measured(telling);
    new BreakStory(evidence).tell(telling);
    telling.step("So there is a greatest load, but no strength. " + why.get(0));
  }

  private void rate(Telling telling) {
    String stretch = name.substring(0, name.length() - "-rate".length());
    List<String> why =
        evidence.result().departures().stream()
            .filter(one -> one.startsWith("No rate of " + stretch + " absorption"))
            .toList();
    why.forEach(telling::head);
    if (!why.isEmpty()) {
      telling.head("");
      new AbsorptionStory(evidence).withoutRate(name, telling);
    }
  }

  private void notReached(Telling telling) {
    Matcher width = LOAD_AT.matcher(name);
    boolean asked =
        width.matches() && evidence.reduction().method().text().contains(width.group(1));
    if (!asked || evidence.trail().crack().isEmpty()) {
      return;
    }
    double widest =
        evidence.trail().rows().stream()
            .map(FollowedRow::averaged)
            .mapToDouble(FollowedRow.Averaged::width)
            .filter(Double::isFinite)
            .max()
            .orElse(0);
    CrackResult crack = evidence.trail().crack().get();
    telling.head(
        String.format(
                Locale.ROOT,
                "The crack did not pass that width lastingly: the widest average of %d rows is ",
                crack.rows())
            + Term.millimetres(widest).both(evidence.first())
            + ".");
  }
}
