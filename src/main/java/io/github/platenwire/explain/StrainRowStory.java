package io.github.platenwire.explain;

import io.github.platenwire.live.FollowedRow;
import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.GaugeMount;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import java.util.List;
import java.util.Optional;

/** Tells of one row of load and strain gauges: the bytes of each and what they say. Immutable. */
final class StrainRowStory {
  private final Evidence evidence;
  private final long seq;
  private final Optional<FollowedRow> row;
  private final List<HeaderChannel> gauges;

  StrainRowStory(Evidence evidence, long seq) {
    this.evidence = evidence;
    this.seq = seq;
    row = new FollowedRows(evidence.trail().rows()).of(seq);
    gauges =
        evidence.header().channels().stream()
            .filter(
                channel ->
                    channel.facts().quantity() == Quantity.LENGTH
                        || channel.facts().quantity() == Quantity.STRAIN)
            .toList();
  }

  void tell(Telling telling) {
    new ReadingStory(evidence, seq).tell(telling);
    if (row.isEmpty()) {
      return;
    }
    telling.step("Gauges at the load's moment, each between its reading before and after it:");
    for (int i = 0; i < gauges.size(); i++) {
      if (row.get().highSeq(i) > 0) {
        gauge(i, row.get(), telling);
      }
    }
    telling.more(
        "Load and strain are then averaged alike over "
            + FigureWords.number(evidence.number("alignment", "smooth-seconds"))
            + " s.");
  }

  private void gauge(int gauge, FollowedRow at, Telling telling) {
    if (at.lowSeq(gauge) > 0 && at.lowSeq(gauge) != at.highSeq(gauge)) {
      telling.more("  " + evidence.inShort(at.lowSeq(gauge)));
    }
    telling.more("  " + evidence.inShort(at.highSeq(gauge)));
    ChannelFacts facts = gauges.get(gauge).facts();
    GaugeMount mount = facts.mount().orElse(GaugeMount.PLAIN);
    telling.more(
        "    at the load's moment a strain of "
            + FigureWords.number(Unit.MICROSTRAIN.fromBase(at.value(gauge)))
            + " µm/m "
            + (mount.across() ? "across" : "along")
            + " the axis"
            + base(facts, mount));
  }

  private String base(ChannelFacts facts, GaugeMount mount) {
    if (facts.quantity() == Quantity.STRAIN) {
      return mount.rises() ? "" : " (the reading falls under load: its sign is turned)";
    }
    double length =
        mount
            .gaugeLengthMillimetres()
            .orElseGet(
                () -> evidence.specimen().dimension(Dimension.GAUGE_LENGTH).orElse(Double.NaN));
    return ": the reading over a gauge length of "
        + Term.millimetres(length).both(evidence.first())
        + (mount.lever() == 1 ? "" : " and a lever of " + FigureWords.number(mount.lever()));
  }
}
