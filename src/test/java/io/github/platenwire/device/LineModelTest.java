package io.github.platenwire.device;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.reading.Quality;
import io.github.platenwire.toml.TomlException;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.statistics.Statistics;

/** Random layouts against a plain formatter: what is accepted must be read as it was printed. */
class LineModelTest {
  private static final String[] SEPARATORS = {"", "", " ", ",", ";", " ; ", "A", "-", "x "};
  private static final String[] WORDS = {"A", "B", "AB", "kN", "+", "5", ".", "S T", "E"};

  /** Prints readings of one random layout. */
  private static final class Model {
    final StringBuilder layout = new StringBuilder();
    final StringBuilder fields = new StringBuilder();
    final StringBuilder line = new StringBuilder();
    final List<Double> values = new ArrayList<>();
    private final Random random;

    Model(long seed) {
      random = new Random(seed);
      int count = 1 + random.nextInt(4);
      int number = random.nextInt(count);
      separate();
      for (int i = 0; i < count; i++) {
        layout.append("{f").append(i).append('}');
        if (i == number || random.nextInt(3) == 0) {
          number("f" + i);
        } else {
          word("f" + i);
        }
        separate();
      }
    }

    private void separate() {
      String separator = pick(SEPARATORS);
      layout.append(separator);
      line.append(separator.replace(" ", "   ".substring(random.nextInt(3))));
    }

    private String pick(String... choices) {
      return choices[random.nextInt(choices.length)];
    }

    private void number(String name) {
      String sign = pick("required", "optional", "none");
      boolean exponent = random.nextInt(4) == 0;
      boolean exact = random.nextInt(3) == 0;
      boolean wide = random.nextInt(4) == 0;
      long unscaled = random.nextInt(100_000);
      int scale = random.nextInt(4);
      String digits = exact ? String.format(Locale.ROOT, "%05d", unscaled) : "" + unscaled;
      String mantissa = marked(digits, scale);
      boolean below = !sign.equals("none") && random.nextBoolean();
      String plus = sign.equals("required") ? "+" : "";
      String text = (below ? "-" : plus) + mantissa + (exponent ? "E-1" : "");
      line.append(wide ? " ".repeat(14 - text.length()) + text : text);
      double value =
          new BigDecimal(BigInteger.valueOf(unscaled), scale)
              .scaleByPowerOfTen(exponent ? -1 : 0)
              .doubleValue();
      values.add(below && value != 0 ? -value : value);
      String keys = "unit = 'kN'; sign = '" + sign + "'; exponent = " + exponent;
      keys += exact ? "; digits = 5" : "";
      keys += wide ? "; width = 14" : "";
      keys += random.nextInt(3) == 0 ? "; over = ['--', 'OL']" : "";
      fields.append(Definitions.field(name, "number", keys));
    }

    private static String marked(String digits, int scale) {
      String padded = "0".repeat(Math.max(0, scale - digits.length())) + digits;
      int before = padded.length() - scale;
      return scale == 0 ? digits : padded.substring(0, before) + "." + padded.substring(before);
    }

    private void word(String name) {
      String first = pick(WORDS);
      String second = pick(WORDS);
      boolean wide = random.nextInt(3) == 0;
      if (random.nextInt(3) == 0) {
        String text = wide ? "any" : pick("", "any", "z9");
        fields.append(Definitions.field(name, "text", wide ? "width = 3" : ""));
        line.append(text);
        return;
      }
      String codes = "codes = { '" + first + "' = 'ok'";
      codes += first.equals(second) ? " }" : ", '" + second + "' = 'ok' }";
      fields.append(Definitions.field(name, "status", codes + (wide ? "; width = 3" : "")));
      line.append(wide ? first + " ".repeat(3 - first.length()) : first);
    }

    DeviceDefinition definition() throws TomlException {
      return DeviceDefinition.parse(
          Definitions.text(layout.toString(), "LF", fields.toString()).replace("= 40", "= 200"),
          "model");
    }
  }

  private static Model accepted(long seed) {
    Model model = new Model(seed);
    boolean taken = true;
    try {
      model.definition();
    } catch (TomlException e) {
      assertThat(e.getMessage())
          .containsAnyOf("cannot be told", "stands for any run", "two of the words");
      taken = false;
    }
    Statistics.label("layout").collect(taken ? "accepted" : "refused");
    Assume.that(taken);
    return model;
  }

  @Property(tries = 3000)
  void accept_lineOfAnyAcceptedLayout_isReadAsPrinted(@ForAll long seed) throws TomlException {
    Model model = accepted(seed);
    Frames frames = Frames.of(model.definition(), "\n" + model.line + "\n");
    // A blank that must be there may have been left out; then the line may only be garbled.
    boolean blanksSent = !model.layout.toString().contains(" ");
    if (blanksSent || !frames.values.isEmpty()) {
      assertThat(frames.values)
          .as("%s%n%s%n%s%n%s", model.layout, model.fields, model.line, frames.found)
          .isEqualTo(model.values);
    }
    Statistics.label("line").collect(frames.values.isEmpty() ? "garbled" : "read");
  }

  @Property(tries = 3000)
  void accept_rearPartOfAnyLine_isNeverAnotherOkReading(@ForAll long seed) throws TomlException {
    Model model = accepted(seed);
    DeviceDefinition definition = model.definition();
    for (int from = 1; from < model.line.length(); from++) {
      Frames rear = Frames.of(definition, model.line.substring(from) + "\n");
      if (rear.qualities.contains(Quality.OK)) {
        assertThat(rear.values)
            .as("%s%n%s%n%s%n%s", model.layout, model.fields, model.line, rear.found)
            .isEqualTo(model.values);
      }
    }
  }
}
