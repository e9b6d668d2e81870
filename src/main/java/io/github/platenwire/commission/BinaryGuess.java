package io.github.platenwire.commission;

import io.github.platenwire.commission.Question.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Infers a definition of binary frames: their length from what repeats, where they begin from what
 * never changes, a checksum that proves itself. What the other bytes mean can be guessed only by
 * how smoothly they run; scale and unit cannot be told from bytes. Stateless.
 */
final class BinaryGuess {
  private static final String CANNOT =
      "These bytes are neither lines of text nor frames of one length that begin alike, as far as"
          + " can be told. Take a longer log at the right speed ('platenwire probe PORT' tries the"
          + " common ones), or write the definition by the device's manual: devices/README.md shows"
          + " one of each kind.";

  private static final int FEWEST_FRAMES = 4;

  private BinaryGuess() {}

  static Draft draft(byte[] bytes, Hints hints) {
    Optional<FrameRaster> raster = FrameRaster.find(bytes);
    if (raster.isEmpty()) {
      return new Draft("", List.of(CANNOT), List.of());
    }
    List<byte[]> frames = raster.get().frames(bytes);
    if (frames.size() < FEWEST_FRAMES) {
      return new Draft("", List.of(CANNOT), List.of());
    }
    Optional<FrameCheck> check = FrameCheck.find(frames, raster.get().sync().length);
    int end = check.map(FrameCheck::at).orElse(raster.get().length());
    List<PackedGuess> fields = PackedGuess.find(frames, raster.get().sync().length, end);
    List<String> notes = notes(raster.get(), check, fields);
    if (fields.isEmpty()) {
      notes.add(
          "No byte of the frames changes as a reading does; take a log while the load changes.");
      return new Draft("", notes, List.of());
    }
    List<String> units = new ArrayList<>(hints.units());
    if (units.size() >= fields.size()
        && units.subList(0, fields.size()).stream().allMatch(Hints.PASS_OVER::equals)) {
      notes.add("Every number is passed over, so there is nothing to read: give one its unit.");
      return new Draft("", notes, List.of());
    }
    List<Question> questions = new ArrayList<>();
    for (PackedGuess field : fields.subList(Math.min(units.size(), fields.size()), fields.size())) {
      questions.add(
          new Question(
              Kind.UNIT, field.words(), "In which unit is the number in " + field.words() + "?"));
    }
    return questions.isEmpty()
        ? new Draft(BinaryDraft.text(raster.get(), check, fields, units, hints), notes, List.of())
        : new Draft("", notes, questions);
  }

  private static List<String> notes(
      FrameRaster raster, Optional<FrameCheck> check, List<PackedGuess> fields) {
    List<String> notes = new ArrayList<>();
    notes.add(
        "Frames of "
            + raster.length()
            + " bytes that begin with "
            + BinaryDraft.hex(raster.sync())
            + "; "
            + check.map(c -> "checksum: " + c.words()).orElse("no checksum that is known fits")
            + ".");
    byte[] sync = raster.sync();
    if (sync.length >= 3 && (sync[1] == 3 || sync[1] == 4) && sync[2] == raster.length() - 5) {
      notes.add(
          "They look like answers by Modbus RTU. Such a device is silent unless it is asked: write a"
              + " definition of kind 'modbus-rtu' (devices/README.md) with the registers of its"
              + " manual.");
    }
    if (!fields.isEmpty()) {
      notes.add(
          "What the bytes mean is a guess by how smoothly they run. Hold each value against the"
              + " device's display, and set 'scale' and 'order' until they agree.");
    }
    return notes;
  }
}
