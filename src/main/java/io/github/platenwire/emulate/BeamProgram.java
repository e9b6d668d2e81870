package io.github.platenwire.emulate;

import java.util.ArrayList;
import java.util.List;

/**
 * What an emulated frame does to a specimen: loads and unloads at set rates, and holds. Built step
 * by step, then only read. Not thread-safe while it is built.
 */
public final class BeamProgram {
  private final List<Corner> corners = new ArrayList<>();
  private final List<Hold> holds = new ArrayList<>();

  /** A moment at which the rate changes. */
  record Corner(double seconds, double newtons, double greatest) {}

  /** A stretch at one load. */
  record Hold(double from, double to, double newtons) {}

  /** Stands idle for some seconds. */
  public BeamProgram(double idleSeconds) {
    corners.add(new Corner(0, 0, 0));
    hold(idleSeconds);
  }

  /** Goes to a load at a rate, newtons a second. */
  public BeamProgram to(double newtons, double newtonsPerSecond) {
    Corner last = last();
    double seconds = last.seconds + Math.abs(newtons - last.newtons) / newtonsPerSecond;
    corners.add(new Corner(seconds, newtons, Math.max(last.greatest, newtons)));
    return this;
  }

  /** Stays where it is for some seconds. */
  public BeamProgram hold(double seconds) {
    Corner last = last();
    holds.add(new Hold(last.seconds, last.seconds + seconds, last.newtons));
    corners.add(new Corner(last.seconds + seconds, last.newtons, last.greatest));
    return this;
  }

  private Corner last() {
    return corners.get(corners.size() - 1);
  }

  private int upper(double at) {
    int i = 1;
    while (i < corners.size() - 1 && corners.get(i).seconds() < at) {
      i++;
    }
    return i;
  }

  /** Load at a moment, newtons. */
  public double loadAt(double at) {
    int i = upper(at);
    return loadBetween(corners.get(i - 1), corners.get(i), at);
  }

  private static double loadBetween(Corner from, Corner to, double at) {
    double span = to.seconds() - from.seconds();
    double share = span == 0 ? 1 : Math.max(0, Math.min(1, (at - from.seconds()) / span));
    return from.newtons() + (to.newtons() - from.newtons()) * share;
  }

  /** Greatest load up to a moment, newtons. */
  double greatestUpTo(double at) {
    return Math.max(corners.get(upper(at) - 1).greatest(), loadAt(at));
  }

  List<Corner> corners() {
    return corners;
  }

  List<Hold> holds() {
    return holds;
  }

  /** How long it takes. */
  public double seconds() {
    return last().seconds;
  }

  /** The greatest load that it goes to. */
  public double greatestNewtons() {
    return last().greatest;
  }
}
