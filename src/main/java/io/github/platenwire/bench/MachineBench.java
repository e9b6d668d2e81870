package io.github.platenwire.bench;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/**
 * Measures this machine part by part, in a scratch lab folder that is taken away in the end. Linux
 * and macOS only, for it needs pseudo-terminals. Confined to one thread.
 */
public final class MachineBench implements AutoCloseable {
  private final ScratchLab lab;
  private final String program;
  private final String mainClass;
  private final BenchSize size;
  private boolean recorded;

  private MachineBench(ScratchLab lab, String program, String mainClass, BenchSize size) {
    this.lab = lab;
    this.program = program;
    this.mainClass = mainClass;
    this.size = size;
  }

  /**
   * Makes the scratch lab folder.
   *
   * @param parent a folder on the disk that is to be measured
   * @param program name and version
   * @param mainClass the program's main class
   * @param size how much to measure
   * @throws IOException if it cannot be made
   * @throws LabException if it cannot be read back
   */
  public static MachineBench in(Path parent, String program, String mainClass, BenchSize size)
      throws IOException, LabException {
    return new MachineBench(ScratchLab.make(parent, program), program, mainClass, size);
  }

  /**
   * Measures one part.
   *
   * @return its figures
   * @throws BenchException if a reading was lost or the measurement cannot be made
   */
  public List<BenchFigure> run(BenchPart part)
      throws IOException,
          LabException,
          TomlException,
          RawFileException,
          BenchException,
          InterruptedException {
    return switch (part) {
      case RECORD -> record();
      case DELAY -> new Delay(lab, size.seconds()).run();
      case CPU -> new CpuShare(lab, size.seconds()).run();
      case AUDIT -> audit();
      case DAY -> new LongDay(lab, size.hours()).run();
      case START -> new StartUp(mainClass, size.starts()).run();
    };
  }

  private List<BenchFigure> record()
      throws IOException, LabException, TomlException, BenchException, InterruptedException {
    recorded = true;
    return new FlatOut(lab, size.lines(), size.rounds()).run();
  }

  /** Audits what was recorded flat out; records first if nothing was. */
  private List<BenchFigure> audit()
      throws IOException,
          LabException,
          TomlException,
          RawFileException,
          BenchException,
          InterruptedException {
    if (!recorded) {
      new FlatOut(lab, size.lines(), 2).run();
      recorded = true;
    }
    return new AuditSpeed(lab, program, size.rounds()).run();
  }

  /** Takes the scratch lab folder away. */
  @Override
  public void close() throws IOException {
    lab.close();
  }
}
