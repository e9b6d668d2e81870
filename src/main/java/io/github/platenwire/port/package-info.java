/**
 * Where bytes come from: serial ports, serial servers over TCP, memory, and replayed byte logs,
 * each chunk stamped with its arrival time on the monotonic clock. Called by the recorder; knows
 * nothing of what the bytes mean and never writes a file.
 */
@NullMarked
package io.github.platenwire.port;

import org.jspecify.annotations.NullMarked;
