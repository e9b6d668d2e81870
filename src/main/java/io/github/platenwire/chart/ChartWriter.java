package io.github.platenwire.chart;

import java.awt.Dimension;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.SVGIDGenerator;
import org.jfree.chart.JFreeChart;
import org.w3c.dom.DOMImplementation;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/**
 * Writes charts of 1280 × 720 as PNG or SVG, and charts of any size as SVG inside a page. Works
 * without a display; needs a font. The file appears whole or not at all, in place of an older chart
 * of the name. Stateless.
 */
public final class ChartWriter {
  /** Width of every chart's file, in pixels. */
  public static final int WIDTH = 1280;

  /** Height of every chart's file, in pixels. */
  public static final int HEIGHT = 720;

  /** A hundredth of a pixel is finer than any printer. */
  private static final int DECIMALS = 2;

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
    transform(drawing(chart, WIDTH, HEIGHT, ""), new StreamResult(out));
  }

  /**
   * A chart as an SVG element that can stand inside a page; it scales with the place it is given.
   *
   * @param chart what is drawn
   * @param width of the drawing, in pixels
   * @param height of the drawing, in pixels
   * @param idPrefix goes before each id, so that several charts can stand on one page
   * @param label what it shows, for those who cannot see it
   * @return well-formed, without a declaration before it
   * @throws IOException if it cannot be drawn
   */
  public static String svg(JFreeChart chart, int width, int height, String idPrefix, String label)
      throws IOException {
    Element root = drawing(chart, width, height, idPrefix);
    root.setAttribute("class", "chart");
    root.setAttribute("viewBox", "0 0 " + width + " " + height);
    root.setAttribute("role", "img");
    root.setAttribute("aria-label", label);
    StringWriter out = new StringWriter();
    transform(root, new StreamResult(out));
    return out.toString();
  }

  private static Element drawing(JFreeChart chart, int width, int height, String idPrefix) {
    SVGGeneratorContext context = SVGGeneratorContext.createDefault(document());
    context.setComment("");
    context.setPrecision(DECIMALS);
    context.setIDGenerator(new PrefixedIds(idPrefix));
    SVGGraphics2D graphics = new SVGGraphics2D(context, /* textAsShapes= */ false);
    graphics.setSVGCanvasSize(new Dimension(width, height));
    chart.draw(graphics, new Rectangle2D.Double(0, 0, width, height));
    Element root = graphics.getRoot();
    NodeList definitions = root.getElementsByTagNameNS(SVG, "defs");
    for (int i = 0; i < definitions.getLength(); i++) {
      // Nothing refers to it, and on a page each chart would have one of the same name
      ((Element) definitions.item(i)).removeAttribute("id");
    }
    veilParts(root);
    return root;
  }

  /**
   * Takes the opacity of a whole shape by those of its area and its line, which looks the same: for
   * a whole one readers must draw a picture beside the drawing, at which the PDF's writer fails.
   */
  private static void veilParts(Element root) {
    NodeList all = root.getElementsByTagNameNS(SVG, "*");
    for (int i = 0; i < all.getLength(); i++) {
      Element shape = (Element) all.item(i);
      String opacity = shape.getAttribute("opacity");
      if (!opacity.isEmpty()) {
        shape.removeAttribute("opacity");
        veil(shape, "fill-opacity", Double.parseDouble(opacity));
        veil(shape, "stroke-opacity", Double.parseDouble(opacity));
      }
    }
  }

  private static void veil(Element shape, String part, double opacity) {
    shape.setAttribute(part, Double.toString(opacity * inherited(shape, part)));
  }

  private static double inherited(Node node, String part) {
    for (Node at = node; at instanceof Element element; at = at.getParentNode()) {
      if (!element.getAttribute(part).isEmpty()) {
        return Double.parseDouble(element.getAttribute(part));
      }
    }
    return 1;
  }

  /** Batik's own writer adds a document type that makes readers look for it in the network. */
  private static void transform(Element root, StreamResult out) throws IOException {
    try {
      Transformer plain = TransformerFactory.newInstance().newTransformer();
      plain.setOutputProperty(
          OutputKeys.OMIT_XML_DECLARATION, out.getWriter() == null ? "no" : "yes");
      plain.transform(new DOMSource(root), out);
    } catch (TransformerException e) {
      throw new IOException("the chart cannot be written as SVG: " + e.getMessage(), e);
    }
  }

  /** Numbers the ids of one chart. */
  private static final class PrefixedIds extends SVGIDGenerator {
    private final String prefix;

    PrefixedIds(String prefix) {
      this.prefix = prefix;
    }

    @Override
    public String generateID(String kind) {
      return prefix + super.generateID(kind);
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
