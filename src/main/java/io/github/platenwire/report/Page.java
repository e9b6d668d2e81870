package io.github.platenwire.report;

import io.github.platenwire.chart.ChartWriter;
import io.github.platenwire.quantity.UnitSystem;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jfree.chart.JFreeChart;

/**
 * A page for people, put together from top to bottom and written as one well-formed XHTML text that
 * needs nothing beside it. The same text makes the PDF ({@link PdfPrinter}). Not thread-safe.
 */
public final class Page {
  /** Size of a chart on the page, in pixels; on A4 paper its letters are then 9 points high. */
  private static final int CHART_WIDTH = 900;

  private static final int CHART_HEIGHT = 540;

  private final String title;
  private final String footing;
  private final UnitSystem first;
  private final StringBuilder body = new StringBuilder();
  private final List<PageTable> tables = new ArrayList<>();
  private int charts;

  /**
   * An empty page.
   *
   * @param title its heading and the window's name
   * @param subtitle one line below it; empty for none
   * @param footing what stands at the foot of each sheet of paper beside its number
   * @param first the lab's units, which go with its paper: A4, or letter
   */
  public Page(String title, String subtitle, String footing, UnitSystem first) {
    this.title = title;
    this.first = first;
    this.footing = footing;
    body.append("<header>\n<h1>").append(Markup.escape(title)).append("</h1>\n");
    if (!subtitle.isEmpty()) {
      body.append("<p class=\"subtitle\">").append(Markup.escape(subtitle)).append("</p>\n");
    }
    body.append("</header>\n");
  }

  /** Begins a section. */
  public Page section(String heading) {
    return element("h2", "", Inline.text(heading));
  }

  /** Begins a section whose heading stays with the chart below it when printed. */
  Page chartSection(String heading) {
    return element("h2", "before-chart", Inline.text(heading));
  }

  /** Begins a part of a section whose heading stays with the first rows of the table below it. */
  Page tablePart(String heading) {
    return element("h3", "before-table", Inline.text(heading));
  }

  /** Begins a part of a section. */
  public Page part(String heading) {
    return element("h3", "", Inline.text(heading));
  }

  /** A paragraph. */
  public Page paragraph(Inline words) {
    return element("p", "", words);
  }

  /** A paragraph of plain words. */
  public Page paragraph(String words) {
    return paragraph(Inline.text(words));
  }

  /** A paragraph that stands back, such as how to read a table. */
  public Page remark(String words) {
    return element("p", "remark", Inline.text(words));
  }

  /** A paragraph in a frame whose colour goes with its tone. */
  public Page note(Tone tone, Inline words) {
    return element("p", "note " + tone.style(), words);
  }

  /** A list with dots; nothing if it is empty. */
  public Page list(List<Inline> items) {
    if (!items.isEmpty()) {
      body.append("<ul>\n");
      items.forEach(item -> element("li", "", item));
      body.append("</ul>\n");
    }
    return this;
  }

  /** What is what, label by label. */
  public Page facts(Facts facts) {
    return markup(facts.markup());
  }

  /** A table; nothing if it has no row. It is handed on as CSV too. */
  public Page table(PageTable table) {
    if (!table.isEmpty()) {
      tables.add(table);
      markup("<div class=\"wide\">" + table.markup() + "</div>\n");
    }
    return this;
  }

  /**
   * The figures that matter most, large and side by side.
   *
   * @param headlines at most four look well
   */
  public Page headlines(List<Headline> headlines) {
    if (headlines.isEmpty()) {
      return this;
    }
    body.append("<table class=\"headlines\"><tbody><tr>\n");
    for (Headline headline : headlines) {
      body.append("<td><p class=\"label\">").append(Markup.escape(headline.label()));
      body.append("</p><p class=\"value\">").append(headline.value().markup());
      body.append("</p><p class=\"below\">").append(headline.below().markup());
      body.append("</p></td>\n");
    }
    body.append("</tr></tbody></table>\n");
    return this;
  }

  /**
   * A chart, drawn in the page itself; in the dark its colours follow the page's.
   *
   * @param chart drawn with {@code Theme.LIGHT}
   * @param caption what it shows, for those who cannot see it too
   * @throws IOException if it cannot be drawn
   */
  public Page chart(JFreeChart chart, String caption) throws IOException {
    return chart(chart, caption, CHART_WIDTH, CHART_HEIGHT);
  }

  /** A chart with many words in it: as {@link #chart}, in smaller letters. */
  Page fullChart(JFreeChart chart, String caption) throws IOException {
    return chart(chart, caption, ChartWriter.WIDTH, ChartWriter.HEIGHT);
  }

  private Page chart(JFreeChart chart, String caption, int width, int height) throws IOException {
    charts++;
    String drawing = ChartWriter.svg(chart, width, height, "chart" + charts + "-", caption);
    body.append("<figure>\n").append(drawing).append("\n<figcaption>");
    body.append(Markup.escape(caption)).append("</figcaption>\n</figure>\n");
    return this;
  }

  /**
   * A photograph, in the page itself.
   *
   * @param words what it shows, for those who cannot see it
   */
  Page picture(ScaledPicture picture, String words, Inline caption) {
    body.append("<figure class=\"photograph\"><img src=\"").append(picture.address());
    body.append("\" width=\"").append(picture.width());
    body.append("\" height=\"").append(picture.height());
    body.append("\" alt=\"").append(Markup.escape(words)).append("\"/>\n<figcaption>");
    body.append(caption.markup()).append("</figcaption>\n</figure>\n");
    return this;
  }

  /** Begins a new sheet when printed. */
  public Page newSheet() {
    return markup("<div class=\"new-sheet\"></div>\n");
  }

  /** Anything else; must be well-formed and escaped. */
  Page markup(String wellFormed) {
    body.append(wellFormed);
    return this;
  }

  private Page element(String name, String style, Inline words) {
    body.append('<').append(name);
    if (!style.isEmpty()) {
      body.append(" class=\"").append(style).append('"');
    }
    body.append('>').append(words.markup()).append("</").append(name).append(">\n");
    return this;
  }

  /** The tables so far, in their order. */
  List<PageTable> tables() {
    return Collections.unmodifiableList(tables);
  }

  String title() {
    return title;
  }

  /** The whole page, in UTF-8 once it is written. */
  public String xhtml() {
    return "<!DOCTYPE html>\n"
        + "<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\" xml:lang=\"en\">\n<head>\n"
        + "<meta charset=\"UTF-8\"/>\n"
        + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n"
        + "<meta name=\"color-scheme\" content=\"light dark\"/>\n"
        + "<title>"
        + Markup.escape(title)
        + "</title>\n"
        + StyleSheet.element(footing, first)
        + "</head>\n<body>\n<main>\n"
        + body
        + "</main>\n</body>\n</html>\n";
  }

  /**
   * One large figure.
   *
   * @param label what it is
   * @param value the figure with its unit
   * @param below a line below it, such as the other unit
   */
  public record Headline(String label, Inline value, Inline below) {}
}
