package io.github.platenwire.cli;

import io.github.platenwire.lab.PrivateKeys;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The option {@code --keys}, which every command that signs has. */
final class KeysOption {
  @Option(
      names = "--keys",
      paramLabel = "DIR",
      description =
          "Where this machine's private keys are, never in the lab folder (default: PLATENWIRE_KEYS, else platenwire/keys in your settings folder).")
  private @Nullable Path folder;

  /** The private keys of this machine's user. */
  PrivateKeys open() {
    return new PrivateKeys(
        folder != null
            ? folder
            : PrivateKeys.usualFolder(
                System.getenv(), Path.of(System.getProperty("user.home", "."))));
  }
}
