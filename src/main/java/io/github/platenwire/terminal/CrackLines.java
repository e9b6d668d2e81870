package io.github.platenwire.terminal;

import io.github.platenwire.method.CrackPart;
import java.util.ArrayList;
import java.util.List;

/** Writes what a test shows of its crack, one fact a line, in both systems of units. Immutable. */
final class CrackLines {
  private final CrackPart crack;
  private final Look look;
  private final boolean wide;

  CrackLines(CrackPart crack, Look look, boolean wide) {
    this.crack = crack;
    this.look = look;
    this.wide = wide;
  }

  /** The mean width and the gauges that it rests on. */
  Line width() {
    Line line = figure("width", crack.widthMillimetres());
    boolean all = crack.gauges().stream().allMatch(CrackPart.Gauge::counts);
    String rests = "mean of " + crack.restsOn();
    return wide ? line.add("   ").add(all ? Style.PLAIN : Style.WARNING, rests) : line;
  }

  /** Each gauge, lost ones with a word. */
  List<Line> gauges() {
    List<Line> lines = new ArrayList<>();
    for (CrackPart.Gauge gauge : crack.gauges()) {
      Line line = figure(gauge.name(), gauge.openingMillimetres());
      gauge.fault().ifPresent(fault -> line.add("   ").add(Style.WARNING, "left out: " + fault));
      lines.add(line);
    }
    return lines;
  }

  /** The difference between the faces. */
  Line rotation() {
    return figure("a less b", crack.rotationMillimetres());
  }

  /** Threshold, first crack, comparison and state, as far as there are. */
  List<Line> facts() {
    List<Line> lines = new ArrayList<>();
    crack
        .next()
        .ifPresent(
            next ->
                lines.add(
                    label("next")
                        .add(
                            Shown.WIDTH.both(next.millimetres(), look.first())
                                + ", "
                                + Shown.WIDTH.one(next.toGoMillimetres(), look.first())
                                + " to go"
                                + (wide ? "; " + next.meaning() : ""))));
    lines.add(label("cracked").add(firstCrack()));
    crack.ghost().ifPresent(ghost -> lines.add(label("beside").add(beside(ghost))));
    if (!crack.state().isEmpty()) {
      lines.add(label("now").add(crack.state()));
    }
    return lines;
  }

  private String firstCrack() {
    if (crack.firstCrackByDeparture().isEmpty() && crack.firstCrackBySmallWidth().isEmpty()) {
      return "not yet";
    }
    List<String> parts = new ArrayList<>();
    crack
        .firstCrackByDeparture()
        .ifPresent(load -> parts.add("left its line at " + Shown.LOAD.both(load, look.first())));
    crack
        .firstCrackBySmallWidth()
        .ifPresent(load -> parts.add("small width at " + Shown.LOAD.one(load, look.first())));
    return String.join("; ", parts);
  }

  private String beside(CrackPart.Beside ghost) {
    double wider = ghost.widerMillimetres();
    return Shown.WIDTH.both(Math.abs(wider), look.first())
        + (wider >= 0 ? " wider than " : " narrower than ")
        + ghost.specimen()
        + " at this load";
  }

  private Line figure(String label, double millimetres) {
    return label(label)
        .add(TextWidth.padLeft(Shown.WIDTH.number(millimetres, look.first()), wide ? 8 : 7))
        .add(" " + TextWidth.padRight(Shown.WIDTH.unit(look.first()).symbol(), 5))
        .add(wide ? "   " : "")
        .add(
            TextWidth.padLeft(
                Shown.WIDTH.number(millimetres, Shown.other(look.first())), wide ? 8 : 6))
        .add(" " + Shown.WIDTH.unit(Shown.other(look.first())).symbol());
  }

  private Line label(String label) {
    return new Line(look).add(" " + label).to(wide ? 11 : 7);
  }
}
