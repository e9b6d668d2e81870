/**
 * The lab folder that people keep: rigs, specimens, calibrations, study, where records go, and the
 * signed register of them. Reads and checks people's files; never talks to a device.
 */
@NullMarked
package io.github.platenwire.lab;

import org.jspecify.annotations.NullMarked;
