package io.github.platenwire.report;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.CopyOption;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * Writes a page as HTML, as PDF and its tables as CSV. Each file appears whole or not at all; none
 * takes the place of another unless that is asked for. Immutable.
 *
 * @param html where the page goes, if anywhere
 * @param pdf where the PDF goes, if anywhere
 * @param tables folder for one CSV file a table, if any
 * @param replace whether files that are there already may be replaced
 */
public record PageFiles(
    Optional<Path> html, Optional<Path> pdf, Optional<Path> tables, boolean replace) {
  private static final CSVFormat CSV = CSVFormat.RFC4180.builder().setRecordSeparator("\n").get();

  /** Those of the named files that are there already. */
  public List<Path> existing() {
    List<Path> there = new ArrayList<>();
    html.filter(Files::exists).ifPresent(there::add);
    pdf.filter(Files::exists).ifPresent(there::add);
    return there;
  }

  /**
   * Writes everything.
   *
   * @param program name and version, which the PDF names as its producer
   * @return what was written
   * @throws FileAlreadyExistsException if a file is there and may not be replaced
   * @throws IOException if a file cannot be written
   */
  public List<Path> write(Page page, String program) throws IOException {
    refuseTaken(page);
    List<Path> written = new ArrayList<>();
    String xhtml = page.xhtml();
    if (html.isPresent()) {
      put(html.get(), out -> out.write(xhtml.getBytes(StandardCharsets.UTF_8)), written);
    }
    if (pdf.isPresent()) {
      put(pdf.get(), out -> PdfPrinter.print(xhtml, program, out), written);
    }
    if (tables.isPresent()) {
      for (PageTable table : page.tables()) {
        put(csvFile(tables.get(), table), out -> csv(table, out), written);
      }
    }
    return written;
  }

  /** Before anything is written, so that a report is not left half there. */
  private void refuseTaken(Page page) throws FileAlreadyExistsException {
    if (replace) {
      return;
    }
    List<Path> taken = new ArrayList<>(existing());
    tables.ifPresent(
        folder ->
            page.tables().stream()
                .map(table -> csvFile(folder, table))
                .filter(Files::exists)
                .forEach(taken::add));
    if (!taken.isEmpty()) {
      throw new FileAlreadyExistsException(taken.get(0).toString());
    }
  }

  private static Path csvFile(Path folder, PageTable table) {
    return folder.resolve(table.name() + ".csv");
  }

  private static void csv(PageTable table, OutputStream out) throws IOException {
    Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
    CSVPrinter printer = new CSVPrinter(writer, CSV);
    for (List<String> row : table.values()) {
      printer.printRecord(row);
    }
    printer.flush();
  }

  /** Writes to a stream. */
  @FunctionalInterface
  interface Content {
    /** Writes everything; leaves the stream open. */
    void write(OutputStream out) throws IOException;
  }

  private void put(Path file, Content content, List<Path> written) throws IOException {
    put(file, content, replace);
    written.add(file);
  }

  /** Writes a file beside its place and moves it there. */
  static void put(Path file, Content content, boolean replace) throws IOException {
    Path whole = file.toAbsolutePath().normalize();
    Path folder = whole.getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
    Path draft = whole.resolveSibling("." + whole.getFileName() + ".draft");
    try {
      try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(draft))) {
        content.write(out);
      }
      CopyOption[] options =
          replace ? new CopyOption[] {StandardCopyOption.REPLACE_EXISTING} : new CopyOption[0];
      Files.move(draft, whole, options);
    } finally {
      Files.deleteIfExists(draft);
    }
  }
}
