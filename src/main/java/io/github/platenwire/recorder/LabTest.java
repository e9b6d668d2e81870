package io.github.platenwire.recorder;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.Rig;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.method.TestSetting;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.record.DiskFolder;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawHeader.HeaderCheck;
import io.github.platenwire.record.RawHeader.KeptFile;
import io.github.platenwire.recorder.ChecklistItem.State;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * One test in a lab folder: the specimen out of its table, the rig's links open, the checklist, the
 * recording. Confined to the thread that opened it, except that the {@link Recording} it starts is
 * safe for any thread.
 */
public final class LabTest implements AutoCloseable {
  /** So many good readings of each channel make a zero that can be judged. */
  private static final int ENOUGH_READINGS = 5;

  private final LabFolder lab;
  private final Rig rig;
  private final Specimen specimen;
  private final Method method;
  private final List<ChannelSetup> channels;
  private final RecorderClocks clocks;
  private final RigConnection connection;

  private LabTest(
      LabFolder lab,
      Rig rig,
      Specimen specimen,
      Method method,
      List<ChannelSetup> channels,
      RecorderClocks clocks,
      RigConnection connection) {
    this.lab = lab;
    this.rig = rig;
    this.specimen = specimen;
    this.method = method;
    this.channels = channels;
    this.clocks = clocks;
    this.connection = connection;
  }

  /**
   * Finds everything in the lab folder and opens the rig's ports.
   *
   * @param lab the lab folder
   * @param rigName a rig of it
   * @param specimenName a specimen of its table
   * @param methodName a method
   * @param openers knows how to open ports
   * @param clocks stamps and times
   * @throws LabException if something is missing or malformed in the lab folder
   * @throws IOException if a port cannot be opened
   */
  public static LabTest open(
      LabFolder lab,
      String rigName,
      String specimenName,
      String methodName,
      OpenerFactory openers,
      RecorderClocks clocks)
      throws LabException, IOException {
    Rig rig = lab.rig(rigName);
    Specimen specimen = lab.specimen(specimenName);
    Method method = lab.method(methodName);
    List<ChannelSetup> channels = LabChannels.of(lab, rig);
    return new LabTest(
        lab,
        rig,
        specimen,
        method,
        channels,
        clocks,
        RigConnection.open(channels, openers, clocks));
  }

  /** The specimen. */
  public Specimen specimen() {
    return specimen;
  }

  /** The rig. */
  public Rig rig() {
    return rig;
  }

  /** The method. */
  public Method method() {
    return method;
  }

  /** The lab folder. */
  public LabFolder lab() {
    return lab;
  }

  /** The channels in rig order. */
  public List<ChannelSetup> channels() {
    return channels;
  }

  /**
   * Waits until every channel has spoken, then goes through the checklist.
   *
   * @param attended whether somebody is there to act on it
   * @param reason the operator's reason to go on against an objection, if given
   * @param patience how long to wait for the channels
   * @return what was looked at, in order
   */
  public List<ChecklistItem> check(boolean attended, Optional<String> reason, Duration patience)
      throws LabException, IOException {
    Predicate<Preview> enough =
        preview -> {
          for (int i = 0; i < channels.size(); i++) {
            if (!channels.get(i).header().isTyped()
                && preview.channels().get(i).good() < ENOUGH_READINGS) {
              return false;
            }
          }
          return true;
        };
    Preview preview = connection.awaitPreview(enough, patience.toNanos());
    Instant now = clocks.wall().now();
    UnitSystem first = lab.settings().unitsFirst();
    Checklist checklist = new Checklist(attended, first);
    checklist.specimen(method.examine(specimen, setting(now, reason)), specimen.name(), reason);
    for (int i = 0; i < channels.size(); i++) {
      checklist.channel(channels.get(i), preview.channels().get(i));
    }
    checklist.space(Files.getFileStore(lab.root()).getUsableSpace());
    checklist.clock(now, lab.settings().zone(), latestStart());
    for (int i = 0; i < channels.size(); i++) {
      checklist.calibration(rig.channels().get(i).name(), calibrationStates(now).get(i));
    }
    return checklist.items();
  }

  /** Each channel's calibration on the day of a moment, in rig order. */
  List<CalibrationState> calibrationStates(Instant moment) throws LabException {
    List<CalibrationState> states = new java.util.ArrayList<>();
    for (var channel : rig.channels()) {
      states.add(
          CalibrationState.on(
              lab.calibration(channel), moment.atZone(lab.settings().zone()).toLocalDate()));
    }
    return states;
  }

  private Optional<Instant> latestStart() throws IOException {
    List<Path> records = lab.records();
    return records.isEmpty()
        ? Optional.empty()
        : RecordStart.of(records.get(records.size() - 1).getFileName().toString());
  }

  /**
   * Starts to record. Once only.
   *
   * @param checklist what {@link #check} found; stands in the head of the record
   * @param reason the operator's reason to go on, if given
   * @param operator who runs the test, if said
   * @param giveUpAfter how long everything may be silent before the record is closed; empty: for
   *     ever
   * @param program name and version, for the head
   * @param listener told after each write
   * @throws IOException if the raw file cannot be made
   */
  public Recording start(
      List<ChecklistItem> checklist,
      Optional<String> reason,
      Optional<String> operator,
      Optional<Duration> giveUpAfter,
      String program,
      RecordingListener listener)
      throws IOException {
    List<HeaderCheck> checks =
        checklist.stream()
            .map(item -> new HeaderCheck(item.name(), item.state().word(), item.seen()))
            .toList();
    RecordingPlan plan =
        new RecordingPlan(
            new DiskFolder(),
            start -> lab.newRecord(start, specimen.name()),
            (start, originNanos, file) ->
                new RawHeader(
                    RecordStart.stem(file),
                    start,
                    originNanos,
                    lab.settings().zone(),
                    program,
                    lab.settings().labName(),
                    operator,
                    reason,
                    specimen,
                    new KeptFile(method.name(), method.text()),
                    new KeptFile(rig.name(), rig.text()),
                    channels.stream().map(ChannelSetup::header).toList(),
                    checks),
            method,
            giveUpAfter);
    return connection.record(plan, listener);
  }

  /** Whether nothing on a checklist failed. */
  public static boolean mayStart(List<ChecklistItem> checklist) {
    return checklist.stream().noneMatch(item -> item.state() == State.FAILED);
  }

  private TestSetting setting(Instant now, Optional<String> reason) {
    return new TestSetting(
        now,
        lab.settings().zone(),
        channels.stream().map(channel -> channel.header().facts()).toList(),
        reason);
  }

  /** Gives the ports back; a recording still under way is ended in order first. */
  @Override
  public void close() {
    connection.close();
  }
}
