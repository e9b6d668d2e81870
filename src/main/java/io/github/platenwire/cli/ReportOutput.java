package io.github.platenwire.cli;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.report.Page;
import io.github.platenwire.report.PageFiles;
import io.github.platenwire.report.ReportException;
import io.github.platenwire.report.ReportSetting;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where a report goes, as every kind of report has it, and its writing. Not thread-safe. */
final class ReportOutput {
  @Option(
      names = "--html",
      paramLabel = "FILE",
      description =
          "Where the page goes. Without --html and --pdf both are written into reports/ of the lab folder.")
  private @Nullable Path html;

  @Option(names = "--pdf", paramLabel = "FILE", description = "Where the PDF goes.")
  private @Nullable Path pdf;

  @Option(
      names = "--csv",
      paramLabel = "DIR",
      description = "Write each table of the report as a CSV file into this folder as well.")
  private @Nullable Path csv;

  @Option(names = "--force", description = "Replace a report that is there already.")
  private boolean force;

  /** Makes a page for a place. */
  @FunctionalInterface
  interface Making {
    /** Makes the page. */
    Page page(ReportSetting setting) throws Exception;
  }

  boolean mayReplace() {
    return force;
  }

  /**
   * Makes and writes a report and says where it is.
   *
   * @param stem the name of the files without ending, where none is given
   */
  int write(LabFolder lab, String stem, Making making, Face face) throws Exception {
    boolean named = html != null || pdf != null;
    Path folder = lab.root().resolve("reports");
    PageFiles files =
        new PageFiles(
            named ? Optional.ofNullable(html) : Optional.of(folder.resolve(stem + ".html")),
            named ? Optional.ofNullable(pdf) : Optional.of(folder.resolve(stem + ".pdf")),
            Optional.ofNullable(csv),
            force);
    refuse(files.existing());
    ReportSetting setting =
        new ReportSetting(lab, place(files), Version.text(), SystemClocks.wall().now());
    Page page = made(making, setting);
    try {
      files.write(page, Version.text()).forEach(written -> face.line("Wrote " + written));
    } catch (FileAlreadyExistsException e) {
      refuse(List.of(Path.of(e.getFile())));
      throw e;
    }
    return ExitCode.FINE;
  }

  private void refuse(List<Path> existing) throws CommandException {
    if (!force && !existing.isEmpty()) {
      throw new CommandException(
          ExitCode.USAGE,
          existing.get(0)
              + " is there already; name another place with --html, --pdf or --csv, or replace"
              + " it with --force");
    }
  }

  private static Path place(PageFiles files) {
    Path file = files.html().or(files::pdf).orElseThrow().toAbsolutePath();
    Path parent = file.getParent();
    return parent == null ? file : parent;
  }

  private static Page made(Making making, ReportSetting setting) throws Exception {
    try {
      return making.page(setting);
    } catch (ReportException e) {
      throw new CommandException(ExitCode.USAGE, String.valueOf(e.getMessage()), e);
    } catch (RawFileException e) {
      throw new CommandException(ExitCode.NOT_MET, String.valueOf(e.getMessage()), e);
    }
  }
}
