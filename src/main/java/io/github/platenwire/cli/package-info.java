/**
 * The commands: they read options, call the packages below, and turn failures into one line and an
 * exit code.
 */
@NullMarked
package io.github.platenwire.cli;

import org.jspecify.annotations.NullMarked;
