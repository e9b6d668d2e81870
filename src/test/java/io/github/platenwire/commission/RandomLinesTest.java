package io.github.platenwire.commission;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** Hundreds of line formats made up at random: the draft decodes every line to what was written. */
class RandomLinesTest {
  @Property(tries = 400)
  void draft_anyFormat_decodesEveryLineToItsValue(
      @ForAll @IntRange(min = 0, max = 1_000_000) int seed,
      @ForAll @IntRange(min = 12, max = 60) int lines)
      throws Exception {
    RandomLineFormat format = new RandomLineFormat(seed);
    String stream = format.stream(lines);
    SampleReport report = UnknownLinesTest.check(stream, Hints.none("random"));
    String words = String.format(Locale.ROOT, "seed=%d%n%s", seed, stream);
    assertThat(report.frames()).as(words).isEqualTo(lines);
    assertThat(report.channels()).as(words).hasSize(format.values.size());
    for (int i = 0; i < report.channels().size(); i++) {
      ChannelRange channel = report.channels().get(i);
      assertThat(channel.unit().symbol()).as(words).isEqualTo(format.unit(i));
      assertThat(channel.greatest()).as(words).isEqualTo(format.greatest(i).doubleValue());
      assertThat(channel.least()).as(words).isEqualTo(format.least(i).doubleValue());
    }
  }
}
