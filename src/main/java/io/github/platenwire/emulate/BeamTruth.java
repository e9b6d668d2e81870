package io.github.platenwire.emulate;

import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** The true load and crack of an emulated beam at any moment of a program. Not thread-safe. */
public final class BeamTruth implements GaugedTruth {
  private static final double SEARCH_SECONDS = 0.05;
  private static final int HALVINGS = 50;

  private final EmulatedBeam beam;
  private final List<BeamProgram.Corner> corners;
  private final List<BeamProgram.Hold> holds;
  private final BeamProgram program;
  private final double seconds;

  /** A beam under a program. */
  public BeamTruth(EmulatedBeam beam, BeamProgram program) {
    this.beam = beam;
    this.program = program;
    corners = List.copyOf(program.corners());
    holds = List.copyOf(program.holds());
    seconds = program.seconds();
  }

  /** The beam. */
  public EmulatedBeam beam() {
    return beam;
  }

  @Override
  public double seconds() {
    return seconds;
  }

  /** Greatest load of the program. */
  public double greatestNewtons() {
    return corners.get(corners.size() - 1).greatest();
  }

  @Override
  public double loadAt(double at) {
    return program.loadAt(at);
  }

  /** Creep grows in proportion to time in holds above half the greatest load so far. */
  private double creepUpTo(double at) {
    double creep = 0;
    for (BeamProgram.Hold hold : holds) {
      if (hold.from() < at && hold.newtons() >= program.greatestUpTo(hold.from()) / 2) {
        double share = Math.min(1, (at - hold.from()) / (hold.to() - hold.from()));
        creep += beam.creepShare() * beam.firstWidth(hold.newtons()) * share;
      }
    }
    return creep;
  }

  /** Mean width of the crack at a moment, millimetres, elastic stretch not in it. */
  public double widthAt(double at) {
    double greatest = program.greatestUpTo(at);
    double first = beam.firstWidth(greatest) + creepUpTo(at);
    double share = greatest > 0 ? loadAt(at) / greatest : 0;
    return first * (beam.residualShare() + (1 - beam.residualShare()) * share);
  }

  /** What a gauge on a face sees, 0 or 1, millimetres, its zero not in it. */
  @Override
  public double openingAt(int face, double at) {
    double stretch = face == 0 ? beam.stretchA() : beam.stretchB();
    double sign = face == 0 ? 1 : -1;
    return stretch * loadAt(at) + widthAt(at) * (1 + sign * beam.faceDifference());
  }

  /** Mean width where a load is reached for the first time; NaN if it is not. */
  public double widthAtLoad(double newtons) {
    for (int i = 1; i < corners.size(); i++) {
      BeamProgram.Corner from = corners.get(i - 1);
      BeamProgram.Corner to = corners.get(i);
      if (to.newtons() >= newtons && to.newtons() > from.newtons()) {
        double share = (newtons - from.newtons()) / (to.newtons() - from.newtons());
        return widthAt(from.seconds() + (to.seconds() - from.seconds()) * share);
      }
    }
    return Double.NaN;
  }

  /** Load where the mean width reaches a level for the first time; NaN if it does not. */
  public double loadAtWidth(double millimetres) {
    return loadWhere(this::widthAt, millimetres);
  }

  /** Load where the mean opening, stretch in it, reaches a level for the first time. */
  public double loadAtOpening(double millimetres) {
    return loadWhere(at -> (openingAt(0, at) + openingAt(1, at)) / 2, millimetres);
  }

  private double loadWhere(DoubleUnaryOperator figure, double level) {
    for (double at = 0; at < seconds; at += SEARCH_SECONDS) {
      if (figure.applyAsDouble(at + SEARCH_SECONDS) >= level) {
        double from = at;
        double to = at + SEARCH_SECONDS;
        for (int i = 0; i < HALVINGS; i++) {
          double middle = (from + to) / 2;
          boolean reached = figure.applyAsDouble(middle) >= level;
          from = reached ? from : middle;
          to = reached ? middle : to;
        }
        return loadAt(to);
      }
    }
    return Double.NaN;
  }
}
