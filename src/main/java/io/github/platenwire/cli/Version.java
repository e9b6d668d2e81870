package io.github.platenwire.cli;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;
import picocli.CommandLine;

/** Which program this is, down to the commit it was built from. */
final class Version implements CommandLine.IVersionProvider {
  private static final String COMMIT_FILE = "/io/github/platenwire/commit.properties";

  @Override
  public String[] getVersion() throws IOException {
    return new String[] {text()};
  }

  /** Name, version and commit, as they stand in each record. */
  static String text() throws IOException {
    Properties properties = new Properties();
    try (InputStream in = Version.class.getResourceAsStream(COMMIT_FILE)) {
      if (in != null) {
        properties.load(in);
      }
    }
    String version = properties.getProperty("git.build.version", "unknown version");
    String commit = properties.getProperty("git.commit.id.abbrev", "unknown commit");
    boolean dirty = Boolean.parseBoolean(properties.getProperty("git.dirty", "false"));
    return "platenwire " + version + " (" + commit + (dirty ? ", changed since" : "") + ")";
  }
}
