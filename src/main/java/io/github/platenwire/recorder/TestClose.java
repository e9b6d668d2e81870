package io.github.platenwire.recorder;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.Register;
import io.github.platenwire.lab.RegisterLine;
import io.github.platenwire.lab.SharedRegister;
import io.github.platenwire.method.Method;
import io.github.platenwire.record.Observations;
import io.github.platenwire.record.Provenance;
import io.github.platenwire.record.Provenance.Maker;
import io.github.platenwire.record.Summary;
import io.github.platenwire.record.SummaryFile;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The last step of a test: its summary with the register's witness in it, the register line over
 * both files, the copy in the shared register. The summary comes first: whatever is wrong with the
 * register never keeps a test from being closed. Confined to one thread.
 */
public final class TestClose {
  private static final Logger LOG = LoggerFactory.getLogger(TestClose.class);

  private final LabFolder lab;
  private final Register register;

  /** Closes tests of a rig in a lab. */
  public TestClose(LabFolder lab, Register register) {
    this.lab = lab;
    this.register = register;
  }

  /**
   * A test that is closed. Immutable.
   *
   * @param summary as written
   * @param file the summary's file
   * @param line the register's line; empty if it could not be written
   * @param notices what a person has to know, in whole sentences
   */
  public record Closed(
      Summary summary, Path file, Optional<RegisterLine> line, List<String> notices) {
    /** Makes the list immutable. */
    public Closed {
      notices = List.copyOf(notices);
    }
  }

  /** Makes the summary, once the witness is known. */
  @FunctionalInterface
  interface SummaryMaker {
    Summary of(Optional<String> witnessBefore) throws LabException, TomlException, IOException;
  }

  /**
   * Closes a test that was recorded.
   *
   * @param method its method
   * @param recorded what was recorded; its raw file must have been closed
   * @param seen what a person saw
   * @throws LabException if the specimen table cannot be read
   * @throws TomlException if a calibration in the raw file's head cannot be read
   * @throws IOException if the summary cannot be written
   */
  public Closed close(Method method, RecordedTest recorded, Observations seen)
      throws LabException, TomlException, IOException {
    return write(
        RegisterLine.Kind.CLOSE,
        LabFolder.summaryOf(recorded.file()),
        witness ->
            TestSummary.of(
                method,
                recorded,
                seen,
                CompanionSet.of(lab, method, recorded.placed(method, seen.breakPosition()))
                    .map(CompanionSet::words),
                new Provenance(Maker.CLOSE, witness, Optional.empty())));
  }

  /** Writes a summary and the line for it. */
  Closed write(RegisterLine.Kind kind, Path file, SummaryMaker maker)
      throws LabException, TomlException, IOException {
    List<String> notices = new ArrayList<>();
    Optional<Register.Entry> entry = begin(notices);
    try {
      Summary summary = maker.of(entry.map(Register.Entry::witnessBefore));
      String sha256 = SummaryFile.write(file, summary);
      Optional<RegisterLine> line =
          entry.flatMap(
              begun ->
                  append(
                      begun,
                      kind,
                      summary.header().test(),
                      summary.closing().fileSha256(),
                      sha256,
                      notices));
      SharedRegister.join(lab, register.rig()).ifPresent(notices::add);
      return new Closed(summary, file, line, notices);
    } finally {
      if (entry.isPresent()) {
        entry.get().close();
      }
    }
  }

  private Optional<Register.Entry> begin(List<String> notices) {
    try {
      return Optional.of(register.begin());
    } catch (LabException | IOException e) {
      notices.add(unregistered(e));
      return Optional.empty();
    }
  }

  /** Writes a line for a test whose files are there already. */
  Optional<RegisterLine> append(
      Register.Entry entry,
      RegisterLine.Kind kind,
      String test,
      String rawSha256,
      String summarySha256,
      List<String> notices) {
    try {
      return Optional.of(entry.append(kind, test, rawSha256, summarySha256));
    } catch (IOException e) {
      notices.add(unregistered(e));
      return Optional.empty();
    }
  }

  private static String unregistered(Exception e) {
    LOG.error("the register could not be written", e);
    return "The test is closed, but could not be entered into the register: "
        + e.getMessage()
        + ". That is made up for at the next 'record' or 'recover' in this lab.";
  }
}
