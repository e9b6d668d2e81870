package io.github.platenwire.terminal;

import io.github.platenwire.quantity.UnitSystem;

/**
 * How everything is shown on one output. Immutable.
 *
 * @param palette whether it is coloured
 * @param glyphs which characters it can show
 * @param first the system of units that stands first; the other stands beside it
 */
public record Look(Palette palette, Glyphs glyphs, UnitSystem first) {}
