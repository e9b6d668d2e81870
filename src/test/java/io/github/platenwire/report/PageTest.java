package io.github.platenwire.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.chart.SeriesChart;
import io.github.platenwire.chart.Theme;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import java.awt.Color;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jfree.chart.JFreeChart;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;

class PageTest {
  private static final String SIGNS = "≥ ≤ ² µ ε × − ± √ ∞ – Ω";

  @TempDir Path folder;

  private static Page page() {
    return new Page("Ratio <1> & \"more\"", "µm", "foot \"x\" <y>", UnitSystem.SI);
  }

  static Document parse(String xhtml) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setNamespaceAware(true);
      return factory
          .newDocumentBuilder()
          .parse(new ByteArrayInputStream(xhtml.getBytes(StandardCharsets.UTF_8)));
    } catch (Exception e) {
      throw new AssertionError("the page is not well-formed: " + e.getMessage(), e);
    }
  }

  private static JFreeChart chart() {
    SeriesChart.Column column =
        new SeriesChart.Column(
            "A",
            0,
            List.of(new SeriesChart.Value(20, ""), new SeriesChart.Value(26, "outlier?")),
            23,
            Optional.of(new SeriesChart.Span(21, 25)));
    return SeriesChart.of(
        "Strength",
        "",
        new SeriesChart.Axes("Strength", Unit.MEGAPASCAL, Unit.PSI),
        List.of(new SeriesChart.Group("7 days", List.of(column))),
        Theme.LIGHT);
  }

  @Property(tries = 300)
  void xhtml_anyWords_staysWellFormedAndSaysThem(@ForAll String words) {
    Page page = new Page(words, words, words, UnitSystem.INCH_POUND);
    page.section(words).paragraph(words).note(Tone.BAD, Inline.badge(Tone.GOOD, words));
    page.facts(new Facts().add(words, Inline.link(words, Inline.code(words))));
    page.table(PageTable.named("t", words).words(words).row(words));
    String seen =
        parse(page.xhtml()).getElementsByTagName("h2").item(0).getTextContent().replace('\r', '\n');
    String expected =
        words
            .codePoints()
            .map(point -> isXml(point) ? point : 0xFFFD)
            .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
            .toString();
    assertThat(seen).isEqualToNormalizingNewlines(expected.replace('\r', '\n'));
  }

  /** XML 1.0, production 2, from memory. */
  private static boolean isXml(int point) {
    return point == 9
        || point == 10
        || point == 13
        || (point >= 0x20 && point <= 0xD7FF)
        || (point >= 0xE000 && point <= 0xFFFD)
        || point >= 0x10000;
  }

  @Test
  void xhtml_withChart_needsNothingFromOutside() throws Exception {
    String xhtml = page().chart(chart(), "Points").xhtml();
    parse(xhtml);
    assertThat(xhtml.replaceAll("xmlns(:\\w+)?=\"http://www.w3.org/[^\"]*\"", ""))
        .doesNotContain(
            "http:", "https:", "url(http", "@import", "<script", "<img", "src=", "<link");
  }

  @Test
  void xhtml_twoCharts_shareNoId() throws Exception {
    String xhtml = page().chart(chart(), "one").chart(chart(), "two").xhtml();
    Matcher ids = Pattern.compile(" id=\"([^\"]+)\"").matcher(xhtml);
    Set<String> seen = new HashSet<>();
    while (ids.find()) {
      assertThat(seen.add(ids.group(1))).as("id %s stands twice", ids.group(1)).isTrue();
    }
    assertThat(seen).isNotEmpty();
  }

  /** A colour without a counterpart would stay light on a dark screen. */
  @Test
  void chart_everyColour_hasItsDarkCounterpartInTheStyleSheet() throws Exception {
    String xhtml = page().chart(chart(), "Points").xhtml();
    Matcher colours = Pattern.compile("(fill|stroke)=\"(rgb\\([^\"]+\\)|white)\"").matcher(xhtml);
    int found = 0;
    while (colours.find()) {
      found++;
      assertThat(xhtml)
          .contains("svg.chart [" + colours.group(1) + "=\"" + colours.group(2) + "\"] {");
    }
    assertThat(found).isGreaterThan(20);
  }

  @Test
  void colors_ofEachTheme_areAllDifferent() {
    for (Theme theme : List.of(Theme.LIGHT, Theme.DARK)) {
      List<Color> colors = theme.colors();
      assertThat(colors).doesNotHaveDuplicates().hasSameSizeAs(Theme.LIGHT.colors());
    }
  }

  @Test
  void print_signsOfTheTrade_areTextInAnEmbeddedFont() throws Exception {
    Page page = page().paragraph(SIGNS);
    PageTable table = PageTable.named("many", "Many rows").numbers("Row");
    for (int i = 0; i < 120; i++) {
      table.row("row " + i);
    }
    page.table(table);
    Path pdf = folder.resolve("a.pdf");
    files(Optional.empty(), Optional.of(pdf), false).write(page, "platenwire test");
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      String text = new PDFTextStripper().getText(document);
      assertThat(text).contains(SIGNS, "Ratio <1> & \"more\"", "row 119", "foot \"x\" <y>");
      int pages = document.getNumberOfPages();
      assertThat(pages).isGreaterThan(2);
      assertThat(text).contains("page 1 of " + pages, "page " + pages + " of " + pages);
      assertThat(document.getDocumentInformation().getTitle()).isEqualTo("Ratio <1> & \"more\"");
      for (PDPage sheet : document.getPages()) {
        assertEmbedded(sheet);
      }
    }
  }

  static void assertEmbedded(PDPage sheet) throws IOException {
    for (var name : sheet.getResources().getFontNames()) {
      PDFont font = sheet.getResources().getFont(name);
      assertThat(font.isEmbedded()).as("font %s", font.getName()).isTrue();
    }
  }

  @Test
  void print_aPage_saysNothingOnTheConsole() throws Exception {
    var out = System.out;
    var err = System.err;
    var heard = new java.io.ByteArrayOutputStream();
    try (var stream = new java.io.PrintStream(heard, true, StandardCharsets.UTF_8)) {
      System.setOut(stream);
      System.setErr(stream);
      PdfPrinter.print(
          page().paragraph("x").xhtml(), "platenwire test", new java.io.ByteArrayOutputStream());
    } finally {
      System.setOut(out);
      System.setErr(err);
    }
    assertThat(heard.toString(StandardCharsets.UTF_8)).isEmpty();
  }

  @Test
  void write_fileThatIsThere_isLeftAlone() throws Exception {
    Path html = Files.writeString(folder.resolve("a.html"), "mine");
    PageFiles files = files(Optional.of(html), Optional.empty(), false);
    assertThat(files.existing()).containsExactly(html);
    assertThatThrownBy(() -> files.write(page(), "p"))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(html).hasContent("mine");
    assertThat(listed()).containsExactly("a.html");
  }

  @Test
  void write_withLeaveToReplace_replaces() throws Exception {
    Path html = Files.writeString(folder.resolve("a.html"), "old");
    files(Optional.of(html), Optional.empty(), true).write(page(), "p");
    assertThat(Files.readString(html)).contains("<h1>Ratio &lt;1&gt;");
    assertThat(listed()).containsExactly("a.html");
  }

  @Test
  void write_tables_handOnFullValuesWithoutHeadingsOfGroups() throws Exception {
    Page page =
        page()
            .table(
                PageTable.named("strength", "")
                    .words("Specimen")
                    .numbers("Strength", "strength_mpa")
                    .hidden("series")
                    .group(Inline.text("a heading"))
                    .row(Cell.of("A, \"1\""), Cell.of("25.0", 25.036644869012218), Cell.of("RA")));
    new PageFiles(Optional.empty(), Optional.empty(), Optional.of(folder), false).write(page, "p");
    assertThat(folder.resolve("strength.csv"))
        .hasContent("Specimen,strength_mpa,series\n\"A, \"\"1\"\"\",25.036644869012218,RA\n");
    assertThat(page.xhtml()).contains("25.0", "a heading").doesNotContain("25.0366", ">RA<");
  }

  @Test
  void row_withTooFewCells_isRefused() {
    PageTable table = PageTable.named("t", "").words("a").words("b");
    assertThatThrownBy(() -> table.row("only one"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("cells=1 columns=2");
  }

  private static PageFiles files(Optional<Path> html, Optional<Path> pdf, boolean replace) {
    return new PageFiles(html, pdf, Optional.empty(), replace);
  }

  private List<String> listed() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).toList();
    }
  }
}
