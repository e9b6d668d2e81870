package io.github.platenwire.recorder;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Groups a rig's channels by the port that carries them. Stateless. */
final class Sources {
  private Sources() {}

  /**
   * One source a port.
   *
   * @throws IllegalArgumentException if two channels name one port with different devices, or the
   *     same field twice
   */
  static List<Source> of(List<ChannelSetup> channels) {
    Map<String, Source> byPort = new LinkedHashMap<>();
    for (int i = 0; i < channels.size(); i++) {
      ChannelSetup setup = channels.get(i);
      String port = setup.header().port();
      Source source = byPort.computeIfAbsent(port, name -> new Source(name, setup.device()));
      if (!source.device().name().equals(setup.device().name())) {
        throw new IllegalArgumentException(
            "port "
                + port
                + " is named with two devices: "
                + source.device().name()
                + " and "
                + setup.device().name());
      }
      source.feed(i, setup);
    }
    return new ArrayList<>(byPort.values());
  }
}
