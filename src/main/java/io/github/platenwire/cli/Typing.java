package io.github.platenwire.cli;

import io.github.platenwire.lab.EntryTable;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.port.PortAddress;
import io.github.platenwire.port.Ports;
import io.github.platenwire.port.TypedLines;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.Enclosure;
import io.github.platenwire.record.Observations;
import io.github.platenwire.recorder.ChannelSetup;
import io.github.platenwire.recorder.LabTest;
import io.github.platenwire.recorder.OpenerFactory;
import io.github.platenwire.recorder.RecorderClocks;
import io.github.platenwire.recorder.Recording;
import io.github.platenwire.terminal.Questions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * The typed side of one test: readings that a person types, or that come out of a table. Confined
 * to the command's thread.
 */
final class Typing {
  private final RecorderClocks clocks;
  private final Optional<Path> table;
  private final TypedLines lines;

  /**
   * Prepares.
   *
   * @param table a table of readings to be taken in instead of typed ones
   */
  Typing(RecorderClocks clocks, Optional<Path> table) {
    this.clocks = clocks;
    this.table = table;
    this.lines = new TypedLines(clocks.monotonic());
  }

  /** Opens the ports of this machine, and for a typed channel the typed lines. */
  OpenerFactory openers() {
    return (port, settings) -> {
      PortAddress address = PortAddress.parse(port);
      return address instanceof PortAddress.Typed
          ? lines.opener()
          : Ports.opener(address, settings, clocks.monotonic());
    };
  }

  /**
   * What takes the readings in, where the rig has a typed channel.
   *
   * @throws CommandException if there is a table, and no channel or no file for it
   * @throws LabException if the table cannot be used
   */
  Optional<Desk> desk(LabTest test, Face face) throws LabException, IOException, CommandException {
    Optional<ChannelSetup> typed =
        test.channels().stream().filter(channel -> channel.header().isTyped()).findFirst();
    if (table.isPresent() && typed.isEmpty()) {
      throw new CommandException(
          ExitCode.USAGE,
          "--entries needs a rig with a channel of port = \"typed\"; rig '"
              + test.rig().name()
              + "' has none");
    }
    if (table.isPresent() && !Files.isRegularFile(table.get())) {
      throw new CommandException(ExitCode.USAGE, "--entries: there is no file " + table.get());
    }
    if (typed.isEmpty()) {
      return Optional.empty();
    }
    Unit usual = typed.get().header().facts().unit();
    EntryDesk desk = new EntryDesk(lines, usual, test.lab().settings().zone(), clocks, face);
    Optional<List<EntryTable.Entry>> rows =
        table.isPresent()
            ? Optional.of(EntryTable.read(table.get(), usual.quantity()))
            : Optional.empty();
    return Optional.of(new Desk(desk, rows, table));
  }

  /**
   * A desk with what it takes in.
   *
   * @param desk the desk
   * @param rows of the table, if there is one
   * @param table the file, if there is one
   */
  record Desk(EntryDesk desk, Optional<List<EntryTable.Entry>> rows, Optional<Path> table) {
    void open(Questions questions, Recording recording) {
      rows.ifPresentOrElse(
          all -> desk.feed(all, recording), () -> desk.serve(questions, recording));
    }

    /** The table itself is kept beside the record. */
    Observations enclose(Path raw) throws IOException {
      return table.isEmpty()
          ? Observations.NONE
          : Observations.NONE.enclosing(Enclosure.keep(raw, table.get()));
    }
  }
}
