/**
 * One test from start to close: links, queue, the one writer thread, forcing, events. Written
 * before shown is kept here; what a reading means is left to the method.
 */
@NullMarked
package io.github.platenwire.recorder;

import org.jspecify.annotations.NullMarked;
