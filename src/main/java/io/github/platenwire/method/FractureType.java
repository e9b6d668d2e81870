package io.github.platenwire.method;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The six types of fracture of a cylinder by their numbers in ASTM C39/C39M (from memory), in words
 * of our own, each with a sketch of seven lines of eleven characters in which {@code #} is a crack
 * and {@code .} concrete that came away.
 */
public enum FractureType {
  /** A cone at each end. */
  TYPE_1(
      1,
      "cones",
      "a well-formed cone at each end, hardly any crack through an end",
      " +-------+ ",
      " |#     #| ",
      " |.#   #.| ",
      " |..# #..| ",
      " |.#   #.| ",
      " |#     #| ",
      " +-------+ "),
  /** A cone at one end and upright cracks at the other. */
  TYPE_2(
      2,
      "cone-and-columns",
      "a well-formed cone at one end, upright cracks running out through the other",
      " +-------+ ",
      " |#     #| ",
      " |.#   #.| ",
      " |..# #..| ",
      " |  # #  | ",
      " |  # #  | ",
      " +--#-#--+ "),
  /** Columns. */
  TYPE_3(
      3,
      "columns",
      "upright cracks running through both ends, no well-formed cone",
      " +-#--#--+ ",
      " | #  #  | ",
      " | #   # | ",
      " | #   # | ",
      " |  #  # | ",
      " |  #  # | ",
      " +--#--#-+ "),
  /** One slanting crack. */
  TYPE_4(
      4,
      "slant",
      "one slanting crack, none through an end; tap it with a hammer to tell it from type 1",
      " +-------+ ",
      " |      #| ",
      " |     # | ",
      " |   ##  | ",
      " |  #    | ",
      " |##     | ",
      " +-------+ "),
  /** Cracks at the side of one end. */
  TYPE_5(
      5,
      "side",
      "a piece off the side at the top or the bottom; usual with unbonded pads",
      " +-----#-+ ",
      " |     #.| ",
      " |      #| ",
      " |       | ",
      " |       | ",
      " |       | ",
      " +-------+ "),
  /** As the fifth, the end left pointed. */
  TYPE_6(
      6,
      "pointed",
      "as type 5, but off all sides, so that the end of the cylinder is pointed",
      " ....#.... ",
      " ...# #... ",
      " .##   ##. ",
      " |#     #| ",
      " |       | ",
      " |       | ",
      " +-------+ ");

  private final int number;
  private final String key;
  private final String words;
  private final String sketch;

  FractureType(int number, String key, String words, String... sketch) {
    this.number = number;
    this.key = key;
    this.words = words;
    this.sketch = String.join("\n", sketch);
  }

  /** Its number in the standard, 1 to 6. */
  public int number() {
    return number;
  }

  /** The word in files and answers. */
  public String key() {
    return key;
  }

  /** For a person. */
  public String words() {
    return words;
  }

  /** Seven lines of eleven printable ASCII characters. */
  public List<String> sketch() {
    return sketch.lines().toList();
  }

  /** The type with a number, 1 to 6. */
  public static Optional<FractureType> ofNumber(int number) {
    return Arrays.stream(values()).filter(type -> type.number == number).findFirst();
  }

  /** The type with a key, or with its number as text. */
  public static Optional<FractureType> ofKey(String key) {
    return Arrays.stream(values())
        .filter(type -> type.key.equals(key) || String.valueOf(type.number).equals(key))
        .findFirst();
  }
}
