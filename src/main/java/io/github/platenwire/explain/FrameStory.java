package io.github.platenwire.explain;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.device.FrameSink;
import io.github.platenwire.lab.Calibration;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawHeader.KeptFile;
import io.github.platenwire.record.RawRow;
import io.github.platenwire.recorder.ChannelValue;
import io.github.platenwire.recorder.Definitions;
import io.github.platenwire.toml.TomlException;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Tells how one frame became a value: decoded, then calibrated. Used once; not thread-safe. */
final class FrameStory implements FrameSink {
  private final HeaderChannel channel;
  private final RawRow row;
  private final UnitSystem first;
  private double decoded = Double.NaN;
  private @Nullable Unit unit;

  FrameStory(HeaderChannel channel, RawRow row, UnitSystem first) {
    this.channel = channel;
    this.row = row;
    this.first = first;
  }

  void tell(Consumer<String> step) {
    DeviceDefinition device;
    try {
      device = DeviceDefinition.parse(channel.device().text(), channel.device().name());
    } catch (TomlException e) {
      throw new IllegalStateException("the definition was read before", e);
    }
    device.decodeFrame(row.received(), 0, this);
    Unit sent = unit == null ? channel.facts().unit() : unit;
    step.accept(
        "Decoded by the device definition '"
            + device.name()
            + "' kept in the file: "
            + FigureWords.pair(decoded, sent, first));
    step.accept("Calibrated: " + calibrated(sent));
  }

  private String calibrated(Unit sent) {
    double converted = ChannelValue.shown(decoded, sent, channel);
    double value = channel.correction().apply(converted);
    String words = FigureWords.pair(value, channel.facts().unit(), first);
    String certificate = certificate();
    if (Double.doubleToLongBits(converted) == Double.doubleToLongBits(value)) {
      return certificate + "; nothing has to be corrected, it stays " + words;
    }
    return certificate + ": corrected (" + channel.correction().words() + ") to " + words;
  }

  private String certificate() {
    Optional<KeptFile> kept = channel.calibration();
    if (kept.isEmpty()) {
      return "no calibration is named for the channel";
    }
    try {
      Calibration calibration = Definitions.calibration(kept.get().text(), kept.get().name());
      return "certificate "
          + calibration.certificate()
          + " of "
          + calibration.laboratory()
          + ", "
          + calibration.date();
    } catch (TomlException e) {
      return "the calibration '" + kept.get().name() + "' cannot be read: " + e.getMessage();
    }
  }

  @Override
  public void value(
      byte[] frame,
      int from,
      int length,
      long arrivalNanos,
      int field,
      double value,
      Unit sent,
      Quality quality) {
    if (field == channel.field()) {
      decoded = value;
      unit = sent;
    }
  }

  @Override
  public void garbled(byte[] frame, int from, int length, long arrivalNanos) {
    decoded = Double.NaN;
  }
}
