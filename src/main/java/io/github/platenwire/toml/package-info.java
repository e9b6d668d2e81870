/**
 * Strict reading of TOML documents: every wrong key, type or value becomes one error that names
 * file, line and column. It knows nothing of rigs, devices or methods; the packages that own those
 * formats ask it for values one by one.
 */
@NullMarked
package io.github.platenwire.toml;

import org.jspecify.annotations.NullMarked;
