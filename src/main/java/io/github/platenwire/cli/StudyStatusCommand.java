package io.github.platenwire.cli;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.reading.WallClock;
import io.github.platenwire.study.StudyData;
import io.github.platenwire.study.StudyStatus;
import io.github.platenwire.terminal.StudyStatusView;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code study status}: what is still to break and when. */
@Command(
    name = "status",
    description = {
      "Show what is still to break and when, soonest first with the standard's tolerance, what is",
      "overdue, how much of the plan is done, and which companion sets are out of range.",
      "Ends with 1 if a break is overdue or a companion set is out of range."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire study status --lab alder-lab",
      "  platenwire study status --lab alder-lab --csv > due.csv"
    })
final class StudyStatusCommand implements Callable<Integer> {
  @Mixin private final LabOption labOption = new LabOption();
  @Mixin private final OutputOption output = new OutputOption();

  private final WallClock clock;

  StudyStatusCommand() {
    this(SystemClocks.wall());
  }

  StudyStatusCommand(WallClock clock) {
    this.clock = clock;
  }

  @Override
  public Integer call() throws Exception {
    LabFolder lab = labOption.open();
    StudyStatus status = StudyStatus.of(StudyData.read(lab), clock.now());
    Face face = Face.standard(lab.settings().unitsFirst());
    if (output.json()) {
      face.lines(List.of(StudyStatusJson.text(status)));
    } else if (output.csv()) {
      face.lines(StudyTables.due(status));
    } else {
      face.lines(StudyStatusView.lines(status, face.columns(), face.look()));
    }
    boolean fine = status.overdue() == 0 && status.outOfRange().isEmpty();
    return fine ? ExitCode.FINE : ExitCode.NOT_MET;
  }
}
