package io.github.platenwire.recorder;

import static io.github.platenwire.recorder.FigureWords.both;
import static io.github.platenwire.recorder.FigureWords.number;

import io.github.platenwire.method.MethodResult;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.UnitSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Tells how a modulus or a Poisson's ratio comes out of the loading cycles. Immutable. */
final class ChordStory {
  private static final Pattern OF_CYCLE =
      Pattern.compile("(modulus|poisson|stress-low|stress-high|strain-high)-cycle-([0-9]+)");
  private static final int FIRST_COUNTED = 2;

  private final MethodResult result;
  private final UnitSystem first;
  private final Figure figure;

  ChordStory(MethodResult result, UnitSystem first, Figure figure) {
    this.result = result;
    this.first = first;
    this.figure = figure;
  }

  /** Whether a figure comes out of loading cycles. */
  static boolean tells(Figure figure) {
    return figure.name().equals("modulus")
        || figure.name().equals("poisson")
        || OF_CYCLE.matcher(figure.name()).matches();
  }

  /** Tells it, one step after another. */
  void tell(Consumer<String> step) {
    List<Integer> cycles = cycles();
    cycles.forEach(cycle -> tell(cycle, step));
    if (figure.name().equals("modulus") || figure.name().equals("poisson")) {
      step.accept(
          "Mean of "
              + (cycles.size() == 1 ? "the one cycle" : "the " + cycles.size() + " cycles")
              + " after the first, which seats the gauges: "
              + both(figure.exact(), figure.unit(), figure.inchPoundUnit(), first)
              + ".");
    }
  }

  private List<Integer> cycles() {
    Matcher one = OF_CYCLE.matcher(figure.name());
    if (one.matches()) {
      return List.of(Integer.parseInt(one.group(2)));
    }
    List<Integer> cycles = new ArrayList<>();
    for (int cycle = FIRST_COUNTED; named("modulus", cycle).isPresent(); cycle++) {
      cycles.add(cycle);
    }
    return cycles;
  }

  private Optional<Figure> named(String name, int cycle) {
    return result.figure(name + "-cycle-" + cycle);
  }

  private void tell(int cycle, Consumer<String> step) {
    Optional<Figure> modulus = named("modulus", cycle);
    Optional<Figure> low = named("stress-low", cycle);
    Optional<Figure> high = named("stress-high", cycle);
    Optional<Figure> strain = named("strain-high", cycle);
    if (modulus.isEmpty() || low.isEmpty() || high.isEmpty() || strain.isEmpty()) {
      return;
    }
    List<Long> rows = modulus.get().rows();
    step.accept(
        "Cycle "
            + cycle
            + ": the strain counts from the lowest load, rows "
            + rows.get(4)
            + " to "
            + rows.get(5)
            + ". It passed the first mark between rows "
            + rows.get(3)
            + " and "
            + rows.get(2)
            + " at S1 = "
            + words(low.get())
            + "; the load passed S2 = "
            + words(high.get())
            + " between rows "
            + rows.get(1)
            + " and "
            + rows.get(0)
            + " at a strain of "
            + words(strain.get())
            + ".");
    step.accept(
        "Chord of cycle "
            + cycle
            + ": (S2 - S1) / (that strain less the first mark's) = "
            + words(modulus.get())
            + named("poisson", cycle)
                .map(ratio -> "; widening over shortening along it = " + number(ratio.exact()))
                .orElse("")
            + ".");
  }

  private String words(Figure of) {
    return both(of.exact(), of.unit(), of.inchPoundUnit(), first);
  }
}
