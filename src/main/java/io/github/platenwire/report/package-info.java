/**
 * Pages for people: reports of tests, companions, studies and calibrations as one self-contained
 * HTML file, as a PDF made from the same page, and as tables and a data package for other programs.
 * It shows what others have measured and computed; it judges and computes nothing.
 */
@NullMarked
package io.github.platenwire.report;

import org.jspecify.annotations.NullMarked;
