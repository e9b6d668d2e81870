package io.github.platenwire.lab;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.List;
import java.util.Optional;

/**
 * One frame with its channels, as {@code rigs/NAME.toml} tells it. Immutable.
 *
 * @param name the file's name
 * @param title for a person
 * @param channels at least one, in file order
 * @param text the file as it was read, to be kept in the raw file
 */
public record Rig(String name, String title, List<Channel> channels, String text) {
  /** Makes the list immutable. */
  public Rig {
    channels = List.copyOf(channels);
  }

  /** The channel of a name, if there is one. */
  public Optional<Channel> channel(String channelName) {
    return channels.stream().filter(channel -> channel.name().equals(channelName)).findFirst();
  }

  /**
   * An error in what the rig file says of a channel, with its line and column.
   *
   * @param channel one of this rig's
   * @param key the key that is wrong; if the channel has no such key, its beginning is named
   * @param problem what is wrong, and what would be right
   */
  public LabException error(Channel channel, String key, String problem) {
    String source = "rigs/" + name + ".toml";
    String words = "channel '" + channel.name() + "': " + problem;
    try {
      List<TomlSection> sections = TomlSection.parse(text, source).sections("channel");
      return LabException.of(sections.get(channels.indexOf(channel)).error(key, words));
    } catch (TomlException | IndexOutOfBoundsException e) {
      return new LabException(source + ": " + words, e);
    }
  }

  /**
   * Reads a rig file.
   *
   * @param text the TOML document
   * @param source its name for error messages
   * @param fileName the file's name without {@code .toml}, which the name inside must equal
   * @throws TomlException if a key or value is wrong, with line and column
   */
  public static Rig parse(String text, String source, String fileName) throws TomlException {
    return RigReader.parse(text, source, fileName);
  }
}
