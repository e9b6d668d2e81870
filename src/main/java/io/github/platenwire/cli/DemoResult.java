package io.github.platenwire.cli;

import io.github.platenwire.emulate.TruthSummary;
import io.github.platenwire.record.Summary;
import java.nio.file.Path;

/**
 * One cylinder of the demo, measured and true. Immutable.
 *
 * @param specimen its name
 * @param summary what was measured
 * @param truth what was emulated
 * @param file the raw file
 */
record DemoResult(String specimen, Summary summary, TruthSummary truth, Path file) {}
