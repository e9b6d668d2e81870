package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionURI;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** Every kind of report, made of the archive that the demo leaves behind. */
@Timeout(300)
@TestInstance(Lifecycle.PER_CLASS)
class ReportCommandTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  private Path folder;
  private Path lab;
  private String said = "";
  private StringWriter errors = new StringWriter();
  private int made;

  @BeforeAll
  void runDemo(@TempDir Path temporary) throws Exception {
    folder = temporary;
    lab = folder.resolve("demo");
    assertThat(run("demo", "--lab", lab)).as(errors + said).isZero();
    assertThat(said).contains("A report of the study, for people:", "Wrote ", ".html", ".pdf");
  }

  @BeforeEach
  void listen() {
    errors = new StringWriter();
  }

  @AfterAll
  void endLog() {
    Logging.stop();
  }

  private int run(Object... args) {
    PrintStream console = System.out;
    ByteArrayOutputStream heard = new ByteArrayOutputStream();
    try {
      System.setOut(new PrintStream(heard, true, StandardCharsets.UTF_8));
      CommandLine command = Platenwire.commandLine();
      command.setErr(new PrintWriter(errors, true));
      return command.execute(Stream.of(args).map(Object::toString).toArray(String[]::new));
    } finally {
      System.setOut(console);
      said = heard.toString(StandardCharsets.UTF_8);
    }
  }

  private Path html() {
    return folder.resolve("report-" + ++made + ".html");
  }

  private static String text(Path html) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    String source = Files.readString(html);
    assertThat(source.replaceAll("xmlns(:\\w+)?=\"http://www.w3.org/[^\"]*\"", ""))
        .as("a page that needs nothing from outside")
        .doesNotContain("http:", "https:", "@import", "<script", "<link")
        .doesNotContainPattern("src=(?!\"data:image/jpeg;base64,)")
        .doesNotContainPattern("<img(?! src=\"data:)");
    return factory
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(source.getBytes(StandardCharsets.UTF_8)))
        .getElementsByTagName("main")
        .item(0)
        .getTextContent();
  }

  private static String pdfText(Path pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      for (PDPage page : document.getPages()) {
        for (var name : page.getResources().getFontNames()) {
          assertThat(page.getResources().getFont(name).isEmbedded()).isTrue();
        }
        for (PDAnnotation note : page.getAnnotations()) {
          if (note instanceof PDAnnotationLink link
              && link.getAction() instanceof PDActionURI uri) {
            assertThat(uri.getURI()).as("no path of this computer").doesNotContain("file:", "//");
          }
        }
      }
      return new PDFTextStripper().getText(document);
    }
  }

  private List<Path> records(String ending) throws IOException {
    try (Stream<Path> files = Files.walk(lab.resolve("records"))) {
      return files.filter(file -> file.toString().endsWith(ending)).sorted().toList();
    }
  }

  private Path summaryOf(String specimen) throws IOException {
    return records("_" + specimen + ".summary.json").get(0);
  }

  private Path copyOfLab(String name) throws IOException {
    Path copy = folder.resolve(name);
    try (Stream<Path> files = Files.walk(lab)) {
      for (Path file : files.toList()) {
        Path to = copy.resolve(lab.relativize(file).toString());
        if (Files.isDirectory(file)) {
          Files.createDirectories(to);
        } else {
          Files.copy(file, to);
        }
      }
    }
    return copy;
  }

  @Test
  void demo_atItsEnd_hasWrittenAReportOfItsStudy() throws Exception {
    try (Stream<Path> files = Files.list(lab.resolve("reports"))) {
      List<Path> study =
          files.filter(f -> f.getFileName().toString().startsWith("study-")).sorted().toList();
      assertThat(study).hasSize(2);
      assertThat(text(study.get(0)))
          .contains("Footbridge over Alder Weir", "In short", "RA-S", "NA-T", "witness");
      assertThat(pdfText(study.get(1))).contains("Footbridge over Alder Weir", "page 1 of");
    }
  }

  @Test
  void test_cylinderAndBeam_showEveryFigureOfTheSummaryWithItsRows() throws Exception {
    for (String specimen : List.of("RA-S-07-1", "NA-CB-1")) {
      Path html = html();
      assertThat(run("report", "test", specimen, "--lab", lab, "--html", html))
          .as(errors.toString())
          .isZero();
      String page = text(html);
      JsonNode summary = JSON.readTree(summaryOf(specimen).toFile());
      assertThat(summary.path("results").size()).isGreaterThan(8);
      for (JsonNode figure : summary.path("results")) {
        assertThat(page)
            .contains(
                figure.path("title").asText(),
                figure.path("rounded").asText(),
                figure.path("inch_pound").path("rounded").asText(),
                Double.toString(figure.path("value").asDouble()),
                "platenwire explain "
                    + summary.path("test").asText()
                    + " "
                    + figure.path("name").asText());
        figure.path("rows").forEach(row -> assertThat(page).contains(row.asText()));
        figure
            .path("uncertainty")
            .path("budget")
            .forEach(line -> assertThat(page).contains(line.path("source").asText()));
      }
      summary.path("checks").forEach(c -> assertThat(page).contains(c.path("words").asText()));
      summary.path("departures").forEach(d -> assertThat(page).contains(d.asText()));
      assertThat(page)
          .contains(
              summary.path("raw").path("file").asText(),
              summary.path("raw").path("sha256").asText(),
              summary.path("program").asText(),
              summary.path("method").path("standard").asText(),
              "licensed engineer",
              sha256(summaryOf(specimen)));
    }
  }

  @Test
  void test_commandOnThePage_isUnderstoodByExplain() throws Exception {
    Path html = html();
    run("report", "test", "RA-S-07-1", "--lab", lab, "--html", html);
    String page = text(html);
    int at = page.indexOf("platenwire explain ") + "platenwire ".length();
    String[] command = page.substring(at, page.indexOf("strength", at) + 8).split(" ", -1);
    assertThat(run(command[0], command[1], command[2], "--lab", lab)).isZero();
    assertThat(said).contains("25.0");
  }

  @Test
  void explain_withoutFigureOrWithAWrongOne_listsThoseThatTheRecordHas() throws Exception {
    assertThat(run("explain", "NA-CB-1", "--lab", lab)).isZero();
    assertThat(said).contains("load-at-0.20-mm", "first-crack-departure", "residual-1", "lbf)");
    assertThat(run("explain", "NA-CB-1", "strenght", "--lab", lab)).isEqualTo(ExitCode.USAGE);
    assertThat(errors.toString())
        .contains("has no figure 'strenght'; it has: load-at-0.10-mm, ", "zero-gauge-b");
  }

  @Test
  void test_pdf_hasTextWitnessAndRelativeLinks() throws Exception {
    Path pdf = folder.resolve("test.pdf");
    assertThat(run("report", "test", "RA-S-07-1", "--lab", lab, "--pdf", pdf)).isZero();
    String register = Files.readString(lab.resolve("register").resolve("frame-1.jsonl"));
    String line =
        register.lines().filter(l -> l.contains("_RA-S-07-1\"")).findFirst().orElseThrow();
    String witness = sha256(line.getBytes(StandardCharsets.UTF_8)).substring(0, 16);
    assertThat(pdfText(pdf))
        .contains("witness " + witness, "25.0 MPa", "3630 psi", "± 0.16 MPa", "Every check");
  }

  /** A crack's hold is a veiled stretch, at which the PDF's writer used to fail. */
  @Test
  void test_beamWithHolds_isPrinted() throws Exception {
    Path pdf = folder.resolve("beam.pdf");
    assertThat(run("report", "test", "NA-CB-1", "--lab", lab, "--pdf", pdf))
        .as(errors.toString())
        .isZero();
    assertThat(pdfText(pdf)).contains("NA-CB-1", "Load at a crack of 0.30 mm", "EMULATED-2");
  }

  @Test
  void test_withoutPlace_liesInTheLabsReportsAndIsNotOverwritten() throws Exception {
    assertThat(run("report", "test", "RA-S-07-2", "--lab", lab)).isZero();
    List<Path> written;
    try (Stream<Path> files = Files.list(lab.resolve("reports"))) {
      written = files.filter(f -> f.toString().contains("RA-S-07-2")).sorted().toList();
    }
    assertThat(written).hasSize(2);
    assertThat(Files.readString(written.get(0))).contains("href=\"../records/");
    Files.writeString(written.get(1), "notes of my own");
    assertThat(run("report", "test", "RA-S-07-2", "--lab", lab)).isEqualTo(ExitCode.USAGE);
    assertThat(errors.toString()).contains("is there already", "--force");
    assertThat(written.get(1)).hasContent("notes of my own");
    assertThat(run("report", "test", "RA-S-07-2", "--lab", lab, "--force")).isZero();
    assertThat(pdfText(written.get(1))).contains("RA-S-07-2");
  }

  @Test
  void test_missingRecord_isSaidWithExitCodeTwo() {
    assertThat(run("report", "test", "NOT-THERE", "--lab", lab)).isEqualTo(ExitCode.USAGE);
    assertThat(errors.toString()).contains("there is no record 'NOT-THERE'");
  }

  @Test
  void test_rawFileChanged_isNotReported() throws Exception {
    Path copy = copyOfLab("changed");
    Path raw = copy.resolve(lab.relativize(records("_RA-S-07-1.raw.csv").get(0)).toString());
    String rows = Files.readString(raw);
    Files.writeString(raw, rows.replaceFirst("\\+0000\\.05 kN", "+0000.06 kN"));
    Path html = html();
    assertThat(run("report", "test", raw, "--html", html)).isEqualTo(ExitCode.NOT_MET);
    assertThat(html).doesNotExist();
  }

  @Test
  void test_summaryChanged_isSaidOnThePage() throws Exception {
    Path copy = copyOfLab("other-summary");
    Path summary = copy.resolve(lab.relativize(summaryOf("RA-S-07-1")).toString());
    Files.writeString(summary, Files.readString(summary).replace("\"25.0\"", "\"26.0\""));
    Path html = html();
    assertThat(run("report", "test", "RA-S-07-1", "--lab", copy, "--html", html)).isZero();
    assertThat(text(html)).contains("The summary is not the one that the register knows");
  }

  @Test
  void test_correctedAfterwards_saysByWhomAndWhy() throws Exception {
    Path copy = copyOfLab("corrected");
    assertThat(
            run(
                "reduce",
                "RA-S-07-1",
                "--lab",
                copy,
                "--correct",
                "diameter_1_mm=100.4",
                "--who",
                "M. <K>",
                "--why",
                "misread"))
        .as(errors.toString())
        .isZero();
    Path html = html();
    assertThat(run("report", "test", "RA-S-07-1", "--lab", copy, "--html", html)).isZero();
    assertThat(text(html))
        .contains("by M. <K> on", "misread", "diameter_1_mm: 100.2", "corrected to 100.4");
  }

  private Path photograph(Color color) throws IOException {
    BufferedImage image = new BufferedImage(1000, 600, BufferedImage.TYPE_INT_RGB);
    for (int x = 0; x < 1000; x++) {
      image.setRGB(x, x % 600, color.getRGB());
    }
    Path file = folder.resolve("photo-" + color.getRGB() + ".jpg");
    ImageIO.write(image, "jpeg", file.toFile());
    return file;
  }

  private static Path kept(Path lab, String ending) throws IOException {
    try (Stream<Path> files = Files.walk(lab.resolve("records"))) {
      return files.filter(file -> file.toString().endsWith(ending)).findFirst().orElseThrow();
    }
  }

  @Test
  void test_photographs_standInThePageOrAreSaidToBeMissingOrChanged() throws Exception {
    Path copy = copyOfLab("photographs");
    Path first = photograph(Color.RED);
    int code =
        run(
            "observe",
            "RA-S-07-1",
            "--lab",
            copy,
            "--by",
            "M. <K>",
            "--photo",
            first,
            "--photo",
            photograph(Color.GREEN),
            "--photo",
            photograph(Color.BLUE));
    assertThat(code).as(errors.toString()).isZero();
    Files.delete(kept(copy, ".enclosure-2.jpg"));
    Files.writeString(kept(copy, ".enclosure-3.jpg"), "another");
    Path html = html();
    Path pdf = folder.resolve("photographs.pdf");
    assertThat(run("report", "test", "RA-S-07-1", "--lab", copy, "--html", html, "--pdf", pdf))
        .isZero();
    assertThat(text(html))
        .contains("Observation added after the test by M. <K> on", sha256(first))
        .contains("_RA-S-07-1.enclosure-2.jpg is missing")
        .contains("_RA-S-07-1.enclosure-3.jpg is not the file that was kept")
        .doesNotContain("Measurements of this specimen were corrected");
    assertThat(Files.readString(html)).containsOnlyOnce("<img src=\"data:image/jpeg;base64,");
    assertThat(pdfText(pdf)).contains(sha256(first), "enclosure-2.jpg is missing");
    assertThat(pictures(pdf)).containsExactly("900 x 540");
  }

  private static List<String> pictures(Path pdf) throws IOException {
    List<String> sizes = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      for (PDPage page : document.getPages()) {
        for (var name : page.getResources().getXObjectNames()) {
          if (page.getResources().getXObject(name) instanceof PDImageXObject image) {
            sizes.add(image.getWidth() + " x " + image.getHeight());
          }
        }
      }
    }
    return sizes;
  }

  @Test
  void test_companionsClosed_rangeAndLimitWithItsSource() throws Exception {
    Path html = html();
    assertThat(run("report", "test", "RA-S-07-1", "--lab", lab, "--html", html)).isZero();
    // ASTM C39/C39M, three laboratory cylinders of 100 x 200 mm: 10.6 % (from memory)
    assertThat(text(html))
        .contains("Companions: RA-S at 7 days", "RA-S-07-1 (this one)", "limit 10.6 %: within")
        .contains("as printed for the range of three results of this size under laboratory")
        .contains("compression-cylinder-c39.toml");
  }

  @Test
  void test_csv_holdsExactValues() throws Exception {
    Path tables = folder.resolve("tables");
    run("report", "test", "RA-S-07-3", "--lab", lab, "--html", html(), "--csv", tables);
    List<CSVRecord> rows = rows(tables.resolve("results.csv"));
    JsonNode strength = JSON.readTree(summaryOf("RA-S-07-3").toFile()).path("results").get(0);
    assertThat(Double.parseDouble(rows.get(0).get("exact")))
        .isEqualTo(strength.path("value").asDouble());
    assertThat(Double.parseDouble(rows.get(0).get("expanded_uncertainty")))
        .isCloseTo(
            strength.path("uncertainty").path("expanded").asDouble(),
            org.assertj.core.api.Assertions.within(1e-12));
    Path other = html();
    assertThat(run("report", "test", "RA-S-07-3", "--lab", lab, "--html", other, "--csv", tables))
        .isEqualTo(ExitCode.USAGE);
    assertThat(errors.toString()).contains(".csv is there already", "--force");
    assertThat(other).doesNotExist();
  }

  private static List<CSVRecord> rows(Path csv) throws IOException {
    try (CSVParser parser =
        CSVParser.parse(
            csv,
            StandardCharsets.UTF_8,
            CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get())) {
      return parser.getRecords();
    }
  }

  @Test
  void companions_ofASet_showEachBesideMeanAndLimit() throws Exception {
    Path html = html();
    Path pdf = folder.resolve("companions.pdf");
    assertThat(run("report", "companions", "RA-S", "7", "--lab", lab, "--html", html, "--pdf", pdf))
        .as(errors.toString())
        .isZero();
    String page = text(html);
    for (String specimen : List.of("RA-S-07-1", "RA-S-07-2", "RA-S-07-3")) {
      JsonNode summary = JSON.readTree(summaryOf(specimen).toFile());
      assertThat(page)
          .contains(
              specimen,
              summary.path("results").get(0).path("rounded").asText(),
              summary.path("raw").path("sha256").asText());
    }
    // ASTM C39/C39M, three laboratory cylinders of 100 x 200 mm: 10.6 % (from memory)
    assertThat(page).contains("limit 10.6 %", "within").doesNotContain("NA-T-07-1");
    assertThat(pdfText(pdf)).contains("RA-S at 7 days");
  }

  @Test
  void companions_ofNoSuchSet_nameThoseThatAreThere() {
    assertThat(run("report", "companions", "RA-S", "90", "--lab", lab)).isEqualTo(ExitCode.USAGE);
    assertThat(errors.toString()).contains("no companions of RA-S at 90 days", "RA-S 7");
  }

  @Test
  void study_ofTheDemo_showsEverySpecimenAndSentence() throws Exception {
    Path html = html();
    Path tables = folder.resolve("study-tables");
    assertThat(run("report", "study", "--lab", lab, "--html", html, "--csv", tables))
        .as(errors.toString())
        .isZero();
    String page = text(html);
    for (Path file : records(".summary.json")) {
      JsonNode summary = JSON.readTree(file.toFile());
      assertThat(page)
          .contains(summary.path("test").asText(), summary.path("raw").path("sha256").asText());
    }
    List<CSVRecord> values = rows(tables.resolve("strength-by-specimen.csv"));
    assertThat(values).hasSize(12);
    for (CSVRecord value : values) {
      assertThat(Double.parseDouble(value.get("value"))).isBetween(20.0, 50.0);
      assertThat(lab.resolve(value.get("record"))).exists();
    }
    assertThat(page)
        .contains(
            "times NA-T (95 % interval", "near the noise", "through the aggregate", "MPa (psi)");
  }

  @Test
  void study_namesOfMarkup_areShownAsTheyAre() throws Exception {
    Path copy = copyOfLab("markup");
    Path study = copy.resolve("study.toml");
    String strange = "A <script>alert(1)</script> & 'B' ]]> \u00e9\u4e2d";
    Files.writeString(
        study,
        Files.readString(study)
            .replaceFirst(
                "title = \".*\"",
                java.util.regex.Matcher.quoteReplacement("title = \"" + strange + "\"")));
    Path html = html();
    Path pdf = folder.resolve("strange.pdf");
    assertThat(run("report", "study", "--lab", copy, "--html", html, "--pdf", pdf))
        .as(errors.toString())
        .isZero();
    assertThat(text(html)).contains(strange);
    assertThat(pdfText(pdf)).contains("<script>alert(1)</script> & 'B'");
  }

  @Test
  void study_ofALabWithInchPoundFirst_putsThemFirst() throws Exception {
    Path copy = copyOfLab("inch-pound");
    Path settings = copy.resolve("lab.toml");
    Files.writeString(
        settings,
        Files.readString(settings).replace("units-first = \"si\"", "units-first = \"inch-pound\""));
    Path html = html();
    assertThat(run("report", "test", "RA-S-07-1", "--lab", copy, "--html", html)).isZero();
    String page = text(html);
    assertThat(page.indexOf("3630 psi")).isPositive().isLessThan(page.indexOf("25.0 MPa"));
    assertThat(Files.readString(html)).contains("size: letter;");
    Path study = html();
    assertThat(run("report", "study", "--lab", copy, "--html", study)).isZero();
    String words = text(study);
    assertThat(words)
        .containsPattern("RA-S is [0-9]+ psi \\([0-9.]+ MPa\\) below NA-T")
        .containsPattern("To open the crack to [0-9.]+ in\\. \\([0-9.]+ mm\\)")
        .contains("Scatter about it, psi (MPa)", "Mean, psi (MPa)")
        .doesNotContainPattern("[0-9] MPa \\([0-9]+ psi\\)");
  }

  @Test
  void study_withoutAnyTest_saysThatThereIsNothingYet() throws Exception {
    Path copy = copyOfLab("empty");
    try (Stream<Path> files = Files.walk(copy.resolve("records"))) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Files.delete(file);
      }
    }
    Path html = html();
    assertThat(run("report", "study", "--lab", copy, "--html", html)).isZero();
    assertThat(text(html)).contains("There is nothing to compare yet");
    assertThat(run("report", "study", "--lab", copy, "--html", html(), "--datapackage"))
        .isEqualTo(ExitCode.USAGE);
    assertThat(errors.toString()).contains("no closed test");
  }

  @Test
  void calibration_withRuns_showsErrorsClassesAndDueDate() throws Exception {
    Path copy = copyOfLab("calibrated");
    Files.writeString(
        copy.resolve("calibrations").resolve("cell-1.toml"),
        """
        format = "platenwire-calibration 1"
        name = "cell-1"
        certificate = "C-0001 & <x>"
        laboratory = "invented"
        date = 2020-03-02
        due = 2021-03-02
        class = "1"
        unit = "kN"
        resolution = 0.1
        [[run]]
        direction = "ascending"
        rows = [[50, 50.3], [200, 200.8], [400, 401.6], [600, 602.4], [800, 803.2]]
        zero-after = 0.1
        """);
    Path html = html();
    Path pdf = folder.resolve("calibration.pdf");
    assertThat(run("report", "calibration", "cell-1", "--lab", copy, "--html", html, "--pdf", pdf))
        .as(errors.toString())
        .isZero();
    // 0.3 kN of 50 kN is 0.6 %, 3.2 kN of 800 kN is 0.4 %
    assertThat(text(html))
        .contains("C-0001 & <x>", "0.600", "0.400", "Class 1", "due on 2021-03-02", "overdue by")
        .contains("The stated class 1 is met");
    assertThat(pdfText(pdf)).contains("Calibration cell-1", "Residuals");
  }

  @Test
  void calibration_withoutRuns_saysSo() throws Exception {
    Path html = html();
    assertThat(run("report", "calibration", "frame-1-load", "--lab", lab, "--html", html)).isZero();
    assertThat(text(html)).contains("holds no runs", "EMULATED-1", "frame-1 load");
    assertThat(run("report", "calibration", "nothing", "--lab", lab, "--html", html()))
        .isEqualTo(ExitCode.USAGE);
  }

  @Test
  void report_withoutKind_saysWhichThereAre() {
    assertThat(run("report")).isEqualTo(ExitCode.USAGE);
    assertThat(errors.toString()).contains("test, companions, study, calibration");
  }

  /**
   * Rules of Frictionless Data Package 1 (its published profiles data-package, data-resource and
   * tabular-data-resource, and Table Schema and CSV Dialect; partly from memory): what is required,
   * the form of names, relative paths downwards, sizes and digests.
   */
  @Test
  void dataPackage_ofTheDemo_followsThePublishedRules() throws Exception {
    Path copy = copyOfLab("package");
    assertThat(run("report", "study", "--lab", copy, "--html", html(), "--datapackage")).isZero();
    Path file = copy.resolve("datapackage.json");
    JsonNode root = JSON.readTree(file.toFile());
    assertThat(root.path("profile").asText()).isEqualTo("data-package");
    assertThat(root.path("name").asText()).matches("^([-a-z0-9._/])+$");
    assertThat(root.path("resources").size()).isEqualTo(2 * records(".raw.csv").size());
    Set<String> names = new HashSet<>();
    for (JsonNode resource : root.path("resources")) {
      assertThat(names.add(resource.path("name").asText())).isTrue();
      assertThat(resource.path("name").asText()).matches("^([-a-z0-9._/])+$");
      String path = resource.path("path").asText();
      assertThat(path).doesNotStartWith("/").doesNotContain("..", "\\");
      Path data = copy.resolve(path);
      assertThat(resource.path("bytes").asLong()).isEqualTo(Files.size(data));
      assertThat(resource.path("hash").asText()).isEqualTo("sha256:" + sha256(data));
      if (resource.path("profile").asText().equals("tabular-data-resource")) {
        assertLoads(resource, data);
      } else {
        assertThat(resource.path("profile").asText()).isEqualTo("data-resource");
        assertThat(resource.path("format").asText()).isEqualTo("json");
      }
    }
    assertThat(run("report", "study", "--lab", copy, "--html", html(), "--datapackage"))
        .isEqualTo(ExitCode.USAGE);
    assertThat(errors.toString()).contains("datapackage.json is there already");
  }

  /** Reads the file by nothing but its description. */
  private static void assertLoads(JsonNode resource, Path data) throws IOException {
    JsonNode dialect = resource.path("dialect");
    CSVFormat format =
        CSVFormat.RFC4180
            .builder()
            .setDelimiter(dialect.path("delimiter").asText())
            .setQuote(dialect.path("quoteChar").asText().charAt(0))
            .setCommentMarker(dialect.path("commentChar").asText().charAt(0))
            .setHeader()
            .setSkipHeaderRecord(true)
            .get();
    List<String> fields = new ArrayList<>();
    resource.path("schema").path("fields").forEach(f -> fields.add(f.path("name").asText()));
    Set<String> qualities = new HashSet<>();
    resource
        .path("schema")
        .path("fields")
        .get(5)
        .path("constraints")
        .path("enum")
        .forEach(word -> qualities.add(word.asText()));
    try (CSVParser parser = CSVParser.parse(data, StandardCharsets.UTF_8, format)) {
      assertThat(parser.getHeaderNames()).isEqualTo(fields);
      long seq = 0;
      for (CSVRecord row : parser) {
        assertThat(Long.parseLong(row.get("seq"))).isEqualTo(++seq);
        assertThat(Long.parseLong(row.get("elapsed_us"))).isNotNegative();
        assertThat(row.get("quality")).isIn(qualities);
        if (!row.get("value").isEmpty()) {
          assertThat(Double.parseDouble(row.get("value"))).isFinite();
        }
      }
      assertThat(seq).isGreaterThan(1000);
    }
  }

  private static String sha256(Path file) throws Exception {
    return sha256(Files.readAllBytes(file));
  }

  private static String sha256(byte[] bytes) throws Exception {
    return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
  }
}
