package io.github.platenwire.commission;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.toml.TomlException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** Whatever bytes come: a report, a draft or a refusal, never an exception. */
class AnyBytesTest {
  private static final String LIKELY = "+-0123456789.,;: kNmlbf\r\n\t\2\3*#E{}\\\"xST";

  private static byte[] bytes(int seed, int length) {
    Random random = new Random(seed);
    byte[] bytes = new byte[length];
    int strange = random.nextInt(30);
    for (int i = 0; i < length; i++) {
      bytes[i] =
          (byte)
              (random.nextInt(100) < strange
                  ? random.nextInt(256)
                  : LIKELY.charAt(random.nextInt(LIKELY.length())));
    }
    return bytes;
  }

  private static List<DeviceDefinition> shipped() throws Exception {
    List<DeviceDefinition> all = new ArrayList<>();
    try (var files = Files.newDirectoryStream(Path.of("devices"), "*.toml")) {
      for (Path file : files) {
        all.add(DeviceDefinition.parse(Files.readString(file), file.toString()));
      }
    }
    return all;
  }

  @Property(tries = 200)
  void decode_anyBytes_accountsForEachByteAtMostOnce(
      @ForAll int seed, @ForAll @IntRange(min = 1, max = 600) int length) throws Exception {
    Sample sample = Sample.of("any", bytes(seed, length));
    for (DeviceDefinition definition : shipped()) {
      SampleReport report = SampleDecoder.decode(definition, sample);
      long undecoded = report.undecoded().stream().mapToLong(u -> u.bytes().length).sum();
      assertThat(report.explainedBytes() + undecoded)
          .as("seed=%d", seed)
          .isLessThanOrEqualTo(length);
      assertThat(report.share()).isBetween(0.0, 1.0);
      report
          .undecoded()
          .forEach(
              u ->
                  assertThat(u.faultOffset()).isBetween(u.offset(), u.offset() + u.bytes().length));
    }
  }

  @Property(tries = 600)
  void draft_anyBytes_isADefinitionOrARefusal(
      @ForAll int seed, @ForAll @IntRange(min = 1, max = 3000) int length) {
    Sample sample = Sample.of("any", bytes(seed, length));
    Draft draft =
        DefinitionDraft.of(sample, Hints.none("any").withUnits(List.of("kN", "mm", "-", "N", "N")));
    assertThat(draft.text().isEmpty() && draft.notes().isEmpty() && draft.questions().isEmpty())
        .as("seed=%d", seed)
        .isFalse();
    if (!draft.text().isEmpty()) {
      try {
        SampleDecoder.decode(DeviceDefinition.parse(draft.text(), "draft"), sample);
      } catch (TomlException e) {
        Matcher place = Pattern.compile("^draft:(\\d+):").matcher(String.valueOf(e.getMessage()));
        assertThat(place.find()).as("seed=%d", seed).isTrue();
        int line = Integer.parseInt(place.group(1));
        String wrong = draft.text().lines().toList().get(line - 1);
        assertThat(wrong).as("seed=%d %s", seed, e.getMessage()).startsWith("layout");
      }
    }
  }
}
