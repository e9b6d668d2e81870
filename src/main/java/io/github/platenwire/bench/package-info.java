/**
 * Measures how fast this machine records and audits, with real bytes over pseudo-terminals, real
 * files and the program's own path, beside readers that do less. No figure here decides anything
 * about a test.
 */
@NullMarked
package io.github.platenwire.bench;

import org.jspecify.annotations.NullMarked;
