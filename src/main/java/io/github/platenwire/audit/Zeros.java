package io.github.platenwire.audit;

import io.github.platenwire.audit.RecordFacts.Zero;
import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.record.RawHeader;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The zeros that were taken off, from a record's events. Only of forces: a gauge is put on anew for
 * each specimen, and its zero means nothing. Stateless.
 */
final class Zeros {
  private static final Pattern ZERO = Pattern.compile("zero (\\S+)=(-?[0-9.E+-]+) unit=(\\S+) .*");

  private Zeros() {}

  static Map<String, Zero> of(RawHeader header, RowWatch watch) {
    Map<String, Zero> zeros = new HashMap<>();
    for (RowWatch.Event event : watch.events("zero ")) {
      Matcher parts = ZERO.matcher(event.text());
      if (parts.matches()) {
        put(zeros, parts, header.channels());
      }
    }
    return zeros;
  }

  private static void put(
      Map<String, Zero> zeros, Matcher parts, List<RawHeader.HeaderChannel> channels) {
    for (RawHeader.HeaderChannel channel : channels) {
      ChannelFacts facts = channel.facts();
      if (facts.name().equals(parts.group(1))
          && facts.quantity() == Quantity.FORCE
          && facts.unit().symbol().equals(parts.group(3))) {
        zeros.put(
            facts.name(),
            new Zero(Double.parseDouble(parts.group(2)), facts.zeroTolerance(), parts.group(3)));
      }
    }
  }
}
