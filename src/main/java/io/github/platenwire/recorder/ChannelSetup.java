package io.github.platenwire.recorder;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.record.RawHeader.HeaderChannel;

/**
 * One channel as it is to be recorded. Immutable.
 *
 * @param header what the raw file's head will say of it
 * @param device how its bytes are decoded
 */
public record ChannelSetup(HeaderChannel header, DeviceDefinition device) {
  /**
   * Checks that the device has the field.
   *
   * @throws IllegalArgumentException if it has not
   */
  public ChannelSetup {
    if (header.field() < 0 || header.field() >= device.valueFields().size()) {
      throw new IllegalArgumentException(
          "device has no such field, device=" + device.name() + " field=" + header.field());
    }
  }
}
