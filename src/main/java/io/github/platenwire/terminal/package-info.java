/**
 * What an operator sees on a terminal: the running test, checklists, questions. Shows values that
 * others computed; computes nothing.
 */
@NullMarked
package io.github.platenwire.terminal;

import org.jspecify.annotations.NullMarked;
