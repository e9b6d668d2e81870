package io.github.platenwire.device;

import java.util.List;

/** A compiled layout: the pieces of a line in their order. Immutable. */
final class Layout {
  private final Step[] steps;
  private final boolean showsTornLines;

  Layout(List<Step> steps) {
    this.steps = steps.toArray(Step[]::new);
    this.showsTornLines = hasFixedLength() || beginsUnmistakably();
  }

  /**
   * Matches a whole line.
   *
   * @return whether it fits; if not, {@code values} hold nothing of use
   */
  boolean match(byte[] line, int length, LineValues values) {
    values.reset();
    int at = 0;
    for (Step step : steps) {
      at = step.match(line, at, length, values);
      if (at < 0) {
        return false;
      }
    }
    return at == length;
  }

  /** Where and why a line does not fit. */
  Fault fault(byte[] line, LineValues values) {
    values.reset();
    int at = 0;
    for (Step step : steps) {
      int next = step.match(line, at, line.length, values);
      if (next < 0) {
        String found = at == line.length ? "the line ends" : ByteText.show(line[at] & 0xFF);
        String verb = at == line.length ? " here" : " stands here";
        return new Fault(at, step.label() + " is expected, but " + found + verb);
      }
      at = next;
    }
    return at == line.length
        ? new Fault(0, "the line is whole; it came torn or when none was asked for")
        : new Fault(at, "the layout ends here, but " + ByteText.show(line[at] & 0xFF) + " follows");
  }

  /**
   * Whether the rear part of a line never passes for a whole line with another reading, so that
   * even the first line of a stream joined in its middle can be trusted.
   */
  boolean showsTornLines() {
    return showsTornLines;
  }

  /** The fewest bytes that a line can have. */
  int shortest() {
    int sum = 0;
    for (Step step : steps) {
      sum += step.shortest();
    }
    return sum;
  }

  private boolean hasFixedLength() {
    for (Step step : steps) {
      if (step.shortest() != step.longest()) {
        return false;
      }
    }
    return true;
  }

  /* If what a line begins with, padding aside, can stand nowhere else in it, then a rear part that
   * fits has lost padding only. Bytes are judged as sets, so a layout may be called mistakable
   * though it is not; that costs one suspect reading, never a false one. */
  private boolean beginsUnmistakably() {
    int first = steps[0] instanceof BlankStep ? 1 : 0;
    if (first == steps.length || steps[first].shortest() == 0) {
      return false;
    }
    Step head = steps[first];
    boolean padded = head instanceof NumberStep;
    ByteSet starts = padded ? head.starts().without(ByteSet.BLANKS) : head.starts();
    if (starts.meets(head.rests())) {
      return false;
    }
    for (int i = first + 1; i < steps.length; i++) {
      if (starts.meets(steps[i].starts()) || starts.meets(steps[i].rests())) {
        return false;
      }
    }
    return true;
  }
}
