package io.github.platenwire.recorder;

import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.method.Method;
import io.github.platenwire.quantity.BothSystems;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.recorder.ChecklistItem.State;
import io.github.platenwire.recorder.Preview.ChannelPreview;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What is looked at before a test starts. Pure: it judges facts that others gathered.
 *
 * <p>With nobody there to act ({@code attended} false) a zero that is out of tolerance is a warning
 * and goes into the record: the specimen is being loaded either way, and readings that are not
 * recorded can never be had again.
 */
public final class Checklist {
  /** A day of three channels at 1 kHz is about 15 GB; a compression test less than 2 MB. */
  private static final long LITTLE_SPACE_BYTES = 500_000_000L;

  private static final long NO_SPACE_BYTES = 20_000_000L;
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT);

  private final boolean attended;
  private final UnitSystem unitsFirst;
  private final List<ChecklistItem> items = new ArrayList<>();

  /**
   * Starts a checklist.
   *
   * @param attended whether somebody is there to act on it
   * @param unitsFirst the system of units shown first
   */
  public Checklist(boolean attended, UnitSystem unitsFirst) {
    this.attended = attended;
    this.unitsFirst = unitsFirst;
  }

  /** What was looked at so far, in order. */
  public List<ChecklistItem> items() {
    return List.copyOf(items);
  }

  /** Whether anything failed. */
  public boolean failed() {
    return items.stream().anyMatch(item -> item.state() == State.FAILED);
  }

  /**
   * The specimen by the method's own examination.
   *
   * @param objections what speaks against testing it
   * @param specimen its name
   * @param reason the operator's reason to go on, if given
   */
  public void specimen(
      List<Method.Objection> objections, String specimen, Optional<String> reason) {
    if (objections.isEmpty()) {
      add("specimen", State.PASSED, specimen + " is complete", "");
    }
    for (Method.Objection objection : objections) {
      State state =
          switch (objection.weight()) {
            case REFUSED -> State.FAILED;
            case NEEDS_REASON -> reason.isPresent() ? State.WARNING : State.FAILED;
            case DEPARTURE -> State.WARNING;
          };
      String seen =
          objection.problem()
              + (state == State.WARNING && reason.isPresent()
                  ? " (reason given: " + reason.get() + ")"
                  : "");
      add("specimen", state, seen, objection.remedy());
    }
  }

  /** One channel: does it speak, and does it stand near zero. */
  public void channel(ChannelSetup setup, ChannelPreview preview) {
    ChannelFacts facts = setup.header().facts();
    String name = "port of " + facts.name();
    if (setup.header().isTyped()) {
      add(name, State.PASSED, "its readings are typed", "");
    } else if (!preview.linkUp()) {
      add(
          name,
          State.FAILED,
          setup.header().port() + " is gone",
          "Plug it in; the link is taken up again by itself.");
    } else if (preview.readings() == 0) {
      add(
          name,
          State.FAILED,
          "nothing came from " + setup.header().port(),
          "Is the device switched on, the cable in, and the speed right ("
              + setup.device().lineSettings().baud()
              + " baud)? Try: platenwire listen "
              + setup.header().port()
              + " --device "
              + setup.device().name());
    } else if (preview.good() == 0) {
      add(
          name,
          State.FAILED,
          preview.readings()
              + " frames came, but none could be read as '"
              + setup.device().name()
              + "'; the last was: "
              + preview.lastReceived(),
          "Compare it with the layout in the device definition, or choose another definition in the rig file.");
    } else {
      add(
          name,
          State.PASSED,
          setup.header().port() + " speaks; last: " + preview.lastReceived(),
          "");
      zero(facts, preview);
    }
  }

  private void zero(ChannelFacts facts, ChannelPreview preview) {
    double base = facts.unit().toBase(preview.mean());
    double tolerance = facts.unit().toBase(facts.zeroTolerance());
    String seen =
        "zero of "
            + facts.name()
            + " is "
            + BothSystems.words(base, facts.quantity(), unitsFirst)
            + ", allowed ± "
            + BothSystems.words(tolerance, facts.quantity(), unitsFirst);
    boolean within = Math.abs(base) <= tolerance;
    State outside = attended ? State.FAILED : State.WARNING;
    add(
        "zero of " + facts.name(),
        within ? State.PASSED : outside,
        seen,
        within
            ? ""
            : "Unload the machine and zero the indicator, or mend the tolerance in the rig file.");
  }

  /** Whether there is room for the record. */
  public void space(long freeBytes) {
    String seen = String.format(Locale.ROOT, "%.1f GB free", freeBytes / 1e9);
    if (freeBytes < NO_SPACE_BYTES) {
      add(
          "disk",
          State.FAILED,
          seen,
          "Free some space on the disk of the lab folder, then start again.");
    } else if (freeBytes < LITTLE_SPACE_BYTES) {
      add("disk", State.WARNING, seen, "Free some space soon.");
    } else {
      add("disk", State.PASSED, seen, "");
    }
  }

  /**
   * Whether the time of day can be right.
   *
   * @param now the time of day
   * @param zone the lab's zone
   * @param latest the start of the lab's latest record, if there is one
   */
  public void clock(Instant now, ZoneId zone, Optional<Instant> latest) {
    String seen = TIME.format(now.atZone(zone)) + " " + zone.getId();
    if (latest.isPresent() && now.isBefore(latest.get())) {
      add(
          "clock",
          State.FAILED,
          seen + ", but the latest record starts at " + TIME.format(latest.get().atZone(zone)),
          "Set this machine's clock; ages and the order of records depend on it.");
    } else {
      add("clock", State.PASSED, seen, "");
    }
  }

  /** A channel's calibration on the day. */
  public void calibration(String channel, CalibrationState state) {
    add(
        "calibration of " + channel,
        state.inOrder() ? State.PASSED : State.WARNING,
        state.words(),
        state.inOrder()
            ? ""
            : "It will stand on the summary as a departure; have the channel calibrated, or name its certificate in the rig file.");
  }

  private void add(String name, State state, String seen, String remedy) {
    items.add(
        new ChecklistItem(
            name, state, seen, remedy.isEmpty() ? Optional.empty() : Optional.of(remedy)));
  }
}
