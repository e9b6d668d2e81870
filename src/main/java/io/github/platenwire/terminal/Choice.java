package io.github.platenwire.terminal;

import java.util.List;

/**
 * One of several answers to a question.
 *
 * @param key what the operator types, such as {@code 3}
 * @param words what it means
 * @param sketch a small drawing in printable characters, line by line; may be empty
 */
public record Choice(String key, String words, List<String> sketch) {
  /** Makes the list immutable. */
  public Choice {
    if (key.isBlank()) {
      throw new IllegalArgumentException("a choice needs a key to type, words=" + words);
    }
    sketch = List.copyOf(sketch);
  }

  /** A choice without a drawing. */
  public Choice(String key, String words) {
    this(key, words, List.of());
  }
}
