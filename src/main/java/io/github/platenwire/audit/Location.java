package io.github.platenwire.audit;

import java.util.OptionalLong;

/**
 * Where something was found. Immutable.
 *
 * @param file the file, relative to the lab folder, with forward slashes; as given if it lies
 *     outside
 * @param line the line, from 1, if it can be named
 * @param offset how many bytes stand before it in the file, if that can be said
 */
public record Location(String file, OptionalLong line, OptionalLong offset) {
  /** A whole file. */
  public static Location of(String file) {
    return new Location(file, OptionalLong.empty(), OptionalLong.empty());
  }

  /** A line of a file. */
  public static Location of(String file, long line) {
    return new Location(file, OptionalLong.of(line), OptionalLong.empty());
  }

  /** A line of a file that begins after so many bytes. */
  public static Location of(String file, long line, long offset) {
    return new Location(file, OptionalLong.of(line), OptionalLong.of(offset));
  }

  /** {@code file:line}, or the file alone. */
  public String words() {
    return line.isPresent() ? file + ":" + line.getAsLong() : file;
  }
}
