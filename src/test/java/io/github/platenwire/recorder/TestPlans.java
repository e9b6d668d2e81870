package io.github.platenwire.recorder;

import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.DiskFolder;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawHeader.KeptFile;
import io.github.platenwire.record.RecordFolder;
import io.github.platenwire.record.Samples;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What tests of the recorder record: channels, heads and plans with nothing special in them. */
final class TestPlans {
  private TestPlans() {}

  /** A load channel without calibration, late after a given silence. */
  static HeaderChannel load(
      Unit unit, double lowest, double highest, String port, KeptFile device, long lateMillis) {
    ChannelFacts facts =
        new ChannelFacts(
            "load",
            Quantity.FORCE,
            unit,
            lowest,
            highest,
            OptionalDouble.empty(),
            50,
            OptionalDouble.empty(),
            OptionalDouble.empty());
    return new HeaderChannel(facts, port, 0, device, 0, lateMillis, Optional.empty(), 1);
  }

  /** Counts readings of the channels into a file, until told to stop. */
  static RecordingPlan counting(Path file, List<HeaderChannel> channels, long until) {
    return plan(new DiskFolder(), file, channels, new CountingMethod(until), Optional.empty());
  }

  /** Follows the channels by a method, with the sample specimen. */
  static RecordingPlan plan(
      RecordFolder folder,
      Path file,
      List<HeaderChannel> channels,
      Method method,
      Optional<Duration> giveUp) {
    RawHeader sample = Samples.header();
    return plan(folder, file, channels, method, sample.method(), sample.specimen(), giveUp);
  }

  /** The same with a specimen and the text of the method of its own. */
  static RecordingPlan plan(
      RecordFolder folder,
      Path file,
      List<HeaderChannel> channels,
      Method method,
      KeptFile methodText,
      Specimen specimen,
      Optional<Duration> giveUp) {
    RawHeader sample = Samples.header();
    return new RecordingPlan(
        folder,
        start -> file,
        (start, origin, path) ->
            new RawHeader(
                "t",
                start,
                origin,
                sample.zone(),
                "test",
                "lab",
                Optional.empty(),
                Optional.empty(),
                specimen,
                methodText,
                sample.rig(),
                channels,
                List.of()),
        method,
        giveUp);
  }
}
