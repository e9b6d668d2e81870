package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import ch.qos.logback.classic.LoggerContext;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

class LoggingTest {
  private static final Logger LOG = LoggerFactory.getLogger(LoggingTest.class);

  @TempDir Path folder;

  private final PrintStream out = System.out;
  private final PrintStream err = System.err;
  private final ByteArrayOutputStream console = new ByteArrayOutputStream();

  @BeforeEach
  void listenToConsole() {
    PrintStream stream = new PrintStream(console, true, StandardCharsets.UTF_8);
    System.setOut(stream);
    System.setErr(stream);
  }

  @AfterEach
  void giveBack() {
    Logging.stop();
    System.setOut(out);
    System.setErr(err);
    assertThat(console.toString(StandardCharsets.UTF_8)).isEmpty();
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> paths = Files.walk(folder)) {
      return paths.filter(Files::isRegularFile).toList();
    }
  }

  @Test
  void log_noFolderYet_goesNowhere() throws IOException {
    Logging.stop();
    LOG.error("to nobody");
    assertThat(files(folder)).isEmpty();
  }

  @Test
  void configure_freshContext_writesNothingToConsole() {
    LoggerContext context = new LoggerContext();
    Logging.Silence silence = new Logging.Silence();
    silence.setContext(context);
    silence.configure(context);
    context.getLogger("any").error("to nobody");
    assertThat(context.getStatusManager().getCopyOfStatusListenerList()).isNotEmpty();
  }

  @Test
  void toFolder_warning_isOneUtcLineInUtf8() throws IOException {
    Logging.toFolder(folder);
    LOG.warn("port {} is silent, ±{} s", "load", 2);
    LOG.debug("left out");
    String text = Files.readString(folder.resolve("logs/platenwire.log"));
    assertThat(text)
        .matches(
            "\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d\\.\\d{3}Z WARN  \\[\\S+] LoggingTest:"
                + " port load is silent, ±2 s\n");
  }

  @Test
  void toFolder_exception_isWrittenBelow() throws IOException {
    Logging.toFolder(folder);
    LOG.error("failed", new IllegalStateException("because"));
    assertThat(Files.readString(folder.resolve("logs/platenwire.log")))
        .contains("LoggingTest: failed\njava.lang.IllegalStateException: because\n\tat ");
  }

  @Test
  void toFolder_second_takesOver() throws IOException {
    Path other = Files.createDirectory(folder.resolve("other"));
    Logging.toFolder(folder);
    Logging.toFolder(other);
    LOG.warn("for the other");
    assertThat(folder.resolve("logs/platenwire.log")).isEmptyFile();
    assertThat(other.resolve("logs/platenwire.log")).isNotEmptyFile();
  }

  @Test
  void toFolder_logsCannotBeMade_givesUpSilently() throws IOException {
    Files.writeString(folder.resolve("logs"), "a file where the folder should be");
    Logging.toFolder(folder);
    LOG.error("to nobody");
    assertThat(files(folder)).containsExactly(folder.resolve("logs"));
  }

  @Test
  void toFolder_fileCannotBeOpened_givesUpSilently() throws IOException {
    Files.createDirectories(folder.resolve("logs/platenwire.log"));
    Logging.toFolder(folder);
    LOG.error("to nobody");
    assertThat(files(folder)).isEmpty();
  }

  @Test
  void toFolder_fullDevice_neverThrows() throws IOException {
    Path full = Path.of("/dev/full");
    assumeTrue(Files.isWritable(full), "/dev/full stands in for a full disk");
    Files.createDirectory(folder.resolve("logs"));
    Files.createSymbolicLink(folder.resolve("logs/platenwire.log"), full);
    Logging.toFolder(folder);
    for (int i = 0; i < 100; i++) {
      LOG.warn("does not fit");
    }
    Logging.stop();
    assertThat(Files.size(full)).isZero();
    try (Stream<Path> links = Files.list(folder.resolve("logs"))) {
      for (Path link : links.toList()) {
        Files.delete(link);
      }
    }
  }

  @Test
  void toFolder_tooMuchToSay_startsNewFilesOfBoundedSize() throws IOException {
    Logging.toFolder(folder);
    String filling = "x".repeat(64 * 1024);
    for (int i = 0; i < 500; i++) {
      LOG.warn(filling);
    }
    // 31 MB: ten files of 2 MB are kept
    assertThat(files(folder.resolve("logs")))
        .hasSize(10)
        .allMatch(file -> file.toFile().length() < 3 * 1024 * 1024)
        .contains(folder.resolve("logs/platenwire.1.log"), folder.resolve("logs/platenwire.9.log"));
  }
}
