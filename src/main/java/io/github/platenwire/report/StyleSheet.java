package io.github.platenwire.report;

import io.github.platenwire.chart.Theme;
import io.github.platenwire.quantity.UnitSystem;
import java.awt.Color;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;

/** The one style sheet of all pages, as it stands in the page itself. Stateless. */
final class StyleSheet {
  private static final String RESOURCE = "/report/page.css";

  private StyleSheet() {}

  /**
   * The element for a page's head.
   *
   * @param footing at the foot of each sheet
   * @param first the lab's units, which go with its paper
   */
  static String element(String footing, UnitSystem first) {
    String paper = first == UnitSystem.SI ? "A4" : "letter";
    return "<style>\n"
        + general().replace("the-paper", paper).replace("\"the footing\"", quoted(footing))
        + darkCharts()
        + "</style>\n";
  }

  private static String general() {
    try (InputStream in = StyleSheet.class.getResourceAsStream(RESOURCE)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its part " + RESOURCE);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("the program's part " + RESOURCE + " cannot be read", e);
    }
  }

  /**
   * A string for CSS, which must survive XML as well: anything but letters, digits and blanks is
   * written as its number.
   */
  private static String quoted(String words) {
    StringBuilder out = new StringBuilder("\"");
    words
        .codePoints()
        .forEach(
            point -> {
              if (Character.isLetterOrDigit(point) || point == ' ') {
                out.appendCodePoint(point);
              } else {
                out.append('\\').append(Integer.toHexString(point)).append(' ');
              }
            });
    return out.append('"').toString();
  }

  /** Charts are drawn light; on a dark screen each of their colours is taken by its counterpart. */
  private static String darkCharts() {
    StringBuilder rules = new StringBuilder("@media screen and (prefers-color-scheme: dark) {\n");
    Iterator<Color> dark = Theme.DARK.colors().iterator();
    for (Color light : Theme.LIGHT.colors()) {
      Color counterpart = dark.next();
      for (String property : new String[] {"fill", "stroke"}) {
        rules.append("svg.chart [").append(property).append("=\"").append(svg(light));
        rules.append("\"] { ").append(property).append(": ").append(svg(counterpart));
        rules.append("; }\n");
      }
    }
    return rules.append("}\n").toString();
  }

  /** A colour as the chart's writer writes it. */
  private static String svg(Color color) {
    return color.equals(Color.WHITE)
        ? "white"
        : "rgb(" + color.getRed() + "," + color.getGreen() + "," + color.getBlue() + ")";
  }
}
