package io.github.platenwire.cli;

import io.github.platenwire.emulate.DemoSpecimen;
import io.github.platenwire.emulate.TruthSummary;
import io.github.platenwire.lab.RegisterLine;
import io.github.platenwire.record.Summary;
import java.util.Optional;

/**
 * One cylinder of the demo, measured and true. Immutable.
 *
 * @param specimen the cylinder
 * @param summary what was measured
 * @param truth what was emulated
 * @param line the register's line for it
 */
record DemoResult(
    DemoSpecimen specimen, Summary summary, TruthSummary truth, Optional<RegisterLine> line) {}
