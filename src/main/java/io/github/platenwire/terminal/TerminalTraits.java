package io.github.platenwire.terminal;

import java.nio.charset.Charset;
import java.util.Map;

/**
 * What an output can do. Immutable.
 *
 * @param redraws whether it is a terminal that understands control sequences
 * @param palette whether it is coloured
 * @param glyphs which characters it shows
 */
public record TerminalTraits(boolean redraws, Palette palette, Glyphs glyphs) {
  /**
   * What an output can do.
   *
   * @param terminal whether it is a terminal at all
   * @param charset how its text is encoded
   * @param environment the process environment: {@code TERM} missing or {@code dumb} means that no
   *     control sequences are understood, {@code NO_COLOR} that no colour is wanted
   */
  public static TerminalTraits of(
      boolean terminal, Charset charset, Map<String, String> environment) {
    String term = environment.getOrDefault("TERM", "");
    boolean redraws = terminal && !term.isEmpty() && !term.equals("dumb");
    return new TerminalTraits(redraws, Palette.of(redraws, environment), Glyphs.of(charset));
  }
}
