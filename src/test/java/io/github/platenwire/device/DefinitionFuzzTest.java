package io.github.platenwire.device;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

class DefinitionFuzzTest {
  private static final String ALPHABET = "{}[]\"'\\= \n\tx0-.,;a\u00b5\u0000#";

  /** A damaged definition is read or refused with a place, and never anything else. */
  @Property(tries = 1500, seed = "20261125")
  void parse_damagedDefinition_isReadOrRefused(@ForAll long seed) throws IOException {
    Random random = new Random(seed);
    StringBuilder text =
        new StringBuilder(Files.readString(Path.of("devices", "status-line-kn.toml")));
    for (int i = 0; i < 1 + random.nextInt(4); i++) {
      int at = random.nextInt(text.length());
      switch (random.nextInt(3)) {
        case 0 -> text.deleteCharAt(at);
        case 1 -> text.insert(at, ALPHABET.charAt(random.nextInt(ALPHABET.length())));
        default -> text.setCharAt(at, ALPHABET.charAt(random.nextInt(ALPHABET.length())));
      }
    }
    try {
      assertThat(DeviceDefinition.parse(text.toString(), "f").valueFields()).isNotEmpty();
    } catch (TomlException e) {
      assertThat(e.line()).isPositive();
      assertThat(e.column()).isPositive();
      assertThat(e.getMessage()).startsWith("f:" + e.line() + ":" + e.column() + ": ");
    }
  }
}
