package io.github.platenwire.lab;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.JarURLConnection;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.jar.JarFile;

/**
 * Files packed with the program: device definitions, methods, the templates of a lab folder.
 * Immutable; safe for any thread.
 */
final class Shipped {
  private static final String ROOT = "io/github/platenwire/shipped/";

  private final ClassLoader loader;

  Shipped(ClassLoader loader) {
    this.loader = loader;
  }

  /** What is packed with this program. */
  static Shipped own() {
    return new Shipped(Shipped.class.getClassLoader());
  }

  /** A packed file as text, by its path such as {@code devices/NAME.toml}. */
  Optional<String> text(String path) {
    try (InputStream in = loader.getResourceAsStream(ROOT + path)) {
      return in == null
          ? Optional.empty()
          : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException("the program's own file " + path + " cannot be read", e);
    }
  }

  /** The names, without {@code .toml}, of the definitions packed in a folder, sorted. */
  List<String> names(String folder) {
    URL url = loader.getResource(ROOT + folder);
    if (url == null) {
      return List.of();
    }
    try {
      if (url.openConnection() instanceof JarURLConnection jar) {
        return namesInJar(jar, ROOT + folder + "/");
      }
      return TomlFolder.names(Path.of(url.toURI()));
    } catch (IOException e) {
      throw new UncheckedIOException("the program's own folder " + folder + " cannot be read", e);
    } catch (URISyntaxException e) {
      throw new IllegalStateException("no path for the program's own folder " + url, e);
    }
  }

  private static List<String> namesInJar(JarURLConnection connection, String prefix)
      throws IOException {
    // a jar of our own, so that closing it closes nobody else's
    connection.setUseCaches(false);
    try (JarFile jar = connection.getJarFile()) {
      return jar.stream()
          .map(entry -> entry.getName())
          .filter(entry -> entry.startsWith(prefix))
          .map(entry -> entry.substring(prefix.length()))
          .filter(entry -> entry.indexOf('/') < 0)
          .flatMap(entry -> TomlFolder.definitionName(entry).stream())
          .sorted()
          .toList();
    }
  }
}
