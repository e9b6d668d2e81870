/**
 * Specimens and devices that answer in real bytes, with a known truth: for demo, training and
 * tests. Nothing in the recording path knows that they exist.
 */
@NullMarked
package io.github.platenwire.emulate;

import org.jspecify.annotations.NullMarked;
