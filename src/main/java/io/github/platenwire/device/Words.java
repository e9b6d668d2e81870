package io.github.platenwire.device;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** A closed set of words, told apart by the longest that fits. Immutable. */
final class Words {
  private final byte[][] words;
  private final int[] byLength;

  /**
   * Makes the set; a word is known by its index in the list.
   *
   * @throws IllegalArgumentException if a word stands there twice
   */
  Words(List<byte[]> words) {
    this.words = words.stream().map(byte[]::clone).toArray(byte[][]::new);
    for (int i = 0; i < this.words.length; i++) {
      for (int j = 0; j < i; j++) {
        if (Arrays.equals(this.words[i], this.words[j])) {
          throw new IllegalArgumentException("two of the words are the same bytes");
        }
      }
    }
    this.byLength =
        IntStream.range(0, this.words.length)
            .boxed()
            .sorted((a, b) -> Integer.compare(this.words[b].length, this.words[a].length))
            .mapToInt(Integer::intValue)
            .toArray();
  }

  /** The index of the longest word that stands at a place, or -1. */
  int longestAt(byte[] line, int at, int end) {
    for (int index : byLength) {
      if (isAt(words[index], line, at, end)) {
        return index;
      }
    }
    return -1;
  }

  /** Whether some bytes are just one of the words. */
  boolean holds(byte[] line, int from, int to) {
    for (byte[] word : words) {
      if (word.length == to - from && isAt(word, line, from, to)) {
        return true;
      }
    }
    return false;
  }

  private static boolean isAt(byte[] word, byte[] line, int at, int end) {
    if (end - at < word.length) {
      return false;
    }
    for (int i = 0; i < word.length; i++) {
      if (line[at + i] != word[i]) {
        return false;
      }
    }
    return true;
  }

  int lengthOf(int index) {
    return words[index].length;
  }

  ByteSet starts() {
    ByteSet set = ByteSet.NONE;
    for (byte[] word : words) {
      set = set.with(ByteSet.of(word, 0, Math.min(1, word.length)));
    }
    return set;
  }

  ByteSet rests() {
    ByteSet set = ByteSet.NONE;
    for (byte[] word : words) {
      set = set.with(ByteSet.of(word, Math.min(1, word.length), word.length));
    }
    return set;
  }

  /** The bytes by which one word goes on where another has ended. */
  ByteSet continues() {
    ByteSet set = ByteSet.NONE;
    for (byte[] shorter : words) {
      for (byte[] longer : words) {
        if (longer.length > shorter.length && isAt(shorter, longer, 0, longer.length)) {
          set = set.with(ByteSet.of(longer, shorter.length, shorter.length + 1));
        }
      }
    }
    return set;
  }

  int shortest() {
    return Arrays.stream(words).mapToInt(word -> word.length).min().orElse(0);
  }

  int longest() {
    return Arrays.stream(words).mapToInt(word -> word.length).max().orElse(0);
  }
}
