package io.github.platenwire.device;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.util.List;

/** A word out of a closed set, which says a unit or a quality of some of the line's values. */
final class WordStep implements Step {
  private final String name;
  private final Words words;
  private final Unit[] units;
  private final Quality[] qualities;
  private final int[] values;

  private WordStep(
      String name, Words words, List<Unit> units, List<Quality> qualities, int... values) {
    this.name = name;
    this.words = words;
    this.units = units.toArray(Unit[]::new);
    this.qualities = qualities.toArray(Quality[]::new);
    this.values = values.clone();
  }

  /** Words that say the unit of one value. */
  static WordStep ofUnits(String name, Words words, List<Unit> units, int value) {
    return new WordStep(name, words, units, List.of(), value);
  }

  /** Words that say the quality of some values. */
  static WordStep ofQualities(String name, Words words, List<Quality> qualities, int... values) {
    return new WordStep(name, words, List.of(), qualities, values);
  }

  @Override
  public int match(byte[] line, int at, int end, LineValues found) {
    int word = words.longestAt(line, at, end);
    if (word < 0) {
      return -1;
    }
    for (int value : values) {
      if (units.length > 0) {
        found.setUnit(value, units[word]);
      } else {
        found.worsen(value, qualities[word]);
      }
    }
    return at + words.lengthOf(word);
  }

  @Override
  public ByteSet starts() {
    return words.starts();
  }

  @Override
  public ByteSet rests() {
    return words.rests();
  }

  @Override
  public ByteSet continues() {
    return words.continues();
  }

  @Override
  public int shortest() {
    return words.shortest();
  }

  @Override
  public int longest() {
    return words.longest();
  }

  @Override
  public String label() {
    return "{" + name + "}";
  }
}
