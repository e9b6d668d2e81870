/**
 * The lab folder that people keep: rigs, specimens, calibrations, study, and where records go.
 * Reads and checks their files; never talks to a device.
 */
@NullMarked
package io.github.platenwire.lab;

import org.jspecify.annotations.NullMarked;
