package io.github.platenwire.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.platenwire.lab.Calibration;
import io.github.platenwire.lab.Channel;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.Rig;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.reading.WallClock;
import io.github.platenwire.recorder.CalibrationState;
import io.github.platenwire.terminal.TextTable;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code calibration list}: when each calibration of the lab is due. */
@Command(
    name = "list",
    description = {
      "List the lab's calibrations, when they are due, and which channels name them.",
      "Ends with 1 if one that a channel names is not in order."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {"", "Example:", "  platenwire calibration list --lab alder-lab"})
final class CalibrationListCommand implements Callable<Integer> {
  @Mixin private final LabOption labOption = new LabOption();

  @Option(names = "--json", description = "Print a JSON list instead of the table.")
  private boolean json;

  private final WallClock clock;

  CalibrationListCommand() {
    this(SystemClocks.wall());
  }

  CalibrationListCommand(WallClock clock) {
    this.clock = clock;
  }

  /**
   * One calibration.
   *
   * @param inOrder whether it can be read, and holds today
   * @param daysLeft until it is due; less than 0 when that has passed; absent if no day is given
   */
  private record Entry(
      String name,
      Optional<Calibration> calibration,
      Optional<Long> daysLeft,
      boolean inOrder,
      String words,
      List<String> usedBy) {}

  @Override
  public Integer call() throws Exception {
    LabFolder lab = labOption.open();
    LocalDate today = LocalDate.ofInstant(clock.now(), lab.settings().zone());
    List<Rig> rigs = new ArrayList<>();
    for (String rig : lab.rigNames()) {
      rigs.add(lab.rig(rig));
    }
    List<Entry> entries = new ArrayList<>();
    for (String name : lab.calibrationNames()) {
      entries.add(entry(lab, name, today, usedBy(rigs, name)));
    }
    Face face = Face.standard(lab.settings().unitsFirst());
    face.lines(json ? List.of(json(entries)) : table(entries, face));
    boolean fine = entries.stream().allMatch(entry -> entry.inOrder() || entry.usedBy().isEmpty());
    return fine ? ExitCode.FINE : ExitCode.NOT_MET;
  }

  private static List<String> usedBy(List<Rig> rigs, String name) {
    List<String> channels = new ArrayList<>();
    for (Rig rig : rigs) {
      for (Channel channel : rig.channels()) {
        if (channel.calibration().equals(Optional.of(name))) {
          channels.add(rig.name() + " " + channel.name());
        }
      }
    }
    return channels;
  }

  private static Entry entry(LabFolder lab, String name, LocalDate today, List<String> usedBy) {
    try {
      Calibration calibration = lab.calibration(name);
      CalibrationState state = CalibrationState.on(Optional.of(calibration), today);
      Optional<Long> left = calibration.due().map(due -> ChronoUnit.DAYS.between(today, due));
      return new Entry(
          name, Optional.of(calibration), left, state.inOrder(), state.words(), usedBy);
    } catch (LabException e) {
      return new Entry(
          name,
          Optional.empty(),
          Optional.empty(),
          false,
          "cannot be used: " + e.getMessage(),
          usedBy);
    }
  }

  private static List<String> table(List<Entry> entries, Face face) {
    if (entries.isEmpty()) {
      return List.of(
          "There is no calibration in calibrations/ yet; calibrations/README.txt shows how one looks.");
    }
    TextTable table =
        TextTable.empty()
            .words("calibration")
            .numbers("due")
            .numbers("days left")
            .words("state")
            .words("used by");
    for (Entry entry : entries) {
      table.row(
          entry.name(),
          entry.calibration().flatMap(Calibration::due).map(LocalDate::toString).orElse("--"),
          entry.daysLeft().map(String::valueOf).orElse("--"),
          entry.words(),
          entry.usedBy().isEmpty() ? "no channel" : String.join(", ", entry.usedBy()));
    }
    return table.lines(face.columns(), face.look());
  }

  private static String json(List<Entry> entries) {
    ArrayNode list = new ObjectMapper().createArrayNode();
    for (Entry entry : entries) {
      ObjectNode node = list.addObject();
      node.put("name", entry.name());
      entry.calibration().ifPresent(known -> put(node, known));
      entry.daysLeft().ifPresent(days -> node.put("days_left", days));
      node.put("in_order", entry.inOrder()).put("state", entry.words());
      entry.usedBy().forEach(node.putArray("used_by")::add);
    }
    return list.toPrettyString();
  }

  private static void put(ObjectNode node, Calibration calibration) {
    node.put("certificate", calibration.certificate());
    node.put("laboratory", calibration.laboratory());
    node.put("date", calibration.date().toString());
    calibration.due().ifPresent(due -> node.put("due", due.toString()));
    calibration.accuracyClass().ifPresent(stated -> node.put("class", stated));
  }
}
