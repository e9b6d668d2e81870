package io.github.platenwire.method;

import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/** The methods that come with Platenwire. Stateless. */
public final class Methods {
  private static final String FOLDER = "/io/github/platenwire/shipped/config/methods/";
  private static final List<String> NAMES =
      List.of(
          "compression-cylinder-c39",
          "compression-core-c42",
          "compression-cylinder-en12390",
          "compression-cube-en12390",
          "splitting-cylinder-c496",
          "flexure-third-point-c78",
          "modulus-c469",
          "notched-beam-en14651",
          "split-beam",
          "front-advance",
          "absorption-c1585");

  private Methods() {}

  /** The names of the methods that come with Platenwire. */
  public static List<String> shippedNames() {
    return NAMES;
  }

  /**
   * A method that comes with Platenwire.
   *
   * @param name one of {@link #shippedNames}
   * @return empty if there is none of that name
   */
  public static Optional<Method> shipped(String name) {
    if (!NAMES.contains(name)) {
      return Optional.empty();
    }
    String file = name + ".toml";
    try (InputStream in = Methods.class.getResourceAsStream(FOLDER + file)) {
      if (in == null) {
        throw new IllegalStateException(
            "the program is incomplete: " + FOLDER + file + " is missing");
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return Optional.of(Method.parse(text, file));
    } catch (IOException e) {
      throw new UncheckedIOException("the program's own " + file + " cannot be read", e);
    } catch (TomlException e) {
      throw new IllegalStateException(
          "the program's own " + file + " is wrong: " + e.getMessage(), e);
    }
  }
}
