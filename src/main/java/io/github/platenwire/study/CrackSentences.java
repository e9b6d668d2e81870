package io.github.platenwire.study;

import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.study.CrackRatio.At;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A few sentences out of a whole range of crack ratios: up to where they are in the noise, and the
 * ratio in the middle and at the end of what is left. Immutable.
 *
 * @param series above the line
 * @param reference below the line
 * @param units which system stands first
 */
record CrackSentences(String series, String reference, UnitSystem units) {

  List<String> of(List<At> atLoads, List<At> atWidths) {
    List<String> sentences = new ArrayList<>();
    noise(atLoads).ifPresent(sentences::add);
    for (At at : middleAndLast(atLoads)) {
      sentences.add(
          MeasurementSentences.widthRatio(at.place(), series, reference, at.outcome(), units));
    }
    for (At at : middleAndLast(atWidths)) {
      sentences.add(
          MeasurementSentences.loadRatio(at.place(), series, reference, at.outcome(), units));
    }
    if (sentences.isEmpty()) {
      sentences.add(
          "The cracks of "
              + series
              + " and "
              + reference
              + " have no load and no width that all specimens reached: no ratio is given.");
    }
    return sentences;
  }

  private Optional<String> noise(List<At> atLoads) {
    return atLoads.stream()
        .filter(at -> at.outcome() instanceof CrackRatio.NearNoise)
        .reduce((before, later) -> later)
        .map(
            last -> {
              CrackRatio.NearNoise noise = (CrackRatio.NearNoise) last.outcome();
              return "Up to "
                  + Figures.load(last.place(), units)
                  + " no ratio of crack widths is given: near the noise. A ratio needs a width of "
                  + Figures.width(noise.leastUsableMillimetres(), units)
                  + " or more of every specimen.";
            });
  }

  private static List<At> middleAndLast(List<At> all) {
    List<At> told =
        all.stream().filter(at -> !(at.outcome() instanceof CrackRatio.NearNoise)).toList();
    if (told.isEmpty()) {
      return List.of();
    }
    At last = told.get(told.size() - 1);
    At middle = told.get((told.size() - 1) / 2);
    return middle.equals(last) ? List.of(last) : List.of(middle, last);
  }
}
