package io.github.platenwire.report;

import io.github.platenwire.record.Digests;
import io.github.platenwire.record.Enclosure;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Shows the files that are kept beside a record: photographs as pictures in the page itself, others
 * by name. One that is missing, changed or unreadable is said to be so in its place. Used once.
 */
final class EnclosuresPart {
  private final ReportSetting setting;
  private final Path raw;

  /**
   * Of one record.
   *
   * @param raw the record's raw file, beside which they lie
   */
  EnclosuresPart(ReportSetting setting, Path raw) {
    this.setting = setting;
    this.raw = raw;
  }

  /**
   * Adds one.
   *
   * @param longestSide of a picture, in pixels
   * @param whose before its name in the caption; empty for nothing
   */
  void add(Page page, Enclosure one, int longestSide, String whose) {
    try {
      show(page, one, longestSide, whose);
    } catch (IOException e) {
      page.note(
          Tone.BAD,
          Inline.text("Not shown: " + one.file() + " cannot be read (" + e.getMessage() + ")."));
    }
  }

  private void show(Page page, Enclosure one, int longestSide, String whose) throws IOException {
    Optional<Path> there = kept(one);
    if (there.isEmpty()) {
      page.note(Tone.BAD, Inline.text("Not shown: " + one.file() + " is missing" + was(one)));
      return;
    }
    Path kept = there.get();
    byte[] bytes = Files.readAllBytes(kept);
    String digest = Digests.sha256Hex(bytes);
    if (!digest.equals(one.sha256())) {
      page.note(
          Tone.BAD,
          Inline.text(
              "Not shown: "
                  + one.file()
                  + " is not the file that was kept; its SHA-256 is "
                  + digest
                  + was(one)));
      return;
    }
    Inline caption =
        Inline.text(whose.isEmpty() ? "" : whose + ": ")
            .and(setting.link(kept))
            .and(" (was " + one.cameFrom() + "), SHA-256 ")
            .and(Inline.code(one.sha256()));
    Optional<ScaledPicture> picture = ScaledPicture.of(bytes, longestSide);
    if (picture.isPresent()) {
      page.picture(picture.get(), "photograph " + one.cameFrom(), caption);
    } else {
      page.paragraph(Inline.text("Kept beside the record: ").and(caption));
    }
  }

  /** Where it lies; a name out of a summary must not lead anywhere else than beside the record. */
  private Optional<Path> kept(Enclosure one) {
    return one.isBeside(raw)
        ? Optional.of(raw.resolveSibling(one.file()))
            .filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
        : Optional.empty();
  }

  private static String was(Enclosure one) {
    return "; it was kept of " + one.cameFrom() + " with SHA-256 " + one.sha256() + ".";
  }
}
