/**
 * Bringing a device to the bench without writing code: how well definitions decode captured bytes,
 * what could not be decoded and why, and first definitions inferred from a log. Works on bytes and
 * definitions alone; knows no lab folder and shows nothing to anybody.
 */
@NullMarked
package io.github.platenwire.commission;

import org.jspecify.annotations.NullMarked;
