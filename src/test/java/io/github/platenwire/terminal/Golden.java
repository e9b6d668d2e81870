package io.github.platenwire.terminal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Screens kept as text files, to be looked at by a person. With the environment variable
 * PLATENWIRE_WRITE_GOLDEN set they are written anew instead of compared, and then looked at.
 */
final class Golden {
  private static final Path FOLDER = Path.of("src", "test", "resources", "terminal");

  private Golden() {}

  static void compare(String name, List<String> lines) throws IOException {
    Path file = FOLDER.resolve(name + ".txt");
    String text = String.join("\n", lines) + "\n";
    if (System.getenv("PLATENWIRE_WRITE_GOLDEN") != null) {
      Files.writeString(file, text);
    }
    assertThat(text).as(name).isEqualTo(Files.readString(file));
  }
}
