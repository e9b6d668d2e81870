package io.github.platenwire.terminal;

import io.github.platenwire.method.ChordPart;
import io.github.platenwire.method.LiveView;
import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;

/** Writes what a test of a modulus shows of its cycles, one fact a line. Immutable. */
final class ChordLines {
  private final LiveView view;
  private final ChordPart chord;
  private final Look look;
  private final boolean wide;

  ChordLines(LiveView view, ChordPart chord, Look look, boolean wide) {
    this.view = view;
    this.chord = chord;
    this.look = look;
    this.wide = wide;
  }

  /** The strains. */
  List<Line> strains() {
    List<Line> lines = new ArrayList<>(List.of(strain("strain", chord.strain())));
    chord.across().ifPresent(across -> lines.add(strain("across", across)));
    return lines;
  }

  private Line strain(String label, double strain) {
    String number = Shown.decimal(Unit.MICROSTRAIN.fromBase(strain), 1);
    return label(label)
        .add(TextWidth.padLeft(number, wide ? 8 : 7))
        .add(" " + Unit.MICROSTRAIN.symbol());
  }

  /** Cycle, next mark and latest modulus. */
  List<Line> facts() {
    List<Line> lines = new ArrayList<>();
    lines.add(label("cycle").add(cycle()));
    lines.add(label("next").add(next()));
    lines.add(label(wide ? "modulus" : "E").add(modulus()));
    return lines;
  }

  private String cycle() {
    if (chord.next() == ChordPart.Next.DONE) {
      return "all " + chord.planned() + " are done";
    }
    return chord.cycle()
        + " of "
        + chord.planned()
        + (chord.cycle() == 1 ? ", seats the gauges, not counted" : "");
  }

  /** What is to be reached next, and how far off it is. */
  String next() {
    return switch (chord.next()) {
      case FIRST_MARK ->
          microstrain(chord.firstStrain())
              + toGo(microstrain(chord.firstStrain() - chord.strain()), chord.strain());
      case SECOND_MARK ->
          Shown.LOAD.both(chord.secondNewtons(), look.first())
              + toGo(
                  Shown.LOAD.one(chord.secondNewtons() - view.loadNewtons(), look.first()),
                  view.loadNewtons());
      case UNLOAD -> "take the load off";
      case DONE -> "nothing; the record closes by itself";
    };
  }

  private static String toGo(String left, double now) {
    return Double.isFinite(now) ? ", " + left + " to go" : "";
  }

  private static String microstrain(double strain) {
    return Shown.decimal(Unit.MICROSTRAIN.fromBase(strain), 0) + " " + Unit.MICROSTRAIN.symbol();
  }

  private String modulus() {
    return chord.lastCycle() == 0 ? "not yet" : lastModulus() + " in cycle " + chord.lastCycle();
  }

  /** The modulus of the latest chord in both units. */
  String lastModulus() {
    return Shown.MODULUS.both(chord.lastMegapascals(), look.first());
  }

  /** One line for a pipe: strain, cycle, next mark and latest modulus. */
  String plain() {
    return "  strain "
        + TextWidth.padLeft(Shown.decimal(Unit.MICROSTRAIN.fromBase(chord.strain()), 1), 7)
        + " "
        + Unit.MICROSTRAIN.symbol()
        + "  cycle "
        + Math.min(chord.cycle(), chord.planned())
        + " of "
        + chord.planned()
        + "  next "
        + next()
        + (chord.lastCycle() == 0 ? "" : "  modulus " + lastModulus());
  }

  private Line label(String label) {
    return new Line(look).add(" " + label).to(wide ? 11 : 7);
  }
}
