/**
 * Charts of calibrations and tests in one house style, light and dark, and their writers for PNG
 * and SVG. It draws what others have measured and computed; it judges nothing.
 */
@NullMarked
package io.github.platenwire.chart;

import org.jspecify.annotations.NullMarked;
