package io.github.platenwire.chart;

import java.awt.Dimension;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.apache.batik.svggen.SVGGraphics2D;
import org.jfree.chart.JFreeChart;
import org.w3c.dom.DOMImplementation;
import org.w3c.dom.Document;

/**
 * Writes charts of 1280 × 720 as PNG or SVG. Works without a display; needs a font. The file
 * appears whole or not at all, in place of an older chart of the name. Stateless.
 */
public final class ChartWriter {
  /** Width of every chart, in pixels. */
  public static final int WIDTH = 1280;

  /** Height of every chart, in pixels. */
  public static final int HEIGHT = 720;

  private static final String SVG = "http://www.w3.org/2000/svg";

  private ChartWriter() {}

  /** Whether a file's name ends in a way that {@link #write} knows. */
  public static boolean canWrite(Path file) {
    return ends(file, ".png") || ends(file, ".svg");
  }

  /**
   * Writes a chart; the end of the file's name, {@code .png} or {@code .svg}, says as what.
   *
   * @throws IOException if it cannot be written
   * @throws IllegalArgumentException if the name ends otherwise
   */
  public static void write(JFreeChart chart, Path file) throws IOException {
    if (!canWrite(file)) {
      throw new IllegalArgumentException("a chart's name ends in .png or .svg, file=" + file);
    }
    Path draft = file.resolveSibling(file.getFileName() + ".draft");
    try {
      try (OutputStream out = Files.newOutputStream(draft)) {
        if (ends(file, ".png")) {
          png(chart, out);
        } else {
          svg(chart, out);
        }
      }
      Files.move(draft, file, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(draft);
    }
  }

  private static boolean ends(Path file, String end) {
    return file.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(end);
  }

  private static void png(JFreeChart chart, OutputStream out) throws IOException {
    BufferedImage image =
        chart.createBufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB, null);
    if (!ImageIO.write(image, "png", out)) {
      throw new IOException("this Java cannot write PNG");
    }
  }

  private static void svg(JFreeChart chart, OutputStream out) throws IOException {
    SVGGraphics2D graphics = new SVGGraphics2D(document());
    graphics.setSVGCanvasSize(new Dimension(WIDTH, HEIGHT));
    chart.draw(graphics, new Rectangle2D.Double(0, 0, WIDTH, HEIGHT));
    // Batik's own writer adds a document type that makes readers look for it in the network
    try {
      Transformer plain = TransformerFactory.newInstance().newTransformer();
      plain.transform(new DOMSource(graphics.getRoot()), new StreamResult(out));
    } catch (TransformerException e) {
      throw new IOException("the chart cannot be written as SVG: " + e.getMessage(), e);
    }
  }

  private static Document document() {
    try {
      DOMImplementation dom =
          DocumentBuilderFactory.newInstance().newDocumentBuilder().getDOMImplementation();
      return dom.createDocument(SVG, "svg", null);
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException("this Java can make no XML document", e);
    }
  }
}
