/**
 * What an archive of records can be doubted for: every check, its findings, and what was looked at.
 * Reads a lab folder and never writes into it; repairs nothing and draws nothing.
 */
@NullMarked
package io.github.platenwire.audit;

import org.jspecify.annotations.NullMarked;
