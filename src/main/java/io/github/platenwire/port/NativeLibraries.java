package io.github.platenwire.port;

import com.fazecast.jSerialComm.SerialPort;
import com.sun.jna.Platform;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Unpacks native libraries into a folder that nobody else can write, and has them loaded from
 * there. Left to themselves the libraries unpack into shared temporary folders and load whatever
 * lies there. Safe for use by any thread.
 */
public final class NativeLibraries {
  static final String SERIAL_PATH = "jSerialComm.library.path";
  private static final String JNA_PATH = "jna.boot.library.path";

  private NativeLibraries() {}

  /**
   * Must be called before the first use of JNA. A path that the person set with {@code
   * -Djna.boot.library.path} is left alone.
   *
   * @throws IOException if there is no safe place to unpack to, or no library for this system
   */
  public static synchronized void prepareJna() throws IOException {
    if (System.getProperty(JNA_PATH) != null) {
      return;
    }
    String resource = "com/sun/jna/" + Platform.RESOURCE_PREFIX + "/" + jnaFileName();
    byte[] content = read(Platform.class, resource);
    if (content == null) {
      throw new IOException("there is no native library for this system: " + resource);
    }
    Path file = PrivateFolder.open().install(resource, content);
    String folder = file.resolveSibling("").toString();
    System.setProperty(JNA_PATH, folder);
    System.setProperty("jna.tmpdir", folder);
    System.setProperty("jna.nosys", "true");
    System.setProperty("jna.noclasspath", "true");
  }

  private static String jnaFileName() {
    return Platform.isMac() ? "libjnidispatch.jnilib" : System.mapLibraryName("jnidispatch");
  }

  /**
   * Unpacks the serial library's native part for all processors of this system; which of them fits,
   * the library finds out by its own rules.
   *
   * @return the folder to load from
   * @throws IOException if there is no safe place to unpack to
   */
  static Path unpackSerial() throws IOException {
    PrivateFolder folder = PrivateFolder.open();
    for (String resource : serialResources()) {
      byte[] content = read(SerialPort.class, resource);
      if (content != null) {
        folder.install(resource, content);
      }
    }
    return folder.path();
  }

  /** The names in the serial library's jar; empty on a system that it does not know. */
  static List<String> serialResources() {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    if (system.contains("win") && !system.contains("darwin")) {
      return names("Windows", "jSerialComm.dll", "x86_64", "aarch64", "x86", "armv7");
    }
    if (system.contains("mac")) {
      return names("OSX", "libjSerialComm.jnilib", "aarch64", "x86_64", "x86");
    }
    if (system.contains("freebsd")) {
      return names("FreeBSD", "libjSerialComm.so", "arm64", "x86_64", "x86");
    }
    if (system.contains("nux")) {
      return names(
          "Linux",
          "libjSerialComm.so",
          "x86_64",
          "x86",
          "armv8_64",
          "armv8_32",
          "armv7hf",
          "armv6hf",
          "armv5",
          "ppc64le");
    }
    return List.of();
  }

  private static List<String> names(String system, String file, String... processors) {
    return List.of(processors).stream()
        .map(processor -> system + "/" + processor + "/" + file)
        .toList();
  }

  private static byte @Nullable [] read(Class<?> beside, String resource) throws IOException {
    try (InputStream in = beside.getResourceAsStream("/" + resource)) {
      return in == null ? null : in.readAllBytes();
    }
  }
}
